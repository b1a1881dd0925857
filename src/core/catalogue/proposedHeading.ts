import { measureUnit, type MeasureUnit, type Quantity } from '../units/measureUnit';
import { catalogueHeadingWords } from './catalogueHeadingWords';
import { splitHeading } from '../units/headingUnit';
import { headingKey } from './partName';
import type { Field, TableSchema } from './tableSchema';
import { catalogueTables, TABLE_NAMES, type TableName } from './tables/catalogueTables';

/** What a heading of somebody else's table probably means. */
export interface HeadingMeaning {
  /** Key of the field. */
  readonly key: string;
  readonly field: Field;
  /** Unit that the heading states, in brackets, behind a comma or at its end; undefined where it states none that the field knows. */
  readonly unit: MeasureUnit | undefined;
}

/** Tables of spreadsheet programs have no longer headings (Excel: 255 characters). */
const LONGEST_HEADING = 255;

/** Kinds of field whose heading needs no unit. */
export const UNITLESS: ReadonlySet<Field['kind']> = new Set(['name', 'text', 'number', 'fraction', 'angle', 'date', 'yesNo']);

/** As headingKey, points, slashes and other marks ignored, too: `O.D.` is `OD`. */
const wordKey = (text: string) => headingKey(text).replace(/[./\\_:#'’()[\]]+/g, '') || headingKey(text);

function wordsOf(table: TableName): ReadonlyMap<string, string> {
  const words = new Map<string, string>();
  for (const [key, list] of Object.entries(catalogueHeadingWords[table])) {
    for (const word of list.split(',')) if (!words.has(wordKey(word))) words.set(wordKey(word), key);
  }
  // Own headings win over every other word.
  for (const [key, { heading }] of Object.entries(catalogueTables[table].fields)) words.set(wordKey(heading), key);
  return words;
}

const WORDS = new Map(TABLE_NAMES.map(name => [name, wordsOf(name)]));

/** A heading parted into name and unit text in every way in which people write it: `OD (in)`, `OD, in`, `OD in`. */
function partings(heading: string): { name: string; unitText: string | undefined }[] {
  const { name, bracket } = splitHeading(heading);
  const [, beforeComma, behindComma] = /^(.+?)\s*,\s*([^,]+)$/.exec(name) ?? [];
  const [, before, last] = /^(.+?)\s+(\S+)$/.exec(name) ?? [];
  return [
    { name, unitText: bracket },
    ...(beforeComma === undefined ? [] : [{ name: beforeComma, unitText: behindComma }]),
    ...(before === undefined ? [] : [{ name: before, unitText: last }]),
  ];
}

function unitOf({ kind }: Field, unitText: string | undefined, heading: string): MeasureUnit | undefined {
  if (UNITLESS.has(kind)) return undefined;
  const quantity = (kind === 'vacuum' ? 'pressure' : kind) as Quantity;
  const stated = unitText === undefined ? undefined : measureUnit(quantity, unitText);
  // `Price per m (EUR)`: the unit is in the name.
  return stated ?? (quantity === 'perLength' ? measureUnit(quantity, splitHeading(heading).name) : undefined);
}

/**
 * What a heading means in a table of the catalogue, by our own words or by what else people write.
 * @example proposedHeading('hoses', 'WP (psi)') // Working pressure in psi
 */
export function proposedHeading(table: TableName, heading: string): HeadingMeaning | undefined {
  if (heading.length > LONGEST_HEADING) return undefined;
  const fields: TableSchema['fields'] = catalogueTables[table].fields;
  const words = WORDS.get(table)!;
  for (const [index, { name, unitText }] of partings(heading).entries()) {
    const key = words.get(wordKey(name));
    if (key === undefined) continue;
    const field = fields[key]!;
    const unit = unitOf(field, unitText, heading);
    // Only a unit that is one may be cut off a name.
    if (index === 0 || unit) return { key, field, unit };
  }
  return undefined;
}

/**
 * Headings of a table that are not ours but probably mean one of its fields → that field's heading with its unit. A field that has a
 * heading of its own, or that an earlier one means already, is not proposed again.
 * @example proposedHeadings('hoses', ['Hose', 'ID (mm)']) // ID (mm) → Bore (mm)
 */
export function proposedHeadings(table: TableName, headings: readonly unknown[]): ReadonlyMap<string, string> {
  const fields = Object.entries(catalogueTables[table].fields as TableSchema['fields']);
  const texts = headings.flatMap(cell => (typeof cell === 'string' && cell.trim() !== '' ? [cell.trim()] : []));
  const isOwn = (text: string) =>
    fields.find(([, { heading }]) => headingKey(heading) === headingKey(splitHeading(text).name))?.[0];
  const taken = new Set(texts.flatMap(text => isOwn(text) ?? []));
  const proposed = new Map<string, string>();
  for (const text of texts) {
    if (isOwn(text) !== undefined) continue;
    const meaning = proposedHeading(table, text);
    if (!meaning || taken.has(meaning.key)) continue;
    taken.add(meaning.key);
    proposed.set(text, meaning.unit ? `${meaning.field.heading} (${meaning.unit.symbol})` : meaning.field.heading);
  }
  return proposed;
}

/**
 * What stands below a heading, whichever table of the catalogue it belongs to: text, or numbers. Text wins where it may be either.
 * @returns undefined where the heading says neither; `ID` without a unit may be a bore or a part's number
 */
export function headingHolds(heading: string): 'text' | 'number' | undefined {
  const own = headingKey(splitHeading(heading).name);
  const kinds = TABLE_NAMES.flatMap(name => {
    const meaning = proposedHeading(name, heading);
    if (!meaning) return [];
    const { field, unit } = meaning;
    if (field.kind === 'name' || field.kind === 'text') return ['text'];
    return unit || UNITLESS.has(field.kind) || headingKey(field.heading) === own ? ['number'] : [];
  });
  if (kinds.includes('text')) return 'text';
  return kinds.length > 0 ? 'number' : undefined;
}
