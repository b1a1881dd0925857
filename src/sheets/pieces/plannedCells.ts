import type { Catalogue } from '../../core/catalogue/catalogue';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { lengthUnitOf, type Length, type LengthUnit } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import type { CrimpEnd } from '../jobs/benchCard';
import { crimpEndOf } from '../jobs/crimpEndOf';
import type { JobLine } from '../jobs/jobLine';
import { lengthLimitsOf } from '../jobs/lengthLimitsOf';
import type { PieceCells } from './pieceCells';
import type { PieceEndLetter } from './pieceColumns';

/** What is said about the making of pieces. */
export interface PlannedPieceOptions {
  readonly catalogue: Catalogue | undefined;
  /** Unit of the plan: of the cut lengths, and of crimps on a new sheet. */
  readonly unit: LengthUnit;
  /** Crimper of the lines that name none; "" = the catalogue's dials. */
  readonly machine: string;
  /** Test pressure = so many times the working pressure; undefined: none is written. */
  readonly proofFactor: Decimal | undefined;
  /** `2032-11`, from the day of making on; "" where nothing is said. */
  readonly useBy: string;
  /** A box to tick. */
  readonly box?: string;
}

const BOX = '☐';

/** Target and tolerance about the middle of the limits; undefined where an end is not crimped or its data say nothing. */
function limitsOf({ diameter, smallest, largest }: CrimpEnd) {
  if (!smallest || !largest) return { target: diameter, tolerance: undefined };
  return { target: smallest.plus(largest).div(2), tolerance: largest.minus(smallest).div(2) };
}

function dialCell(dial: string | undefined): number | string | undefined {
  if (dial === undefined) return undefined;
  return /^-?\d+(\.\d+)?$/.test(dial) ? Number(dial) : dial;
}

function endCells(end: CrimpEnd, letter: PieceEndLetter, unit: LengthUnit): PieceCells {
  if (end.isPlain) return {};
  const measure = (value: Decimal | undefined): Length | undefined => value && { value, unit: measureUnit('length', unit)! };
  const { target, tolerance } = limitsOf(end);
  return {
    [`fitting${letter}`]: end.fitting || undefined,
    [`die${letter}`]: end.die,
    [`dial${letter}`]: dialCell(end.dial),
    [`target${letter}`]: measure(target),
    [`tolerance${letter}`]: measure(tolerance),
    [`largestSpread${letter}`]: measure(end.largestSpread),
  };
}

function limitsCells(line: JobLine): PieceCells {
  const own = line.overall && lengthUnitOf(line.overall.unit);
  if (!own) return {};
  try {
    const limits = lengthLimitsOf(line, own);
    const unit = measureUnit('length', own)!;
    return limits ? { shortest: { value: limits.shortest, unit }, longest: { value: limits.longest, unit } } : {};
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return {};
  }
}

/** Cells of a planned piece of a line, but for its number, lot and reel: targets and limits as they are on this day. */
export function plannedCells(line: JobLine, cutLength: Length, options: PlannedPieceOptions): PieceCells {
  const { unit, catalogue, proofFactor, useBy, box = BOX } = options;
  const machine = line.crimper || options.machine.trim();
  const ends = ([0, 1] as const).map(index => crimpEndOf(line, index, { catalogue, machine, unit }));
  const { pressure } = line;
  return {
    line: line.line,
    label: line.label,
    order: line.order,
    hose: line.hose,
    cutLength,
    overall: line.overall,
    ...limitsCells(line),
    machine,
    ...endCells(ends[0]!, 'A', unit),
    ...endCells(ends[1]!, 'B', unit),
    testPressure: pressure && proofFactor ? { value: pressure.value.times(proofFactor), unit: pressure.unit } : undefined,
    flushed: box,
    capped: box,
    useBy: useBy || undefined,
    status: 'planned',
  };
}
