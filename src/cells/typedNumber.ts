import { TradeError } from '../core/tradeError';
import type { Decimal } from '../core/units/decimal';
import { measureFromText } from '../core/units/measureText';
import { convertMeasure, type MeasureUnit } from '../core/units/measureUnit';
import { numberFromText } from '../core/units/numberText';
import { asSentence } from '../core/asSentence';
import { number, type NumberRules } from './readers';

/** What a field of a form takes. */
export interface TypedRules extends Pick<NumberRules, 'sign' | 'hint' | 'like' | 'millimetres' | 'marks'> {
  /** Unit of the field: another unit behind the number is converted exactly (`2.5 cm` in a field of mm). */
  readonly unit?: MeasureUnit | undefined;
  /** A fraction, or per cent with its sign: `0.4`, `40 %`. A bare number of 1 or more is refused. */
  readonly share?: boolean;
  /** Whole numbers only: what to enter instead. */
  readonly whole?: string;
  /** Bounds that belong to it. */
  readonly least?: number;
  readonly most?: number;
  /** 0 is no number of this field. */
  readonly isNever0?: boolean;
  /** A single comma is a decimal one: instruments type it so. */
  readonly comma?: 'decimal';
  /** What to say where nothing was typed; without it a blank is no mistake. */
  readonly blank?: string | undefined;
}

/** A number that was typed, or what is wrong with it; neither where the field may stay blank and does. */
export interface TypedNumber {
  readonly value?: Decimal;
  /** A sentence. */
  readonly mistake?: string;
}

const WORD_BEHIND = /[a-zµ°²]\.?$/i;

function shareOf(text: string, label: string, { like = '40 % or 0.4' }: TypedRules): Decimal {
  const advice = `enter a share like ${like}`;
  const [, digits = '', percent] = /^(.*?)\s*(%?)$/.exec(text) ?? [];
  const found = numberFromText(digits);
  if (!found || found.mark === 'inch') throw new TradeError('notANumber', label, `is "${text}"`, advice);
  const { value } = found;
  if (percent) return value.div(100);
  if (value.gte(1)) throw new TradeError('range', label, `is ${value}`, `enter ${value} % or ${value.div(100)}`);
  return value;
}

/** A number with a unit word behind it, in the field's unit; undefined where it is none. */
function inUnit(text: string, unit: MeasureUnit | undefined): Decimal | undefined {
  if (!unit || !WORD_BEHIND.test(text)) return undefined;
  const found = measureFromText(unit.quantity, text);
  return found?.unit && convertMeasure(found.value, found.unit, unit);
}

/** @throws TradeError for what lies outside the bounds of its field */
function refuseOutside(value: Decimal, label: string, { whole, least, most, isNever0 }: TypedRules): void {
  const refuse = (advice: string) => {
    throw new TradeError('range', label, `is ${value}`, advice);
  };
  if (whole !== undefined && !value.isInteger()) refuse(whole);
  if (isNever0 && value.isZero()) refuse('it must not be 0');
  const isLess = least !== undefined && value.lt(least);
  const isMore = most !== undefined && value.gt(most);
  if (!isLess && !isMore) return;
  if (least !== undefined && most !== undefined) refuse(`it must be from ${least} to ${most}`);
  refuse(isLess ? `it must be ${least} or more` : `it must be ${most} or less`);
}

/** A single comma made a point, where it is a decimal one. */
function withPoint(text: string, { comma }: TypedRules): string {
  return comma === 'decimal' && /^[^,]*,[^,]*$/.test(text) && numberFromText(text, comma) ? text.replace(',', '.') : text;
}

/**
 * What was typed into a field as a number.
 * @param label what the field is, as sentences name it
 * @returns undefined where the field may stay blank and does
 * @throws TradeError naming `label`
 */
export function numberTyped(typed: string, label: string, rules: TypedRules = {}): Decimal | undefined {
  const text = withPoint(typed.trim(), rules);
  if (text === '') {
    if (rules.blank === undefined) return undefined;
    throw new TradeError('blank', label, 'is blank', rules.blank);
  }
  if (rules.share) return shareOf(text, label, rules);
  const converted = inUnit(text, rules.unit);
  // The sign is judged in one place, whatever the unit.
  const value = number(rules)(converted?.toString() ?? text, label);
  refuseOutside(value, label, rules);
  return value;
}

/**
 * The one way from a field of a form to a number or a mistake. A lone comma is a decimal one where it can be nothing else (`12,5`); `1,250`
 * is a mistake that names both readings.
 * @example typedNumber('2.5 cm', 'kerf', { unit: millimetre }) // value 25
 */
export function typedNumber(typed: string, label: string, rules: TypedRules = {}): TypedNumber {
  try {
    const value = numberTyped(typed, label, rules);
    return value ? { value } : {};
  } catch (error) {
    if (error instanceof TradeError) return { mistake: asSentence(error.message) };
    throw error;
  }
}
