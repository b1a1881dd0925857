import { splitHeading } from '../../core/units/headingUnit';
import { headingKey } from '../../core/catalogue/partName';
import type { RawCell, RawTable } from '../../core/catalogue/rawTable';
import { proposedHeadings, UNITLESS } from '../../core/catalogue/proposedHeading';
import type { Field, TableSchema } from '../../core/catalogue/tableSchema';
import { catalogueTables, TABLE_NAMES } from '../../core/catalogue/tables/catalogueTables';
import { measureUnit, unitSymbols, type Quantity } from '../../core/units/measureUnit';
import { numberFromText } from '../../core/units/numberText';
import { mapHeadings, type HeadingMap } from './mapHeadings';

/** A heading that somebody has to say something about, or has. */
export interface HeadingFix {
  /** As it came. */
  readonly heading: string;
  /** Zero-based column. */
  readonly column: number;
  /** What is wrong with it as it came. */
  readonly trouble: 'unknown' | 'unit' | 'twice' | 'none';
  /** Key of the field it stands for now; "" = it is not read. */
  readonly field: string;
  /** Unit it is read in; "" = none. */
  readonly unit: string;
  /** Nobody said so: it is what the words of the trade say. */
  readonly isProposed: boolean;
}

const NOT_USED = 'not used: ';

/** Units that a field's heading may state; none where it needs none. */
export function unitsOf({ kind }: Field): readonly string[] {
  if (UNITLESS.has(kind)) return [];
  return unitSymbols((kind === 'vacuum' ? 'pressure' : kind) as Quantity).split(', ');
}

function knownUnit(field: Field, bracket: string | undefined): string {
  if (UNITLESS.has(field.kind) || bracket === undefined) return '';
  return measureUnit((field.kind === 'vacuum' ? 'pressure' : field.kind) as Quantity, bracket)?.symbol ?? '';
}

/** True for a number other than 0, typed or as text: in a column of vacuums, yes, no and 0 need no unit. */
function isAmount(cell: RawCell | undefined): boolean {
  if (typeof cell === 'number') return cell !== 0;
  const found = typeof cell === 'string' ? numberFromText(cell) : undefined;
  return !!found && !found.value.isZero();
}

/** True where a field in this column needs a unit: a vacuum in words has none, one in numbers says only yes without it. */
export function needsUnit({ kind }: Field, rows: RawTable, column: number): boolean {
  if (kind === 'vacuum') return rows.some(cells => isAmount(cells[column]));
  return !UNITLESS.has(kind);
}

/** The field a heading means, and its unit. */
function meaning(schema: TableSchema, heading: string): { readonly key: string; readonly unit: string } {
  const { name, bracket } = splitHeading(heading);
  const [key = '', field] = Object.entries(schema.fields).find(([, each]) => headingKey(each.heading) === headingKey(name)) ?? [];
  return { key, unit: field ? knownUnit(field, bracket) : '' };
}

const mapped = (heading: string, map: HeadingMap) => String(mapHeadings([[heading]], map)[0]![0]);

/** The text that a heading is replaced by, so that it is read as the field in that unit; "" = not read at all. */
export function headingText(schema: TableSchema, heading: string, key: string, unit: string): string {
  const field = schema.fields[key];
  if (!field) return NOT_USED + splitHeading(heading).name;
  return unit === '' ? field.heading : `${field.heading} (${unit})`;
}

function troubleOf(
  schema: TableSchema,
  heading: string,
  seen: Set<string>,
  needs: (field: Field) => boolean,
): HeadingFix['trouble'] {
  const { key, unit } = meaning(schema, heading);
  if (key === '') return 'unknown';
  if (seen.has(key)) return 'twice';
  seen.add(key);
  const field = schema.fields[key]!;
  const { bracket } = splitHeading(heading);
  const isVague = field.kind === 'vacuum' && bracket !== undefined && unit === '';
  return (unit === '' && needs(field)) || isVague ? 'unit' : 'none';
}

/** What somebody mapped, and for the other headings what the words of the trade propose. */
export function withProposals(schema: TableSchema, headings: readonly RawCell[], map: HeadingMap): HeadingMap {
  const table = TABLE_NAMES.find(name => catalogueTables[name].sheet === schema.sheet)!;
  const own = headings.map(cell => (typeof cell === 'string' && map.has(cell.trim()) ? map.get(cell.trim())! : cell));
  return new Map([...proposedHeadings(table, own), ...map]);
}

/** The headings of a table that are unknown, lack a unit or stand twice, and those that were mapped. */
export function headingFixes(schema: TableSchema, [headings = [], ...rows]: RawTable, map: HeadingMap): readonly HeadingFix[] {
  const seen = new Set<string>();
  const whole = withProposals(schema, headings, map);
  return headings.flatMap((cell, column) => {
    if (typeof cell !== 'string' || cell.trim() === '') return [];
    const heading = cell.trim();
    const trouble = troubleOf(schema, heading, seen, field => needsUnit(field, rows, column));
    if (trouble === 'none' && !map.has(heading)) return [];
    const { key, unit } = meaning(schema, mapped(heading, whole));
    return [{ heading, column, trouble, field: key, unit, isProposed: key !== '' && !map.has(heading) && whole.has(heading) }];
  });
}

/** Headings of required fields that no heading stands for yet. */
export function missingFields(schema: TableSchema, headings: readonly RawCell[], map: HeadingMap): readonly string[] {
  const whole = withProposals(schema, headings, map);
  const found = new Set(
    headings.flatMap(cell => (typeof cell === 'string' ? [meaning(schema, mapped(cell.trim(), whole)).key] : [])),
  );
  return Object.entries(schema.fields)
    .filter(([key, field]) => field.required && !found.has(key))
    .map(([, field]) => field.heading);
}

/** Headings of a table that are read as something nobody has confirmed. */
export function unconfirmed(schema: TableSchema, raw: RawTable, map: HeadingMap): readonly string[] {
  return headingFixes(schema, raw, map).flatMap(({ heading, isProposed }) => (isProposed ? [heading] : []));
}
