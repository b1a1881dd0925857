import type { Decimal } from '../../core/units/decimal';
import type { Takeable } from '../table/tableRows';

/** Numbers that somebody may give where neither the sheet nor the catalogue does; lengths in the unit of the readings. */
export type TypedName =
  'target' | 'tolerance' | 'largestSpread' | 'uncertainty' | 'step' | 'perTurn' | 'lowest' | 'highest' | 'largestMove';

/** How crimps are read, beyond what the sheet says: the same for every view. */
export interface CrimpReadOptions {
  /** Rows that make one crimp where each reading has its own row. */
  readonly readingsACrimp: number;
  /** Machine of rows that name none; "" = not said. */
  readonly machine: string;
  readonly typed: Readonly<Partial<Record<TypedName, Decimal>>>;
  /** Rows that are taken though they would be left out. */
  readonly take?: ReadonlySet<Takeable> | undefined;
}

export const NO_OPTIONS: CrimpReadOptions = { readingsACrimp: 4, machine: '', typed: {} };
