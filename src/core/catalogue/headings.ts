import { quotedText } from '../quotedText';
import { TradeError } from '../tradeError';
import { splitHeading } from '../units/headingUnit';
import { measureUnit, unitSymbols, type MeasureUnit, type Quantity } from '../units/measureUnit';
import { headingKey } from './partName';
import type { RawCell, RawTable } from './rawTable';
import type { Field, TableSchema } from './tableSchema';

/** A column of a table that came, and what it means. */
export interface TableColumn {
  readonly key: string;
  readonly field: Field;
  /** Zero-based place in the table's rows. */
  readonly index: number;
  /** Unit in the heading, where the column needs one. */
  readonly unit?: MeasureUnit;
  /** The heading says per cent. */
  readonly percent: boolean;
  /** What stands in the heading's brackets. */
  readonly bracket: string | undefined;
}

/** Where a table's data start and what its columns mean. */
export interface Headings {
  /** Zero-based row of the headings. */
  readonly row: number;
  readonly columns: readonly TableColumn[];
  /** All known fields that have a heading, those without any data included. */
  readonly stated: ReadonlySet<string>;
}

const QUANTITIES: ReadonlySet<string> = new Set<Quantity>([
  'length',
  'pressure',
  'temperature',
  'mass',
  'massPerLength',
  'perLength',
]);
const EXAMPLES: Partial<Record<string, string>> = {
  length: 'mm',
  pressure: 'bar',
  temperature: '°C',
  mass: 'kg',
  massPerLength: 'kg/m',
  perLength: 'per m',
};

/** A field's heading with an example of its unit: `Cut-off (mm)`. */
function headingWithUnit({ heading, kind }: Field): string {
  return EXAMPLES[kind] ? `${heading} (${EXAMPLES[kind]})` : heading;
}

export function isFilled(cell: RawCell | undefined): boolean {
  return cell !== null && cell !== undefined && (typeof cell !== 'string' || cell.trim() !== '');
}

function unitOf(sheet: string, field: Field, bracket: string | undefined): MeasureUnit | undefined {
  const quantity = (field.kind === 'vacuum' ? 'pressure' : field.kind) as Quantity;
  if (!QUANTITIES.has(quantity)) return undefined;
  if (!bracket) {
    if (field.kind === 'vacuum') return undefined;
    throw new TradeError(
      'unit',
      sheet,
      `heading "${field.heading}" has no unit`,
      `write it like ${headingWithUnit(field)}; units are ${unitSymbols(quantity)}`,
    );
  }
  const unit = measureUnit(quantity, bracket);
  if (unit) return unit;
  const received = `heading "${field.heading}" has the unknown unit ${quotedText(bracket)}`;
  throw new TradeError('unit', sheet, received, `units are ${unitSymbols(quantity)}`);
}

function requireAll(schema: TableSchema, found: ReadonlySet<string>): void {
  const missing = Object.entries(schema.fields).filter(([key, field]) => field.required && !found.has(key));
  if (missing.length === 0) return;
  const names = missing.map(([, field]) => `"${field.heading}"`).join(', ');
  const advice =
    found.size === 0
      ? `the first row must hold the headings (of a table, give ${schema.sheet}[#All])`
      : `add ${missing.length > 1 ? 'the columns' : 'the column'} ${missing.map(([, field]) => headingWithUnit(field)).join(', ')}`;
  throw new TradeError('blank', schema.sheet, `has no heading ${names}`, advice);
}

/**
 * Finds the columns of a table by its headings, in any order; unknown columns and optional ones without any data are passed over.
 * @throws TradeError where a required heading or a unit is missing, a unit is unknown, or a heading stands twice
 */
export function readHeadings(schema: TableSchema, table: RawTable): Headings {
  const row = table.findIndex(cells => cells.some(isFilled));
  const byKey = new Map(Object.entries(schema.fields).map(([key, field]) => [headingKey(field.heading), { key, field }]));
  const columns: TableColumn[] = [];
  const found = new Set<string>();
  const stated = new Set<string>();
  (table[row] ?? []).forEach((cell, index) => {
    if (typeof cell !== 'string') return;
    const { name, bracket } = splitHeading(cell);
    const known = byKey.get(headingKey(name));
    if (!known) return;
    stated.add(known.key);
    if (!known.field.required && !table.some((cells, at) => at > row && isFilled(cells[index]))) return;
    if (found.has(known.key)) {
      throw new TradeError('shape', schema.sheet, `has the heading "${known.field.heading}" twice`, 'rename one of the columns');
    }
    found.add(known.key);
    columns.push({
      ...known,
      index,
      bracket,
      percent: !!bracket?.includes('%'),
      unit: unitOf(schema.sheet, known.field, bracket),
    });
  });
  requireAll(schema, found);
  return { row, columns, stated };
}
