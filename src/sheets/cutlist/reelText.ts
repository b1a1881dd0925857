import type { LengthUnit } from '../../core/units/lengthUnit';
import { rackPlace } from '../rack/rackRow';
import { lengthText } from '../table/lengthText';
import type { PlannedReel } from './plannedReel';
import { cutGroups, type CutGroup } from './reelSegments';

/** Whose pieces a group holds: `line 1 Topper lift (2), line 4`. */
function owners({ cuts }: CutGroup): string {
  const counts = new Map<string, number>();
  for (const { line } of cuts) {
    const name = `line ${line.line}${line.label && ` ${line.label}`}`;
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return [...counts].map(([name, count]) => (counts.size > 1 ? `${name} (${count})` : name)).join(', ');
}

/** The groups of a reel in words, with their letters. */
export function groupTexts(reel: PlannedReel, unit: LengthUnit): readonly { readonly key: string; readonly text: string }[] {
  return cutGroups(reel.cuts).map(group => ({
    key: group.key,
    text: `${group.cuts.length} × ${lengthText(group.length, unit)} ${unit}: ${owners(group)}`,
  }));
}

/** What is left of a reel, in words. */
export function leftText({ left, isKept }: PlannedReel, unit: LengthUnit): string {
  if (left.isZero()) return 'nothing left';
  return `left ${lengthText(left, unit)} ${unit}, ${isKept ? 'worth keeping' : 'too short to keep'}`;
}

/** Name of a piece of stock: its number in the list, length, place, lot, day of making, and whether that is too long ago. */
export function reelName({ rack, isTooOld }: PlannedReel, number: number, unit: LengthUnit): string {
  const made = rack.made && `made ${rack.made}${isTooOld ? ', OLDER THAN YOUR LIMIT' : ''}`;
  const details = [rackPlace(rack), rack.lot && `lot ${rack.lot}`, made].filter(Boolean).join(', ');
  return `Reel ${number}: ${lengthText(rack.length, unit)} ${unit}${details && ` (${details})`}`;
}
