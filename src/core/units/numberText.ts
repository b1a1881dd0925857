import { Decimal } from './decimal';

/** A number read from text, and the unit mark that stood with it: `inch` for `"` and `'` (feet are turned into inches). */
export interface NumberFromText {
  readonly value: Decimal;
  readonly mark: 'inch' | 'none';
}

const DECIMAL = /^(?:\d+\.?\d*|\.\d+)$/;
const FRACTION = /^(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+)$/;
const FEET = /^([^']+?)\s*'(?:\s*-?\s*([^']+))?$/;

/** `12.5`, `3/8`, `1 1/2` or `1-1/2`, without sign and unit mark; undefined where it is none of these. */
function plainNumber(text: string): Decimal | undefined {
  if (DECIMAL.test(text)) return new Decimal(text.replace(/\.$/, ''));
  const [, whole, numerator, denominator] = FRACTION.exec(text) ?? [];
  if (numerator === undefined || denominator === undefined || Number(denominator) === 0) return undefined;
  return new Decimal(whole ?? 0).plus(new Decimal(numerator).div(denominator));
}

/** As `plainNumber`, with an inch mark behind it if there is one. */
function inches(text: string): NumberFromText | undefined {
  const marked = text.endsWith('"');
  const value = plainNumber(marked ? text.slice(0, -1).trimEnd() : text);
  return value && { value, mark: marked ? 'inch' : 'none' };
}

/** `4'`, `4' 3 1/2"`, `4'-3 1/2"` as inches. */
function feetAndInches(text: string): NumberFromText | undefined {
  const [, feetText, inchText] = FEET.exec(text) ?? [];
  if (feetText === undefined) return undefined;
  const feet = plainNumber(feetText);
  const rest = inchText === undefined ? { value: new Decimal(0) } : inches(inchText);
  return feet && rest && { value: feet.times(12).plus(rest.value), mark: 'inch' };
}

/**
 * Reads a number that arrived as text: decimals, fractions, mixed numbers, inches and feet.
 * @param text e.g. `12.5`, ` 3/8 `, `1 1/2`, `1-1/2`, `1/2"`, `4' 3 1/2"`; a leading sign holds for the whole.
 * @returns the value (inches where a mark says so), or undefined where the text is nothing of the kind:
 * a decimal comma or a thousands separator is never guessed at.
 * @example numberFromText(`4' 3 1/2"`) // 51.5 inch
 */
export function numberFromText(text: string): NumberFromText | undefined {
  const plain = text
    .replace(/[\u2032\u2018\u2019]/g, "'")
    .replace(/[\u2033\u201c\u201d]|''/g, '"')
    .replace(/\u2212/g, '-')
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .trim();
  const negative = plain.startsWith('-');
  const body = negative || plain.startsWith('+') ? plain.slice(1).trimStart() : plain;
  const found = body.includes("'") ? feetAndInches(body) : inches(body);
  return found && negative ? { ...found, value: found.value.negated() } : found;
}

/** True for a text that would be a number but for its commas, which may stand for decimals or part thousands. */
export function isNumberWithCommas(text: string): boolean {
  return /\d\s*,\s*\d/.test(text) && numberFromText(text.replaceAll(',', '')) !== undefined;
}

/** What to say to such a text. */
export const COMMA_ADVICE =
  'it has a comma, which may mean decimals or thousands; write a decimal point, and thousands without a mark, like 1250.5';
