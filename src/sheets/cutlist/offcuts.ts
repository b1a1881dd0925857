import type { LengthUnit } from '../../core/units/lengthUnit';
import { rackPlace } from '../rack/rackRow';
import { lengthText } from '../table/lengthText';
import type { PlannedReel } from './plannedReel';

/** An end that goes back into the rack, in the words of its label. */
export interface Offcut {
  readonly hose: string;
  readonly length: string;
  readonly lot: string;
  readonly place: string;
  readonly made: string;
  readonly day: string;
}

/** The ends of a plan that are worth keeping, in the order of the cut list. */
export const offcutsOf = (reels: readonly PlannedReel[], unit: LengthUnit, day: string): readonly Offcut[] =>
  reels
    .filter(({ isKept }) => isKept)
    .map(({ rack, left }) => ({
      hose: rack.hose,
      length: `${lengthText(left, unit)} ${unit}`,
      lot: rack.lot,
      place: rackPlace(rack),
      made: rack.made,
      day,
    }));
