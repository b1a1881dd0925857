import type { Interval } from '../../core/quality/causes/causeNumbers';
import type { CombinationFinding } from '../../core/quality/causes/crimpCauseResult';
import { Decimal } from '../../core/units/decimal';

/** The finding on one combination. */
export interface CombinationReadingsCause {
  /** What it is off by itself, beyond machine and die; undefined where no crimp tells. */
  readonly own: number | undefined;
  readonly interval?: Interval | undefined;
  /** Change of diameter wanted. */
  readonly correction: Decimal;
  /** NOT COUNTED: none of its crimps tells about the present. */
  readonly finding: CombinationFinding | 'NOT COUNTED';
}

export const NOT_COUNTED: CombinationReadingsCause = { own: undefined, correction: new Decimal(0), finding: 'NOT COUNTED' };
