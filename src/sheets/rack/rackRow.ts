import { convertMeasure, measureUnit } from '../../core/units/measureUnit';
import type { Decimal } from '../../core/units/decimal';
import type { Length, LengthUnit } from '../../core/units/lengthUnit';
import { hoseKey } from '../jobs/cutLine';

/** Pieces of hose in the rack that are alike. */
export interface RackRow {
  /** Row of the sheet; 0 for what has still to be bought. */
  readonly row: number;
  readonly hose: string;
  readonly length: Decimal;
  readonly quantity: number;
  readonly place: string;
  /** Number of the reel; "" or left out where the rack does not say. */
  readonly reel?: string | undefined;
  readonly lot: string;
  /** Day of making as `2026-03-01`; "" where the rack does not say. */
  readonly made: string;
  /** What its status says against its use, where it is taken all the same. */
  readonly barred?: string | undefined;
}

/** A row of the rack as its sheet has it: the length with its unit. */
export type StockRow = Omit<RackRow, 'length'> & { readonly length: Length };

/** Rows of a rack with their lengths in one unit, exactly. */
export function rackIn(rows: readonly StockRow[], unit: LengthUnit): readonly RackRow[] {
  const to = measureUnit('length', unit)!;
  return rows.map(row => ({ ...row, length: convertMeasure(row.length.value, row.length.unit, to) }));
}

/** The rows of one hose. */
export function rackOf(rack: readonly RackRow[], hose: string): readonly RackRow[] {
  return rack.filter(row => hoseKey(row.hose) === hoseKey(hose));
}

/** Where a piece of hose is: its place and the number of its reel. */
export function rackPlace({ place, reel }: Pick<RackRow, 'place' | 'reel'>): string {
  return [place, reel && `reel ${reel}`].filter(Boolean).join(', ');
}
