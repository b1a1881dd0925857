import { TURN_PLACES } from '../../core/units/decimalPlaces';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { numberTyped } from '../../cells/typedNumber';
import type { CheckResult } from './machineCheck';

/** What somebody says of the calibration screw after a check. */
export interface ScrewTurned {
  /** "" while nobody has said it. */
  readonly answer: '' | 'yes' | 'no';
  /** How far, positive = tighter, as typed; "" = as the check advised. */
  readonly turns: string;
}

export const NOT_SAID: ScrewTurned = { answer: '', turns: '' };

/** Whether a check asks for it: where the machine is off and is not left alone. */
export const asksForScrew = ({ deviation, isLeftAlone }: CheckResult): boolean => !deviation.isZero() && !isLeftAlone;

/** Turns that a check advises, as far as a hand can turn them; undefined without a change per turn, or where they come to nothing. */
export function advisedTurns({ turns }: CheckResult): Decimal | undefined {
  const rounded = turns?.toDecimalPlaces(TURN_PLACES);
  return rounded?.isZero() ? undefined : rounded;
}

/**
 * Turns of the calibration screw that were made after a check, positive = tighter; 0 where it was not turned.
 * @throws TradeError where nobody has said it, or how far
 */
export function turnsMade(result: CheckResult, { answer, turns }: ScrewTurned): Decimal {
  if (!asksForScrew(result) || answer === 'no') return new Decimal(0);
  if (answer === '')
    throw new TradeError(
      'blank',
      'was the screw turned',
      'is not answered',
      'crimps before a turn do not count after it: choose Yes or No',
    );
  const typed = numberTyped(turns, 'turns made', { sign: 'any', isNever0: true, like: '0.25' }) ?? advisedTurns(result);
  if (typed) return typed;
  throw new TradeError('blank', 'turns made', 'is blank', 'enter how far the screw was turned, + is tighter');
}
