import type { Decimal } from './decimal';
import { measureUnit, type MeasureUnit, type Quantity } from './measureUnit';
import { isTwoNumbers, numberFromText, type CommaRule } from './numberText';

/** A number read from a sheet's text, with the unit that stands behind it. */
export interface MeasureFromText {
  readonly value: Decimal;
  /** Undefined where the text has no unit of its own: that of its column holds. */
  readonly unit: MeasureUnit | undefined;
}

const LETTER = /[a-zµ°]/i;
/** One sign each for what phones and spreadsheets make of `1/2`. */
const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};
const withoutSigns = (text: string) => text.replace(/\u2044/g, '/').replace(/[¼½¾⅛⅜⅝⅞⅓⅔]/g, sign => ` ${FRACTION_SIGNS[sign]}`);
/** `2 ft 1 3/8 in`, as `2' 1 3/8"`. */
const FEET_AND_INCHES = /^([^a-z]*\d)\s*(?:ft\.?|feet|foot)[\s,-]*([^a-z]*\d)\s*(?:in\.?|inch(?:es)?|["″”])$/i;

/**
 * Reads a number with a unit behind it, as sheets have it (functions take no units in their arguments).
 * @param text e.g. `27.5 mm`, `3/8 in`, `4' 3 1/2"`, `1,5 m`, `210 bar`, `27.5`
 * @param comma how a comma that may mean either is taken; see numberFromText
 * @returns undefined where it is no number, or its word is no unit of that quantity
 * @example measureFromText('length', '1.25 m') // 1.25, m
 */
export function measureFromText(quantity: Quantity, text: string, comma?: CommaRule): MeasureFromText | undefined {
  if (isTwoNumbers(text)) return undefined;
  const bare = withoutSigns(text).trim().replace(FEET_AND_INCHES, `$1' $2"`);
  const at = bare.search(LETTER);
  const [digits, word] = at < 0 ? [bare, undefined] : [bare.slice(0, at), bare.slice(at)];
  const found = numberFromText(digits, comma);
  if (!found) return undefined;
  if (found.mark === 'inch') {
    const inch = quantity === 'length' && word === undefined ? measureUnit('length', 'in') : undefined;
    return inch && { value: found.value, unit: inch };
  }
  const unit = word === undefined ? undefined : measureUnit(quantity, word);
  return word !== undefined && !unit ? undefined : { value: found.value, unit };
}
