import { partKey } from '../../core/catalogue/partName';
import { measureUnit } from '../../core/units/measureUnit';
import type { CrimpRow } from '../crimps/crimpRow';
import type { BenchCard } from '../jobs/benchCard';
import { assemblyOf } from '../pieces/piece';
import { isOfLine } from '../pieces/piecesOfLine';
import { type RecordGround, recordOf } from './recordOf';

/** The length that a card's sheet says, with its unit. */
const lengthOf = ({ wanted, unit }: BenchCard) => wanted && { value: wanted, unit: measureUnit('length', unit)! };

/** Crimps of one line together, in the order of the sheet; those without a line by their assembly, else each for itself. */
function byLine(rows: readonly CrimpRow[], { pieceOf }: RecordGround): readonly (readonly CrimpRow[])[] {
  const groups = new Map<string, CrimpRow[]>();
  for (const row of rows) {
    const piece = pieceOf(row);
    const own = row.assembly ? `assembly ${partKey(row.assembly)}` : `row ${row.row}`;
    const ofLine = row.line ? `line ${partKey(row.line)}` : own;
    // A sheet that grows week by week has each line number many times.
    const name = piece ? `piece ${partKey(assemblyOf(piece))} ${partKey(piece.order)} ${ofLine}` : ofLine;
    const group = groups.get(name);
    if (group) group.push(row);
    else groups.set(name, [row]);
  }
  return [...groups.values()];
}

export function recordsByLine(rows: readonly CrimpRow[], cards: readonly BenchCard[], crimpsLead: boolean, ground: RecordGround) {
  const isOf = (row: CrimpRow, card: BenchCard) => {
    const piece = ground.pieceOf(row);
    if (piece) return isOfLine(piece, { ...card, cutLength: lengthOf(card) });
    return row.line !== '' && partKey(card.line) === partKey(row.line);
  };
  if (!crimpsLead)
    return cards.map(card =>
      recordOf(
        rows.filter(row => isOf(row, card)),
        card,
        ground,
      ),
    );
  const cardFor = (group: readonly CrimpRow[]) =>
    cards.find(card => (group[0]!.line || ground.pieceOf(group[0]!) ? isOf(group[0]!, card) : card.row === group[0]!.row));
  return byLine(rows, ground).map(group => recordOf(group, cardFor(group), ground));
}
