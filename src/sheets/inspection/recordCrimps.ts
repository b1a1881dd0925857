import { isoDate } from '../../core/catalogue/dayNumber';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { number } from '../../cells/readers';
import type { CellValue } from '../../workbook/workbook';
import { judgeSlot } from '../crimps/judgeSlot';
import type { EntrySlot } from '../crimps/entrySlot';
import type { BenchCard, CrimpEnd } from '../jobs/benchCard';
import type { RecordCrimp } from './inspectionRecord';

const read = number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true });

function readingsOf({ standing, cells }: EntrySlot): readonly (Decimal | undefined)[] {
  return standing.map((cell, index) => {
    if (cell === '') return undefined;
    if (typeof cell === 'object')
      throw new TradeError('notANumber', cells[index]!, `is ${cell.error}`, 'put that cell right first');
    return read(cell, cells[index]!);
  });
}

const wordsOf = (cell: CellValue) => (typeof cell === 'object' ? '' : String(cell).trim());

/** A date of a cell as ISO text, or as it is written. */
export function dateText(cell: CellValue): string {
  return typeof cell === 'number' && cell >= 1 ? isoDate(Math.floor(cell)) : wordsOf(cell);
}

const BLANK_FOUR = [undefined, undefined, undefined, undefined] as const;

function limitsOf({ target, tolerance }: EntrySlot): Pick<RecordCrimp, 'target' | 'smallest' | 'largest'> {
  const [middle, half] = [target?.value, tolerance?.value];
  return { target: middle, smallest: half && middle?.minus(half), largest: half && middle?.plus(half) };
}

function measured(
  slot: EntrySlot,
  uncertainty: Decimal | undefined,
): Pick<RecordCrimp, 'readings' | 'mean' | 'spread' | 'verdict' | 'problem'> {
  const none = { mean: undefined, spread: undefined, verdict: undefined };
  try {
    const readings = readingsOf(slot);
    const all = readings.filter(reading => reading !== undefined);
    if (all.length < readings.length || slot.problem) {
      const problem = all.length > 0 ? (slot.problem ?? 'not all readings are there') : slot.problem;
      return { ...none, readings, problem };
    }
    const { measure, verdict } = judgeSlot(slot, all, uncertainty);
    return { readings, mean: measure.mean, spread: measure.spread, verdict, problem: undefined };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { ...none, readings: slot.cells.map(() => undefined), problem: error.message };
  }
}

/** Names of the pieces: their assembly or piece numbers, else counted, the ends of one piece together. */
function pieceNames(slots: readonly EntrySlot[]): readonly string[] {
  const counted = new Map<string, number>();
  return slots.map(({ assembly, piece, end }) => {
    const count = (counted.get(end) ?? 0) + 1;
    counted.set(end, count);
    return assembly || piece || String(count);
  });
}

/** The crimps of one line that the sheet has rows for. */
export function crimpsOfSlots(slots: readonly EntrySlot[], uncertainty: Decimal | undefined): readonly RecordCrimp[] {
  const pieces = pieceNames(slots);
  return slots.map((slot, index) => ({
    piece: pieces[index]!,
    end: slot.end,
    fitting: slot.fitting || slot.combination,
    fittingLot: slot.fittingLot,
    machine: slot.machine,
    // What the catalogue wants now is not what was used then.
    die: slot.dieStanding,
    dial: wordsOf(slot.dialStanding),
    made: dateText(slot.date),
    operator: slot.operator,
    ...limitsOf(slot),
    ...measured(slot, uncertainty),
  }));
}

function plannedCrimp(end: CrimpEnd, piece: number): RecordCrimp {
  const { smallest, largest, diameter: target } = end;
  return {
    piece: String(piece),
    end: end.end,
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
  };
}

/** Most pieces of one line that get rows to write in. */
const MOST_PIECES = 50;

/** The crimps of a job line that has no readings yet: lines to write on, a row an end. */
export function crimpsOfCard({ quantity, ends }: BenchCard): readonly RecordCrimp[] {
  const pieces = Array.from({ length: Math.min(MOST_PIECES, Math.max(1, quantity)) }, (_, index) => index + 1);
  return pieces.flatMap(piece => ends.map(end => plannedCrimp(end, piece)));
}
