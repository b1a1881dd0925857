import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { lengthIn, lengthUnitOf, type Length, type LengthUnit } from '../../core/units/lengthUnit';
import { cardPieces, otherLengthNote } from '../pieces/cardPieces';
import type { Piece } from '../pieces/piece';
import { usualStep } from '../table/benchStep';
import type { BenchCard } from './benchCard';
import { benchCut } from './benchRounding';
import { crimpEndOf } from './crimpEndOf';
import type { JobLine } from './jobLine';
import { ratingNotes } from './lineRating';
import type { Jobs } from './readJobs';
import { lengthLimitsOf } from './lengthLimitsOf';

/** What is said about the making of cards. */
export interface CardOptions {
  /** Unit of a card whose line has no length that can be read. */
  readonly unit: LengthUnit;
  /** What the bench can cut; the usual step where a card is in the other unit. */
  readonly step: Length;
  /** Crimper of the lines that name none; "" = the catalogue's dials. */
  readonly machine: string;
}

/** Runs what may fail with a sentence, which is kept. */
function attempt<T>(problems: string[], work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    problems.push(error.message);
    return undefined;
  }
}

const stepIn = ({ value, unit }: Length, to: LengthUnit): Decimal => (unit.symbol === to ? value : usualStep(to));

function lengthsOf(line: JobLine, unit: LengthUnit, options: CardOptions, stops: string[], notes: string[]) {
  const overall = line.overall && lengthIn(line.overall, unit);
  const limits = attempt(notes, () => lengthLimitsOf(line, unit));
  const wanted = line.cutLength && lengthIn(line.cutLength, unit);
  const finished = overall && limits && { overall, limits };
  const step = stepIn(options.step, unit);
  const cutLength = wanted && attempt(stops, () => benchCut(wanted, step, unit, finished).cutLength);
  return { overall, limits, cutLength, wanted };
}

/** One line as a card. A line that must not be made gets one, too: it says STOP, and no pressure. */
export function benchCardOf(line: JobLine, { catalogue }: Pick<Jobs, 'catalogue'>, options: CardOptions): BenchCard {
  const length = line.cutLength ?? line.overall;
  const unit = length ? lengthUnitOf(length.unit) : options.unit;
  const stops = line.standing.kind === 'stop' ? [...line.standing.reasons] : [];
  const notes = [...line.notes, ...ratingNotes(line)];
  const lengths = lengthsOf(line, unit, options, stops, notes);
  const source = { catalogue, unit, machine: line.crimper || options.machine.trim() };
  const ends = [crimpEndOf(line, 0, source), crimpEndOf(line, 1, source)] as const;
  const ofEnds = new Set(ends.map(({ problem }) => problem));
  const isStop = stops.length > 0;
  return {
    row: line.row,
    line: line.line,
    label: line.label,
    assembly: line.assembly,
    order: line.order,
    hose: line.hose,
    quantity: line.quantity ?? 0,
    unit,
    ...lengths,
    ends,
    twist: line.twist,
    workingPressure: isStop ? undefined : line.pressure?.value,
    pressureUnit: line.pressure?.unit.symbol ?? '',
    guard: line.guard,
    note: line.note,
    isStop,
    // What an end has no data for stands with that end.
    problems: stops.filter(stop => !ofEnds.has(stop)),
    notes,
    due: line.due,
    machine: source.machine,
  };
}

/** The cards of all lines that are open, with their pieces where some were planned, those that must not be made among them; done and planned ones have none. */
export function benchCards(
  jobs: Pick<Jobs, 'lines' | 'catalogue'>,
  options: CardOptions,
  pieces: readonly Piece[] = [],
): readonly BenchCard[] {
  return jobs.lines
    .filter(({ standing, quantity }) => (standing.kind === 'ready' || standing.kind === 'stop') && quantity !== 0)
    .map(line => {
      const card = benchCardOf(line, jobs, options);
      const other = otherLengthNote(pieces, line, options.step);
      return { ...card, notes: other ? [...card.notes, other] : card.notes, pieces: cardPieces(pieces, line, options.step) };
    });
}
