import { READ_PLACES, TURN_PLACES } from '../../core/units/decimalPlaces';
import { calibrationTurns } from '../../core/crimp/calibrationTurns';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { numberTyped } from '../../cells/typedNumber';
import { checkReading } from '../crimps/readingCheck';

/** The form as it is typed. */
export interface CheckForm {
  readonly unit: LengthUnit;
  readonly machine: string;
  /** Reference set-up in words: hose, fitting, die, dial. */
  readonly setUp: string;
  readonly expected: string;
  readonly readings: readonly string[];
  readonly perTurn: string;
  /** A deviation up to this is left alone; "" = the user decides. */
  readonly leaveAlone: string;
}

/** What a check found. */
export interface CheckResult {
  readonly expected: Decimal;
  readonly readings: readonly Decimal[];
  readonly mean: Decimal;
  /** Mean − expected. */
  readonly deviation: Decimal;
  readonly perTurn: Decimal | undefined;
  /** Turns of the calibration screw, positive = crimp tighter; undefined without a change per turn. */
  readonly turns: Decimal | undefined;
  readonly isLeftAlone: boolean;
  /** What to do, in a sentence. */
  readonly sentence: string;
}

function length(text: string, label: string): Decimal | undefined {
  return numberTyped(text, label, { sign: 'positive', hint: 'enter a number above 0, or leave it blank' });
}

function required(text: string, label: string): Decimal {
  const value = length(text, label);
  if (value) return value;
  throw new TradeError('blank', label, 'is blank', 'fill it in');
}

function readingsOf({ readings, unit }: CheckForm, expected: Decimal): Decimal[] {
  const typed = readings.filter(text => text.trim() !== '');
  if (typed.length < 2) throw new TradeError('blank', 'readings', 'are missing', 'enter two or more, four as a rule');
  return typed.map((text, index) => {
    const answer = checkReading(text, { unit, target: expected, tolerance: new Decimal(0) });
    if (answer.kind === 'refused') throw new TradeError('range', `reading ${index + 1}`, '', answer.sentence);
    return answer.value;
  });
}

function sentenceOf(deviation: Decimal, turns: Decimal | undefined, isLeftAlone: boolean, unit: LengthUnit): string {
  if (deviation.isZero()) return 'The machine crimps as expected.';
  const side = deviation.isNegative() ? 'small' : 'large';
  const off = `The machine crimps ${deviation.abs().toDecimalPlaces(READ_PLACES)} ${unit} ${side}`;
  if (isLeftAlone) return `${off}: small enough to leave alone.`;
  if (!turns) return `${off}. Enter the change per turn to see how far to turn the calibration screw.`;
  const way = turns.isNegative() ? 'looser' : 'tighter';
  return `${off}: turn the calibration screw ${turns.abs().toDecimalPlaces(TURN_PLACES)} turns ${way}, then check again.`;
}

/**
 * Works a machine check out.
 * @throws TradeError naming the field that cannot be used
 */
export function machineCheck(form: CheckForm): CheckResult {
  const expected = required(form.expected, 'expected diameter');
  const readings = readingsOf(form, expected);
  const mean = Decimal.sum(...readings).div(readings.length);
  const deviation = mean.minus(expected);
  const perTurn = length(form.perTurn, 'change per turn');
  const leaveAlone = length(form.leaveAlone, 'leave alone within');
  const isLeftAlone = leaveAlone !== undefined && deviation.abs().lte(leaveAlone);
  const turns = perTurn && calibrationTurns(deviation, perTurn);
  return {
    expected,
    readings,
    mean,
    deviation,
    perTurn,
    turns,
    isLeftAlone,
    sentence: sentenceOf(deviation, turns, isLeftAlone, form.unit),
  };
}

/** Rounded for a cell of the log. */
export const cellNumberOf = (value: Decimal, places: number = READ_PLACES) => value.toDecimalPlaces(places).toNumber();
