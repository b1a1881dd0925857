import { typedNumber } from '../../cells/typedNumber';
import { isNearTarget } from '../../core/crimp/impossibleReading';
import { quotedText } from '../../core/quotedText';
import { Decimal } from '../../core/units/decimal';
import { MM_PER_INCH, type LengthUnit } from '../../core/units/lengthUnit';
import { FIRST_DATE, LAST_DATE } from '../../core/units/sheetDate';

/** What a typed reading is measured against. */
export interface ReadingLimits {
  readonly unit: LengthUnit;
  readonly target: Decimal;
  readonly tolerance: Decimal;
}

/** What was typed: a reading; no reading, with the reason; or one that has to be confirmed. */
export type ReadingAnswer =
  | { readonly kind: 'reading'; readonly value: Decimal }
  | { readonly kind: 'ask'; readonly value: Decimal; readonly sentence: string }
  | { readonly kind: 'refused'; readonly sentence: string };

const refused = (sentence: string): ReadingAnswer => ({ kind: 'refused', sentence });

const DATE = /^(?:\d{1,2}[./-]\d{1,2}[./-](?:\d{2}|\d{4})|\d{4}-\d{1,2}-\d{1,2}(?:[T ].*)?)$/;
const UNIT = /^(.*?\d\.?)\s*(mm|millimet\w+|in|inch|inches|″|")$/i;
const INCH_MARK = /["'″′/]/;

/** Farther from the target than this, it is another part, another place on it, or a slip of the hand. */
const ASK_SHARE = new Decimal('0.02');
const ASK_TOLERANCES = 5;

/** How far from the target a reading may lie before it is asked about. */
function askBeyond({ target, tolerance }: ReadingLimits): Decimal {
  return Decimal.max(target.times(ASK_SHARE), tolerance.times(ASK_TOLERANCES));
}

function splitUnit(text: string): { readonly digits: string; readonly unit: LengthUnit | undefined } {
  const [, digits, unit] = UNIT.exec(text) ?? [];
  if (digits === undefined) return { digits: text, unit: undefined };
  return { digits, unit: unit!.toLowerCase().startsWith('m') ? 'mm' : 'in' };
}

const nearTarget = (value: Decimal, { target }: ReadingLimits): boolean => isNearTarget(value, target);

/** The other unit in which the value would be near the target. */
function otherUnit(value: Decimal, limits: ReadingLimits): string | undefined {
  if (limits.unit === 'mm' && nearTarget(value.times(MM_PER_INCH), limits)) {
    return `${value} looks like inches (${value.times(MM_PER_INCH).toDecimalPlaces(2)} mm): set the caliper to mm and measure again`;
  }
  if (limits.unit === 'in' && nearTarget(value.div(MM_PER_INCH), limits)) {
    return `${value} looks like millimetres (${value.div(MM_PER_INCH).toDecimalPlaces(4)} in): set the caliper to inches and measure again`;
  }
  return undefined;
}

/** A point that was left out, or typed in the wrong place. */
function otherPoint(value: Decimal, limits: ReadingLimits): string {
  const moved = [10, 100, 1000, 10_000].flatMap(factor => [value.div(factor), value.times(factor)]);
  const meant = moved.find(candidate => candidate.minus(limits.target).abs().lte(askBeyond(limits)));
  return meant ? ` (is the decimal point missing? ${meant})` : '';
}

function ofNumber(value: Decimal, limits: ReadingLimits): ReadingAnswer {
  const { unit, target } = limits;
  if (value.isZero()) return refused('0 is no diameter: is the caliper closed? Measure again');
  if (value.isNegative()) return refused(`${value} is below 0: set the caliper to 0 with its jaws closed and measure again`);
  if (nearTarget(value, limits)) {
    const off = value.minus(target);
    if (off.abs().lte(askBeyond(limits))) return { kind: 'reading', value };
    const side = off.isNegative() ? 'below' : 'above';
    const sentence = `${value} is ${off.abs()} ${unit} ${side} the target ${target}. Right part, right place? Press Enter again to keep it, or measure again`;
    return { kind: 'ask', value, sentence };
  }
  if (value.isInteger() && value.gte(FIRST_DATE) && value.lte(LAST_DATE))
    return refused(`${value} looks like a date: measure again`);
  return refused(
    otherUnit(value, limits) ??
      `${value} cannot be a reading of a crimp of ${target} ${unit}${otherPoint(value, limits)}: measure again`,
  );
}

/**
 * Checks what a caliper, or a hand, typed into a reading's field. A single decimal comma is taken as the point, for calipers type it so.
 * @param typed `25.01`, `25,01`, ` 25.01 mm`; fractions where the unit is inches
 */
export function checkReading(typed: string, limits: ReadingLimits): ReadingAnswer {
  const text = typed.trim();
  if (text === '') return refused('nothing was typed: measure, or press Page Down to leave this row');
  if (DATE.test(text)) return refused(`${quotedText(text)} looks like a date: measure again`);
  const { digits, unit } = splitUnit(text);
  if (unit && unit !== limits.unit) {
    const wanted = limits.unit === 'mm' ? 'mm' : 'inches';
    return refused(
      `${quotedText(text)} is in ${unit === 'mm' ? 'mm' : 'inches'}, but this row is in ${wanted}: set the caliper to ${wanted}`,
    );
  }
  const { value } = typedNumber(digits, 'reading', { comma: 'decimal' });
  if (!value) return refused(`${quotedText(text)} is not a reading: enter a number like 25.01`);
  if (limits.unit === 'mm' && INCH_MARK.test(digits)) {
    return refused(`${quotedText(text)} looks like inches, but this row is in mm: set the caliper to mm`);
  }
  return ofNumber(value, limits);
}
