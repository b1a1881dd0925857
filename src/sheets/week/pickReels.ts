import type { Decimal } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import type { StockRow } from '../rack/rackRow';

/** A reel or an offcut to fetch; its length in the list's unit. */
export interface PickReel {
  readonly hose: string;
  readonly place: string;
  readonly reel: string;
  readonly lot: string;
  readonly length: Decimal;
  readonly quantity: number;
}

/** Reels in the order in which somebody walks along the rack. */
export const byPlace = (reels: readonly PickReel[]): readonly PickReel[] =>
  [...reels].sort((a, b) => a.place.localeCompare(b.place, 'en', { numeric: true }) || a.length.comparedTo(b.length));

/** Rows of a rack as reels to fetch. */
export function rackReels(rows: readonly StockRow[], unit: LengthUnit): readonly PickReel[] {
  return rows.map(({ hose, place, reel = '', lot, length, quantity }) => ({
    hose,
    place,
    reel,
    lot,
    length: lengthIn(length, unit),
    quantity,
  }));
}

/** Where a reel is and what it holds: `A3, reel 7, lot L66: 2 × 2900 mm`. */
export function reelText(
  { place, reel, lot, length, quantity }: PickReel,
  unit: LengthUnit,
  text: (length: Decimal) => string,
): string {
  const where = [place, reel && `reel ${reel}`, lot && `lot ${lot}`].filter(Boolean).join(', ') || 'place not stated';
  return `${where}: ${quantity > 1 ? `${quantity} × ` : ''}${text(length)} ${unit}`;
}
