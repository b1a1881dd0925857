import type { Decimal } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import { hoseKey } from '../jobs/cutLine';
import type { Piece } from '../pieces/piece';
import type { StockRow } from '../rack/rackRow';

/** A reel or an offcut to fetch; its length, or that of one piece to be cut from it, in the list's unit. */
export interface PickReel {
  readonly hose: string;
  readonly place: string;
  readonly reel: string;
  readonly lot: string;
  readonly length: Decimal;
  readonly quantity: number;
  /** The cut list cuts it: length and quantity are those of the pieces. */
  readonly isPlanned?: boolean | undefined;
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

const nameKey = (text: string) => text.trim().toLowerCase();

/**
 * The reels that the cut list cuts for pieces, with what is cut from each.
 * @param length of a piece whose row does not say its own, in `unit`
 * @param stock of the racks that may know the place, the newest first: pieces name only lot and reel, and the place where a reel has no number
 */
export function plannedPicks(
  pieces: readonly Piece[],
  length: Decimal,
  unit: LengthUnit,
  stock: readonly PickReel[],
): readonly PickReel[] {
  return pieces.map((piece): PickReel => {
    const { hose, lot } = piece;
    const isOf = (row: PickReel) => hoseKey(row.hose) === hoseKey(hose) && nameKey(row.lot) === nameKey(lot);
    const named = stock.find(row => isOf(row) && nameKey(row.reel || row.place) === nameKey(piece.reel));
    const where = named ? { place: named.place, reel: named.reel } : { place: '', reel: piece.reel };
    return {
      hose,
      lot,
      ...where,
      length: piece.cutLength ? lengthIn(piece.cutLength, unit) : length,
      quantity: 1,
      isPlanned: true,
    };
  });
}

/** Reels that are the same in all but their number, once. */
export function together(reels: readonly PickReel[]): readonly PickReel[] {
  const groups = new Map<string, PickReel>();
  for (const reel of reels) {
    const { place, reel: number, lot, length, isPlanned } = reel;
    const key = JSON.stringify([nameKey(place), nameKey(number), nameKey(lot), length.toString(), isPlanned]);
    const before = groups.get(key);
    groups.set(key, before ? { ...before, quantity: before.quantity + reel.quantity } : reel);
  }
  return [...groups.values()];
}

/** Where a reel is and what it holds: `A3, reel 7, lot L66: 2 × 2900 mm`; of one on the cut list what is cut from it. */
export function reelText(
  { place, reel, lot, length, quantity, isPlanned }: PickReel,
  unit: LengthUnit,
  text: (length: Decimal) => string,
): string {
  const where = [place, reel && `reel ${reel}`, lot && `lot ${lot}`].filter(Boolean).join(', ') || 'place not stated';
  const many = quantity > 1 || isPlanned ? `${quantity} × ` : '';
  return `${where}: ${isPlanned ? 'cut ' : ''}${many}${text(length)} ${unit}`;
}
