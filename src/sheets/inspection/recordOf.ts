import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Decimal } from '../../core/units/decimal';
import type { CrimpRow } from '../crimps/crimpRow';
import type { BenchCard } from '../jobs/benchCard';
import { assemblyOf, type Piece } from '../pieces/piece';
import { usesOf } from './instruments';
import type { InspectionRecord, Pressure, RecordCrimp, RecordUse } from './inspectionRecord';
import { ratedPressure } from './ratedPressure';
import type { RecordGauges } from './recordGauges';
import type { Instrument } from './instrument';
import { crimpsOfCard, crimpsOfRows, dateText } from './recordCrimps';

function allOf(rows: readonly CrimpRow[], pick: (row: CrimpRow) => string): string {
  return [...new Set(rows.map(pick).filter(Boolean))].join(', ');
}

/** What all records of one gathering share. */
export interface RecordGround {
  readonly catalogue: Catalogue | undefined;
  readonly uncertainty: Decimal | undefined;
  /** The piece of a row, where the readings stand on the sheet Pieces. */
  readonly pieceOf: (row: CrimpRow) => Piece | undefined;
  readonly gaugesOf: (uses: readonly RecordUse[]) => RecordGauges;
  readonly instrumentsOf: (uses: readonly RecordUse[]) => readonly Instrument[];
}

function pressureOf(rows: readonly CrimpRow[], card: BenchCard | undefined, { catalogue }: RecordGround): Pressure | undefined {
  // What must not be assembled has no pressure.
  if (card?.isStop) return undefined;
  if (card?.workingPressure) return { value: card.workingPressure, unit: card.pressureUnit };
  return catalogue && ratedPressure(catalogue, rows);
}

/** A crimp with what its piece says of it. */
function withPiece(crimp: RecordCrimp, piece: Piece | undefined): RecordCrimp {
  if (!piece) return crimp;
  const [a, b] = piece.ends;
  const { lot, die } = /b/i.test(crimp.end) ? b : a;
  return {
    ...crimp,
    hose: piece.hose || crimp.hose,
    hoseLot: piece.lot || crimp.hoseLot,
    fittingLot: lot || crimp.fittingLot,
    machine: crimp.machine || piece.machine,
    die: crimp.die || die,
    measuredWith: piece,
  };
}

const listed = (texts: readonly string[]) => [...new Set(texts.filter(Boolean))].join(', ');

export function recordOf(all: readonly CrimpRow[], card: BenchCard | undefined, ground: RecordGround): InspectionRecord {
  const isScrapped = (row: CrimpRow) => ground.pieceOf(row)?.status === 'scrapped';
  const rows = all.filter(row => !isScrapped(row));
  const pieces = [...new Set(rows.flatMap(row => ground.pieceOf(row) ?? []))];
  const scrapped = [...new Set(all.filter(isScrapped).map(({ piece }) => piece))];
  const unit = all[0]?.unit ?? card?.unit ?? 'mm';
  const line = all[0]?.line || card?.line || '';
  const title = all[0] ? (line ? `Line ${line}` : all[0].title) : `Line ${line}`;
  const made =
    rows.length > 0 ? crimpsOfRows(rows, unit, ground.uncertainty) : card && all.length === 0 ? crimpsOfCard(card) : [];
  const crimps = made.map((crimp, index) => withPiece(crimp, rows[index] && ground.pieceOf(rows[index])));
  const uses = usesOf({ crimps, pieces });
  const gauges = ground.gaugesOf(uses);
  return {
    title: card?.isStop ? `${title}: STOP` : title,
    line,
    label: card?.label || (pieces[0]?.label ?? ''),
    order: allOf(all, row => row.order) || (card?.order ?? ''),
    assembly: allOf(rows, row => row.assembly) || listed(pieces.map(assemblyOf)) || (card?.assembly ?? ''),
    quantity: card?.quantity ? String(card.quantity) : '',
    hose: allOf(all, row => row.hose) || (card?.hose ?? ''),
    hoseLot: allOf(rows, row => row.hoseLot) || listed(pieces.map(({ lot }) => lot)),
    hoseMade: allOf(rows, row => dateText(row.hoseMade)),
    unit,
    workingPressure: pressureOf(rows, card, ground),
    crimps,
    pieces,
    scrapped,
    gauges: gauges.facts,
    instruments: ground.instrumentsOf(uses),
    problems: [...(card?.problems ?? []), ...(card?.notes ?? []), ...gauges.notes],
  };
}
