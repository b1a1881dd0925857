import type { Decimal } from '../../core/units/decimal';
import type { PlannedCut, PlannedReel } from './plannedReel';

/** What a stretch of a reel becomes. */
export type SegmentKind = 'squaring' | 'cut' | 'kerf' | 'kept' | 'lost';

/** A stretch of a reel, to scale. */
export interface Segment {
  readonly kind: SegmentKind;
  readonly x: number;
  readonly width: number;
  /** Position of the cut's group; -1 for what is no cut. */
  readonly group: number;
}

/** Equal cuts that follow each other. */
export interface CutGroup {
  /** a, b, … z, aa, … */
  readonly key: string;
  readonly length: Decimal;
  readonly cuts: readonly PlannedCut[];
}

/** Letters for a position: 0 → a, 25 → z, 26 → aa. */
export function groupKey(position: number): string {
  const rest = Math.floor(position / 26);
  return (rest > 0 ? groupKey(rest - 1) : '') + String.fromCharCode(97 + (position % 26));
}

/** The cuts of a reel, equal neighbours together. */
export function cutGroups(cuts: readonly PlannedCut[]): readonly CutGroup[] {
  const groups: { length: Decimal; cuts: PlannedCut[] }[] = [];
  for (const cut of cuts) {
    const last = groups[groups.length - 1];
    if (last?.length.eq(cut.length)) last.cuts.push(cut);
    else groups.push({ length: cut.length, cuts: [cut] });
  }
  return groups.map((group, position) => ({ key: groupKey(position), ...group }));
}

/** All stretches of a reel in cutting order, `width` wide together. */
export function reelSegments(reel: PlannedReel, width: number): readonly Segment[] {
  const scale = width / reel.rack.length.toNumber();
  const segments: Segment[] = [];
  let x = 0;
  const add = (kind: SegmentKind, length: number, group = -1) => {
    const end = Math.min(width, x + length * scale);
    if (end > x) segments.push({ kind, x, width: end - x, group });
    x = Math.max(x, end);
  };
  add('squaring', reel.squaring.toNumber());
  cutGroups(reel.cuts).forEach((group, position) => {
    for (const cut of group.cuts) {
      add('cut', cut.length.toNumber(), position);
      add('kerf', reel.kerf.toNumber());
    }
  });
  add(reel.isKept ? 'kept' : 'lost', (width - x) / scale);
  return segments;
}
