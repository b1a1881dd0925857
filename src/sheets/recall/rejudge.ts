import type { Measure } from '../../cells/sheetCell';
import { measureCrimp } from '../../core/crimp/crimpMeasure';
import { judgeCrimp, type CrimpVerdict } from '../../core/crimp/crimpVerdict';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { READ_PLACES } from '../../core/units/decimalPlaces';
import { convertMeasure } from '../../core/units/measureUnit';
import type { Length } from '../../core/units/lengthUnit';
import type { Piece, PieceEnd } from '../pieces/piece';

/** An end of a piece judged again with what its caliper read wrong. */
export interface Rejudged {
  readonly piece: Piece;
  readonly end: 'A' | 'B';
  readonly was: CrimpVerdict;
  readonly is: CrimpVerdict;
  /** True mean, in the unit of the target. */
  readonly mean: Decimal;
  readonly target: Length;
  readonly tolerance: Decimal;
}

/** What cannot be judged, with why. */
export interface NotRejudged {
  readonly piece: Piece;
  readonly end: 'A' | 'B';
  readonly why: string;
}

interface Judging {
  readonly rejudged: readonly Rejudged[];
  readonly open: readonly NotRejudged[];
}

/** Numbers converted from another unit have as many digits as the arithmetic. */
const rounded = (digits: string) => new Decimal(digits).toDecimalPlaces(READ_PLACES).toString();

function judgeEnd(piece: Piece, end: 'A' | 'B', own: PieceEnd, error: Measure): Rejudged | NotRejudged | undefined {
  const { target, tolerance, readings } = own;
  const filled = readings.filter(reading => reading !== undefined);
  if (filled.length === 0) return undefined;
  if (!target || !tolerance) return { piece, end, why: `no ${target ? 'tolerance' : 'target'} in its row` };
  const { unit } = target;
  const to = ({ value, unit: from }: Measure) => convertMeasure(value, from, unit);
  const band = to(tolerance);
  const off = to(error);
  const judge = (values: readonly Decimal[]) => {
    const measure = measureCrimp({ readings: values, target: target.value, tolerance: band });
    return { measure, verdict: judgeCrimp(measure, { tolerance: band }) };
  };
  try {
    const before = judge(filled.map(to));
    // It read too high by the error: the truth lies below.
    const after = judge(filled.map(reading => to(reading).minus(off)));
    return { piece, end, was: before.verdict, is: after.verdict, mean: after.measure.mean, target, tolerance: band };
  } catch (thrown) {
    if (!(thrown instanceof TradeError)) throw thrown;
    return { piece, end, why: thrown.message.replace(/\d+\.\d+/g, rounded) };
  }
}

/**
 * Judges pieces again: a caliper that read 0.03 too high showed 24.80 where 24.77 was true.
 * @param error reading − truth: positive where it read too high
 */
export function rejudge(pieces: readonly Piece[], error: Measure): Judging {
  const all = pieces.flatMap(piece =>
    (['A', 'B'] as const).flatMap((end, index) => judgeEnd(piece, end, piece.ends[index as 0 | 1], error) ?? []),
  );
  return {
    rejudged: all.filter((each): each is Rejudged => 'is' in each),
    open: all.filter((each): each is NotRejudged => 'why' in each),
  };
}

/** Ends whose verdict is another one now: those that become bad first. */
export const changedVerdicts = ({ rejudged }: Judging): readonly Rejudged[] =>
  rejudged.filter(({ was, is }) => was !== is).sort((a, b) => Number(a.is === 'IN SPEC') - Number(b.is === 'IN SPEC'));

/** A pressure test whose gauge read too high: whether the pressure asked was reached all the same. */
export interface Retested {
  readonly piece: Piece;
  /** In the unit of the test pressure. */
  readonly reached: Decimal;
  readonly asked: Measure;
  readonly isReached: boolean;
}

/** Tests judged again with what the pressure gauge read wrong: reading − truth. */
export function retest(pieces: readonly Piece[], error: Measure): readonly Retested[] {
  return pieces.flatMap(piece => {
    const { testPressure: asked, testedAt } = piece;
    if (!asked || !testedAt) return [];
    const to = ({ value, unit }: Measure) => convertMeasure(value, unit, asked.unit);
    const reached = to(testedAt).minus(to(error));
    return [{ piece, asked, reached, isReached: reached.gte(asked.value) }];
  });
}
