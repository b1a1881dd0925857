import { Decimal } from './decimal';

/** A number read from text, and the unit mark that stood with it: `inch` for `"` and `'` (feet are turned into inches). */
export interface NumberFromText {
  readonly value: Decimal;
  readonly mark: 'inch' | 'none';
}

/** How a comma is taken that may mean decimals or thousands (`1,250`): refused, or as decimal since its column has such commas. */
export type CommaRule = 'refuse' | 'decimal';

const DECIMAL = /^(?:\d+(?:\.\d*)?|\.\d+)$/;
const ONE_COMMA = /^\d*,\d+$/;
/** One comma that cannot part thousands: 1, 2 or more than 3 digits behind it, or nothing but a lone 0 before it. */
const DECIMAL_COMMA = /^(?:0?,\d+|\d+,(?:\d{1,2}|\d{4,}))$/;
const FRACTION = /^(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+)$/;
const FEET = /^([^']+?)\s*'(?:\s*-?\s*([^']+))?$/;

/** `12.5`, `12,5`, `3/8`, `1 1/2` or `1-1/2`, without sign and unit mark; undefined where it is none of these. */
function plainNumber(text: string, comma: CommaRule): Decimal | undefined {
  if (DECIMAL.test(text)) return new Decimal(text.replace(/\.$/, ''));
  if ((comma === 'decimal' ? ONE_COMMA : DECIMAL_COMMA).test(text)) return new Decimal(text.replace(',', '.'));
  const [, whole, numerator, denominator] = FRACTION.exec(text) ?? [];
  if (numerator === undefined || denominator === undefined || Number(denominator) === 0) return undefined;
  return new Decimal(whole ?? 0).plus(new Decimal(numerator).div(denominator));
}

/** As `plainNumber`, with an inch mark behind it if there is one. */
function inches(text: string, comma: CommaRule): NumberFromText | undefined {
  const marked = text.endsWith('"');
  const value = plainNumber(marked ? text.slice(0, -1).trimEnd() : text, comma);
  return value && { value, mark: marked ? 'inch' : 'none' };
}

/** `4'`, `4' 3 1/2"`, `4'-3 1/2"` as inches; a foot or more of inches is none: `1'250` is 1250 with a mark for thousands. */
function feetAndInches(text: string, comma: CommaRule): NumberFromText | undefined {
  const [, feetText, inchText] = FEET.exec(text) ?? [];
  if (feetText === undefined) return undefined;
  const feet = plainNumber(feetText, comma);
  const rest = inchText === undefined ? { value: new Decimal(0) } : inches(inchText, comma);
  return feet && rest?.value.lt(12) ? { value: feet.times(12).plus(rest.value), mark: 'inch' } : undefined;
}

/**
 * Reads a number that arrived as text: decimals, fractions, mixed numbers, inches and feet.
 * @param text e.g. `12.5`, `12,5`, ` 3/8 `, `1 1/2`, `1-1/2`, `1/2"`, `4' 3 1/2"`; a leading sign holds for the whole.
 * @param comma what a comma with three digits behind it is (`1,250`); default: not guessed at. Functions never give it.
 * @returns the value (inches where a mark says so), or undefined where the text is nothing of the kind
 * @example numberFromText(`4' 3 1/2"`) // 51.5 inch
 */
export function numberFromText(text: string, comma: CommaRule = 'refuse'): NumberFromText | undefined {
  const plain = text
    .replace(/[\u2032\u2018\u2019]/g, "'")
    .replace(/[\u2033\u201c\u201d]|''/g, '"')
    .replace(/\u2212/g, '-')
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .trim();
  const negative = plain.startsWith('-');
  const body = negative || plain.startsWith('+') ? plain.slice(1).trimStart() : plain;
  const found = body.includes("'") ? feetAndInches(body, comma) : inches(body, comma);
  return found && negative ? { ...found, value: found.value.negated() } : found;
}

/** `640/660`: two numbers, no fraction that anybody measures; the rule's 128ths have the longest denominator. */
export const isTwoNumbers = (text: string): boolean => /\d{3}\s*\/\s*(?!128(?!\d))\d|\/\s*(?!128(?!\d))\d{3}/.test(text);

/** `1.250` in a column of decimal commas: its point may part thousands. */
export const hasOpenPoint = (text: string): boolean => /^[-+\s]*[1-9]\d{0,2}\.\d{3}\s*$/.test(text);

/** True for a number whose comma can only be a decimal one (`12,5`, `0,375`): what makes `1,250` decimal in the same column. */
export function hasDecimalComma(text: string): boolean {
  return text.includes(',') && numberFromText(text) !== undefined;
}

/** The two ways to read a number with a comma that may mean either, decimals first; undefined where it is no such number. */
export function commaReadings(text: string): readonly [string, string] | undefined {
  const bare = text.trim();
  const readings = [bare.replace(',', '.'), bare.replace(',', '')] as const;
  const isEither = /,\d{3}/.test(bare) && !numberFromText(bare) && readings.every(reading => numberFromText(reading));
  return isEither ? readings : undefined;
}

/** What to say to a text that would be a number but for its commas; undefined to any other. */
export function commaAdvice(text: string): string | undefined {
  const readings = commaReadings(text);
  if (readings) return `its comma may mean decimals or thousands; write ${readings[0]} or ${readings[1]}`;
  const isNumber = /\d\s*,\s*\d/.test(text) && !numberFromText(text) && numberFromText(text.replaceAll(',', '')) !== undefined;
  return isNumber ? 'write a decimal point, and thousands without a mark, like 1250.5' : undefined;
}
