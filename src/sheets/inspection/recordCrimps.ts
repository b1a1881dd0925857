import { isoDate } from '../../core/units/sheetDate';
import type { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';
import type { CellValue } from '../../workbook/workbook';
import { judgeCrimpRow } from '../crimps/judgeCrimpRow';
import { isMeasured, isUnmeasured, type CrimpRow } from '../crimps/crimpRow';
import type { BenchCard, CrimpEnd } from '../jobs/benchCard';
import type { RecordCrimp } from './inspectionRecord';

/** A date of a cell as ISO text, or as it is written. */
export function dateText(cell: CellValue): string {
  if (typeof cell === 'number' && cell >= 1) return isoDate(cell);
  return typeof cell === 'object' ? '' : String(cell).trim();
}

const BLANK_FOUR = [undefined, undefined, undefined, undefined] as const;

/** Limits, readings and verdict of a crimp, in the record's unit. */
function measured(row: CrimpRow, unit: LengthUnit, uncertainty: Decimal | undefined) {
  const to = (value: Decimal) => convertLength(value, row.unit, unit);
  const [target, tolerance] = [row.target && to(row.target.value), row.tolerance && to(row.tolerance.value)];
  const known = {
    target,
    smallest: tolerance && target?.minus(tolerance),
    largest: tolerance && target?.plus(tolerance),
    readings: row.readings.map(reading => reading && to(reading)),
  };
  if (!isMeasured(row)) {
    const problem = isUnmeasured(row) ? row.problem : (row.readingProblem ?? row.problem);
    return { ...known, mean: undefined, spread: undefined, verdict: undefined, problem: problem?.sentence };
  }
  const own = uncertainty && convertLength(uncertainty, unit, row.unit);
  const { measure, verdict } = judgeCrimpRow(
    row,
    row.readings.map(reading => reading!),
    own,
  );
  return { ...known, mean: to(measure.mean), spread: to(measure.spread), verdict, problem: undefined };
}

/** Names of the pieces: their assembly or piece numbers, else counted, the ends of one piece together. */
function pieceNames(rows: readonly CrimpRow[]): readonly string[] {
  const counted = new Map<string, number>();
  return rows.map(({ assembly, piece, end }) => {
    const count = (counted.get(end) ?? 0) + 1;
    counted.set(end, count);
    return assembly || piece || String(count);
  });
}

/** The hose lot of each row: its own, else the one that the other end of its piece names, which is of the same hose. */
function hoseLots(rows: readonly CrimpRow[], pieces: readonly string[]): readonly string[] {
  return rows.map(({ hoseLot }, index) => {
    if (hoseLot !== '') return hoseLot;
    const ofPiece = rows.filter((row, at) => pieces[at] === pieces[index] && row.hoseLot !== '').map(row => row.hoseLot);
    return [...new Set(ofPiece)].join(', ');
  });
}

/**
 * The crimps of one line that the sheet has rows for.
 * @param unit of the record, and of the uncertainty
 */
export function crimpsOfRows(
  rows: readonly CrimpRow[],
  unit: LengthUnit,
  uncertainty: Decimal | undefined,
): readonly RecordCrimp[] {
  const pieces = pieceNames(rows);
  const lots = hoseLots(rows, pieces);
  return rows.map((row, index) => ({
    piece: pieces[index]!,
    end: row.end,
    order: row.order,
    assembly: row.assembly,
    hose: row.hose,
    hoseLot: lots[index]!,
    hoseMade: dateText(row.hoseMade),
    fitting: row.fitting || row.combination,
    fittingLot: row.fittingLot,
    machine: row.machine,
    // What the catalogue wants now is not what was used then.
    die: row.die,
    dial: row.dial?.value.toString() ?? '',
    made: row.date === undefined ? dateText(row.dateInSheet) : isoDate(row.date),
    operator: row.operator,
    ...measured(row, unit, uncertainty),
    measuredWith: { gauges: row.gauges, gaugeKinds: row.gaugeKinds, date: row.date },
  }));
}

function plannedCrimp(end: CrimpEnd, piece: number): RecordCrimp {
  const { smallest, largest, diameter: target } = end;
  return {
    piece: String(piece),
    end: end.end,
    order: '',
    assembly: '',
    hose: '',
    hoseLot: '',
    hoseMade: '',
    fitting: end.fitting,
    fittingLot: '',
    machine: '',
    die: '',
    dial: '',
    made: '',
    operator: '',
    target,
    smallest,
    largest,
    readings: BLANK_FOUR,
    mean: undefined,
    spread: undefined,
    verdict: undefined,
    problem: end.problem,
    measuredWith: undefined,
  };
}

/** Most pieces of one line that get rows to write in. */
const MOST_PIECES = 50;

/** The crimps of a job line that has no readings yet: lines to write on, a row an end. */
export function crimpsOfCard({ quantity, ends }: BenchCard): readonly RecordCrimp[] {
  const pieces = Array.from({ length: Math.min(MOST_PIECES, Math.max(1, quantity)) }, (_, index) => index + 1);
  return pieces.flatMap(piece => ends.map(end => plannedCrimp(end, piece)));
}
