import { headingUnit } from '../../core/units/headingUnit';
import { measureUnit, type MeasureUnit, type Quantity } from '../../core/units/measureUnit';

/** What says that a tolerance is the whole way from limit to limit; of `range` nobody knows. */
const WIDTH = '(?:total|full|whole|overall)(?: (?:width|band|range|tolerance))?|width|band|range';
const WIDTH_REMARK = new RegExp(
  `^(.*\\btol(?:erance|\\.)?.*?) ?[([] ?(?:([^()[\\],;]+?) ?[,;] ?)?(${WIDTH}) ?(?:[,;]? ?([^()[\\]]+?) ?)?[)\\]]`,
  'i',
);

/** `Tolerance (total, mm)` → `Tolerance total (mm)`: a remark that says what the number is, is one of the heading's words. */
function withWidth(heading: string): string {
  return heading.replace(
    WIDTH_REMARK,
    (_, words: string, before: string | undefined, width: string, behind: string | undefined) => {
      const unit = before ?? behind;
      return `${words} ${width}${unit === undefined ? '' : ` (${unit})`}`;
    },
  );
}

/** `Tol (+, mm)`: of one way only. */
const ONE_WAY = /^(.*\btol(?:erance|\.)?[^([]*?) ?[([] ?([+\-−–])(?! ?[/+\-−–]) ?[,;]? ?([^()[\]]*?) ?[)\]]/i;
const withWay = (heading: string) =>
  heading.replace(ONE_WAY, (_, words: string, sign: string, unit: string) => `${words} ${sign}${unit && ` (${unit})`}`);

/** A cell may hold thousands of characters, a heading of a tolerance does not. */
const LONGEST = 100;

/** A tolerance's heading with its remarks in words; `+/- mm` as `± mm`: a minus before a unit is no dash. */
const written = (heading: string) =>
  heading.length > LONGEST ? heading : withWay(withWidth(heading)).replace(/\+ ?\/? ?-(?= ?(?:[\p{L}"'([]|$))/gu, '±');

/** A heading as it is compared: lower case, without what stands in brackets, without colon, star and question mark. */
export function plainHeading(heading: string): string {
  return written(heading)
    .toLowerCase()
    .replace(/(?<=[)\]])\s*(?:±|\+\s*\/?\s*-)\s*[\d.,]+.*$/, '')
    .replace(/[([][^()[\]]*[)\]]/g, ' ')
    .replace(/[:*?]/g, ' ')
    .replace(/[\s_]+/g, ' ')
    .trim();
}

/** Unit of a column as its heading states it. */
export interface StatedUnit {
  /** Undefined where the heading states none, or one that nobody knows. */
  readonly unit: MeasureUnit | undefined;
  /** The text in the place of a unit that is no unit: `klafter`. */
  readonly unknown: string | undefined;
  /** The heading's words without the unit, in lower case. */
  readonly words: string;
}

/** What readers call a column without a heading: `column M` has no metres. */
export const UNHEADED = /^column [A-Z]+$/;
/** `Feet left`: the unit stands in front. */
const UNIT_LEFT = /^(\p{L}+) (left|remaining|on (?:the )?reel)$/iu;

/**
 * A heading parted into words and unit.
 * @example statedUnit('Cut length mm', 'length') // words `cut length`, unit mm
 */
export function statedUnit(heading: string, quantity: Quantity): StatedUnit {
  if (UNHEADED.test(heading)) return { unit: undefined, unknown: undefined, words: heading.toLowerCase() };
  const [, first, left] = UNIT_LEFT.exec(heading.trim()) ?? [];
  const leading = first === undefined ? undefined : measureUnit(quantity, first);
  if (leading) return { unit: leading, unknown: undefined, words: left!.toLowerCase() };
  const { name, text, unit } = headingUnit(written(heading), quantity);
  return { unit, unknown: unit ? undefined : text, words: plainHeading(name) };
}

/** `Reel #` and `Req'd` in the words of the vocabulary. */
const SHORT: readonly (readonly [RegExp, string])[] = [
  [/(?<=\p{L})[-–](?=\p{L})/gu, ' '],
  [/(?<=\p{L}\.?) ?#$| (?:num|nbr|nr)\.?$/u, ' no.'],
  [/\breq['’]?d\.?(?!\p{L})/u, 'required'],
];

/** All ways to read a heading's words: as it stands, without its unit of length, without hyphens, and with short signs written out. */
export function headingForms(heading: string): readonly string[] {
  const plain = plainHeading(heading);
  const { unit, words } = statedUnit(heading, 'length');
  const forms = unit && words !== plain && words !== '' ? [words, plain] : [plain];
  const long = forms.map(form => SHORT.reduce((text, [sign, word]) => text.replace(sign, word), form));
  return [...forms, ...long.filter(form => !forms.includes(form))];
}
