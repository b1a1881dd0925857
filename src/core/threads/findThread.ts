import { threadFamilies, type ThreadFamily, type ThreadForm } from '../tables/threads';
import { TradeError } from '../tradeError';
import { Decimal } from '../units/decimal';
import { convertLength, MM_PER_INCH, type LengthUnit } from '../units/lengthUnit';

/** What a caliper and a thread gauge say. */
export interface MeasuredThread {
  /** Outside diameter of a male thread, inside diameter of a female one. */
  readonly diameter: Decimal;
  /** In mm, or in threads per inch where `unit` is inches; undefined where it was not measured. */
  readonly pitch?: Decimal | undefined;
  readonly unit: LengthUnit;
  readonly side: 'male' | 'female';
}

/** A thread that it may be; diameter, pitch and difference in the unit of the measurement. */
export interface PossibleThread {
  readonly thread: string;
  readonly standard: string;
  readonly diameter: Decimal;
  readonly pitch: Decimal;
  /** Measured − diameter. */
  readonly offBy: Decimal;
  /** End forms of couplings that use it; empty where none is known. */
  readonly usedWith: string;
}

const NEAR_MM = new Decimal('0.6');
export const PITCH_SHARE = new Decimal('0.04');
/** Outside − inside diameter in pitches: 2 × 5/8 of the height of a 60° triangle; 2 × the depth of the 55° form. */
const DEPTH: Readonly<Record<ThreadForm, Decimal>> = { 60: new Decimal('1.0825'), 55: new Decimal('1.2807') };

type Row = ThreadFamily['threads'][number];

function possible(family: ThreadFamily, [thread, outside, pitch, usedWith]: Row, measured: MeasuredThread): PossibleThread {
  const { unit, side } = measured;
  const pitchMm = family.pitchIn === 'mm' ? new Decimal(pitch) : MM_PER_INCH.div(pitch);
  const outsideMm = convertLength(new Decimal(outside), family.unit, 'mm');
  const diameterMm = side === 'male' ? outsideMm : outsideMm.minus(pitchMm.times(DEPTH[family.form]));
  const isAsGiven = side === 'male' && family.unit === unit;
  const diameter = isAsGiven ? new Decimal(outside) : convertLength(diameterMm, 'mm', unit);
  const perInch = family.pitchIn === 'perInch' ? new Decimal(pitch) : MM_PER_INCH.div(pitch);
  return {
    thread,
    standard: family.standard,
    diameter,
    pitch: unit === 'mm' ? pitchMm : perInch,
    offBy: measured.diameter.minus(diameter),
    usedWith,
  };
}

const isNear = ({ offBy, pitch }: PossibleThread, measured: MeasuredThread) =>
  convertLength(offBy.abs(), measured.unit, 'mm').lte(NEAR_MM) &&
  (measured.pitch === undefined || measured.pitch.minus(pitch).abs().lte(pitch.times(PITCH_SHARE)));

/**
 * Threads that a measured one may be, nearest first: within 0.6 mm and, where the pitch was measured, 4 % of it. Some share a diameter to
 * less than a caliper tells: the pitch decides.
 * @throws TradeError `notFound` where none is so near
 * Source: arithmetic of the thread forms: inside = outside − 1.0825 pitches (60°), − 1.2807 pitches (55°); see the table for the sizes.
 * @example 33.3 mm, male: 1 5/16-12 (33.3375), G 1 (33.249), …
 */
export function findThread(measured: MeasuredThread): readonly PossibleThread[] {
  const families: readonly ThreadFamily[] = threadFamilies;
  const found = families
    .flatMap(family => family.threads.map(row => possible(family, row, measured)))
    .filter(thread => isNear(thread, measured))
    .sort((a, b) => a.offBy.abs().cmp(b.offBy.abs()));
  if (found.length > 0) return found;
  const { diameter, pitch, unit, side } = measured;
  const pitchText = pitch === undefined ? '' : unit === 'mm' ? `, pitch ${pitch} mm` : `, ${pitch} threads per inch`;
  const received = `no ${side} thread within 0.6 mm of ${diameter} ${unit}${pitchText}`;
  throw new TradeError('notFound', '', received, 'check unit and side, and measure again at a full thread');
}
