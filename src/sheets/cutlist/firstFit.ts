import type { Decimal } from '../../core/units/decimal';
import type { CutLine } from '../jobs/cutLine';
import type { CutSettings } from './cutSettings';
import type { RackRow } from '../rack/rackRow';

/** A piece of stock with the cuts laid on it. */
export interface FilledStock {
  readonly rack: RackRow;
  readonly cuts: readonly { readonly line: CutLine; readonly length: Decimal }[];
}

/** What first fit reaches. */
export interface FirstFit {
  readonly stock: readonly FilledStock[];
  /** Pieces for which there was no stock. */
  readonly missing: readonly CutLine[];
}

interface Open {
  readonly rack: RackRow;
  readonly cuts: { line: CutLine; length: Decimal }[];
  /** Room for pieces, each with a kerf behind it; the last piece needs none. */
  room: Decimal;
}

/**
 * Cuts as one does without a plan: every piece, in the order given, from the first piece of stock already begun where it
 * fits, else from the next one of the rack.
 */
export function firstFit(pieces: readonly CutLine[], rack: readonly RackRow[], settings: CutSettings): FirstFit {
  const closed = rack.flatMap(row => Array.from({ length: Math.min(row.quantity, pieces.length) }, () => row));
  const open: Open[] = [];
  const missing: CutLine[] = [];
  for (const line of pieces) {
    const needed = line.cutLength.plus(settings.kerf);
    let place = open.find(one => one.room.gte(needed));
    if (!place) {
      const roomOf = (row: RackRow) => row.length.minus(settings.squaring ?? 0).plus(settings.kerf);
      const next = closed.findIndex(row => roomOf(row).gte(needed));
      if (next < 0) {
        missing.push(line);
        continue;
      }
      const row = closed.splice(next, 1)[0]!;
      place = { rack: row, cuts: [], room: roomOf(row) };
      open.push(place);
    }
    place.cuts.push({ line, length: line.cutLength });
    place.room = place.room.minus(needed);
  }
  return { stock: open.map(one => ({ rack: one.rack, cuts: one.cuts })), missing };
}

/** One entry a piece, in the order of the sheet. */
export function onePerPiece(lines: readonly CutLine[]): readonly CutLine[] {
  return lines.flatMap(line => Array.from({ length: line.quantity }, () => line));
}
