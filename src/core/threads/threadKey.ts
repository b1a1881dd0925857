import { Decimal } from '../units/decimal';
import { numberFromText } from '../units/numberText';

/** Letters before or behind the size of a pipe thread, and the family they stand for. Common practice of writing. */
const PIPE_FAMILIES: readonly (readonly [pattern: RegExp, family: string])[] = [
  [/\bnptf?\b/, 'npt'],
  [/\bbspt\b|^r[pc]?\b|^r[pc]?(?=\d)/, 'r'],
  [/\bbspp?\b|^g\b|^g(?=\d)/, 'g'],
];
const METRIC = /^m\s*(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)\b/;
const SIZE = /(\d+[\s-]+)?\d+\s*\/\s*\d+|\d+(?:\.\d+)?/;
const UNIFIED = /^((?:\d+[\s-]+)?\d+\s*\/\s*\d+|\d+(?:\.\d+)?)\s*-\s*(\d+(?:\.\d+)?)(?:\s*un[a-z]*)?(?:\s*-?\s*\d[ab])?$/;

const number = (text: string) => numberFromText(text)?.value ?? new Decimal(text);

/**
 * A thread as it is compared: `M22 x 1,5` is `M22x1.5`, `3/4-16 UNF-2B` is `3/4-16`, `1/2 NPT` is `1/2-14 NPT`.
 * @returns the text itself in small letters where it is no thread of the table's families
 */
export function threadKey(text: string): string {
  const plain = text
    .toLowerCase()
    .replace(/[×*]/g, 'x')
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/[″"]/g, '')
    .replace(/\s+/g, ' ')
    .trim();
  const [, diameter, pitch] = METRIC.exec(plain) ?? [];
  if (diameter !== undefined) return `m ${new Decimal(diameter)} ${new Decimal(pitch!)}`;
  const family = PIPE_FAMILIES.find(([pattern]) => pattern.test(plain))?.[1];
  const size = family && SIZE.exec(plain)?.[0];
  if (size) return `${family} ${number(size)}`;
  const [, inches, perInch] = UNIFIED.exec(plain) ?? [];
  return inches === undefined ? plain : `un ${number(inches)} ${new Decimal(perInch!)}`;
}
