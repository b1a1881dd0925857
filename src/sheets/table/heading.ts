import { headingUnit } from '../../core/units/headingUnit';
import type { MeasureUnit, Quantity } from '../../core/units/measureUnit';

/** A heading as it is compared: lower case, without what stands in brackets, without colon, star and question mark. */
export function plainHeading(heading: string): string {
  return heading
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

/**
 * A heading parted into words and unit.
 * @example statedUnit('Cut length mm', 'length') // words `cut length`, unit mm
 */
export function statedUnit(heading: string, quantity: Quantity): StatedUnit {
  const { name, text, unit } = headingUnit(heading, quantity);
  return { unit, unknown: unit ? undefined : text, words: plainHeading(name) };
}

/** All ways to read a heading's words: as it stands, without a unit of length at its end, and without hyphens. */
export function headingForms(heading: string): readonly string[] {
  const plain = plainHeading(heading);
  const { unit, words } = statedUnit(heading, 'length');
  const forms = unit && words !== plain && words !== '' ? [words, plain] : [plain];
  const parted = forms.map(form => form.replace(/(?<=\p{L})[-–](?=\p{L})/gu, ' ')).filter(form => !forms.includes(form));
  return [...forms, ...parted];
}
