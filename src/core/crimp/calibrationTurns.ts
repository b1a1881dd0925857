import type { Decimal } from '../units/decimal';

/**
 * Turns of a machine's calibration screw that take out a deviation: deviation ÷ change of diameter per turn.
 * @param deviation mean − target, over all combinations of the machine
 * @param perTurn change of crimp diameter in one turn, in the unit of `deviation`; more than 0
 * @returns turns, positive = crimp tighter
 * Source: common practice of the trade.
 */
export function calibrationTurns(deviation: Decimal, perTurn: Decimal): Decimal {
  return deviation.div(perTurn);
}
