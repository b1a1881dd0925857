import { measureUnit, type MeasureUnit, type Quantity } from './measureUnit';

/** A heading parted into its words and its unit. */
export interface HeadingUnit {
  /** The heading without its unit. */
  readonly name: string;
  /** What stands where a unit belongs, known or not; undefined where nothing does. */
  readonly text: string | undefined;
  /** The unit that it is; undefined with a `text` means: a unit that is not known, or another remark in brackets. */
  readonly unit: MeasureUnit | undefined;
}

const BRACKETS = /^(.*?)\s*[([]([^()[\]]*)[)\]]$/;
const MARK_AT_END = /^(.*\S)(["'″′]|'')$/;
const AFTER_SLASH = /^(.*[\p{L}\d).])\s*\/\s*(\p{L}+)$/u;
/** The longest unit words (`inches of mercury`, `US gal per min`) have four words. */
const MOST_WORDS = 4;

/** What parts a unit from the words before it: `Cut length in mm`, `Cut length - mm`. */
const BEFORE_UNIT = /\s*(?:[,;:–—-]|\bin)$/i;

/** `Cut-off (mm)` → `Cut-off`, `mm`; marks behind it go, and `± 2`. */
export function splitHeading(heading: string): { name: string; bracket: string | undefined } {
  const text = heading
    .replace(/[\s_]+/g, ' ')
    .replace(/(?<=[)\]])\s*(?:±|\+\s*\/?\s*-)\s*[\d.,]+.*$/, '')
    .replace(/[\s:*]+$/, '')
    .trim();
  const [, name, bracket] = BRACKETS.exec(text) ?? [];
  return name === undefined ? { name: text, bracket: undefined } : { name, bracket: bracket!.trim() };
}

/** Longest run of last words that is a unit: `Cut length mm`, `Cut length, mm`, `Flow gal per min`. */
function unitAtEnd(heading: string, quantity: Quantity): HeadingUnit | undefined {
  const words = heading.split(' ');
  for (let count = Math.min(MOST_WORDS, words.length - 1); count > 0; count--) {
    const text = words.slice(-count).join(' ');
    const unit = measureUnit(quantity, text);
    if (unit)
      return {
        name: words.slice(0, -count).join(' ').replace(BEFORE_UNIT, '').trim(),
        text,
        unit,
      };
  }
  const [, name, mark] = MARK_AT_END.exec(heading) ?? AFTER_SLASH.exec(heading) ?? [];
  const unit = mark === undefined ? undefined : measureUnit(quantity, mark);
  return unit && { name: name!, text: mark, unit };
}

/** What a bracket says besides the unit: `(in mm)`, `(mm, measured)`, `(± mm)`. */
function unitInBracket(quantity: Quantity, bracket: string): MeasureUnit | undefined {
  const bare = bracket.replace(/^(?:in\s+|±\s*|\+\s*\/?\s*-\s*)(?=\S)/i, '');
  const [first = ''] = bare.split(/[,;]/);
  return measureUnit(quantity, bracket) ?? measureUnit(quantity, bare) ?? measureUnit(quantity, first);
}

/**
 * The unit that a heading states: in brackets, after a comma, in a line of its own or as its last word.
 * @param quantity what the column holds, so that `Series L` has no litres
 * @example headingUnit('Cut length, metres', 'length') // name `Cut length`, text `metres`, unit m
 */
export function headingUnit(heading: string, quantity: Quantity): HeadingUnit {
  const { name, bracket } = splitHeading(heading);
  if (bracket !== undefined) return { name, text: bracket, unit: unitInBracket(quantity, bracket) };
  return unitAtEnd(name, quantity) ?? { name, text: undefined, unit: undefined };
}
