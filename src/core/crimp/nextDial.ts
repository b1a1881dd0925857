import { TradeError } from '../tradeError';
import type { Decimal } from '../units/decimal';
import type { CrimpMeasure } from './crimpMeasure';
import { judgeCrimp } from './crimpVerdict';

/** A machine's dial: where it stands and how far it may go. */
export interface DialRange {
  readonly dial: Decimal;
  /** Change of crimp diameter per digit: positive where a higher number crimps tighter, negative where looser. Not 0. */
  readonly step: Decimal;
  readonly lowest?: Decimal | undefined;
  readonly highest?: Decimal | undefined;
  /** Most digits in one move. */
  readonly largestMove?: Decimal | undefined;
}

const LOOK_FIRST = 'look at die, hose, ferrule and readings first, then at the dial';

/** Digits to move: deviation ÷ step to the nearest whole digit, the smaller move on a tie; exact also where the mean is not. */
function digitsToMove(measure: CrimpMeasure, step: Decimal): Decimal {
  const whole = step.times(measure.count).abs();
  const off = measure.deviationSum.abs();
  const digits = off.divToInt(whole);
  const rest = off.minus(digits.times(whole));
  const size = rest.times(2).gt(whole) ? digits.plus(1) : digits;
  return measure.deviationSum.isNegative() === step.isNegative() ? size : size.negated();
}

/**
 * Dial setting for the next crimp. The crimp that was measured stays as it is: one that is out of spec stays rejected.
 * @param measure the crimp that was made at `dial`
 * @param tolerance allowed deviation of the mean
 * @returns the same dial where the crimp is in spec, else the corrected one
 * @throws TradeError `impossible` where one digit is too coarse; `range` outside lowest … highest or beyond largestMove
 * Source: common practice of the trade.
 * @example a crimp 0.06 large on a machine with 0.02 a digit: dial + 3
 */
export function nextDial(measure: CrimpMeasure, tolerance: Decimal, range: DialRange): Decimal {
  const { dial, step, lowest, highest, largestMove } = range;
  if (judgeCrimp(measure, { tolerance }) === 'IN SPEC') return dial;

  const move = digitsToMove(measure, step);
  if (move.isZero()) {
    const advice = 'one digit is too coarse for this tolerance';
    throw new TradeError('impossible', 'dial', 'would move by half a digit or less', advice);
  }
  const next = dial.plus(move);
  if (largestMove && move.abs().gt(largestMove)) {
    throw new TradeError('range', 'dial', `would move by ${move} digits, more than ${largestMove}`, LOOK_FIRST);
  }
  if (lowest && next.lt(lowest)) throw new TradeError('range', 'dial', `would be ${next}, below ${lowest}`, LOOK_FIRST);
  if (highest && next.gt(highest)) throw new TradeError('range', 'dial', `would be ${next}, above ${highest}`, LOOK_FIRST);
  return next;
}
