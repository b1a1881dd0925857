import type { RangeContent } from '../../workbook/workbook';
import { cellOf, type FoundTable } from './findTable';
import { plainHeading, ROLE_NAMES, roleOfHeading, type Role } from './roles';

/** Columns of the sheet (zero-based) side by side; all roles but the readings have one column. */
export interface ColumnSpan {
  readonly first: number;
  readonly last: number;
}

/** Which column is what. */
export type Columns = Readonly<Partial<Record<Role, ColumnSpan>>>;

const SAMPLE_ROWS = 50;

function sample(used: RangeContent, { block }: FoundTable, column: number) {
  return Array.from({ length: Math.min(block.rows - 1, SAMPLE_ROWS) }, (_, i) => cellOf(used, block.row + 1 + i, column)).filter(
    value => value !== '',
  );
}

const isNumeric = (value: unknown) =>
  typeof value === 'number' || (typeof value === 'string' && /^\s*\d[\d\s./'"-]*$/.test(value));

function readingsByHeading(table: FoundTable): ColumnSpan | undefined {
  const flags = table.headings.map((heading, i) => {
    const counted = /^\d$/.test(plainHeading(heading)) && i > 0;
    return roleOfHeading(heading) === 'readings' || counted;
  });
  return longestRun(flags, table.block.column);
}

function longestRun(flags: readonly boolean[], offset: number): ColumnSpan | undefined {
  let best: ColumnSpan | undefined;
  let start = 0;
  for (let i = 0; i <= flags.length; i += 1) {
    if (flags[i]) continue;
    const length = i - start;
    if (length >= 2 && (!best || length > best.last - best.first + 1)) best = { first: offset + start, last: offset + i - 1 };
    start = i + 1;
  }
  return best;
}

/** Columns side by side whose numbers lie within 5 % of each other in every row are taken for caliper readings. */
function readingsByContent(used: RangeContent, table: FoundTable, taken: ReadonlySet<number>): ColumnSpan | undefined {
  const { block } = table;
  const near = (column: number) => {
    const rows = Array.from({ length: Math.min(block.rows - 1, SAMPLE_ROWS) }, (_, i) => block.row + 1 + i);
    const pairs = rows.map(row => [cellOf(used, row, column), cellOf(used, row, column + 1)] as const);
    const numbers = pairs.filter(pair => typeof pair[0] === 'number' && typeof pair[1] === 'number') as [number, number][];
    return (
      numbers.length > 0 && numbers.every(([a, b]) => a > 0 && Math.abs(a - b) <= 0.05 * a && !(a === b && Number.isInteger(a)))
    );
  };
  const free = (column: number) => column < block.column + block.columns && !taken.has(column);
  for (let column = block.column; free(column) || column < block.column + block.columns; column += 1) {
    let last = column;
    while (free(last) && free(last + 1) && near(last)) last += 1;
    if (last >= column + 2) return { first: column, last };
  }
  return undefined;
}

/** What names of parts are known, so that a column can be told by what stands in it. */
export interface KnownParts {
  readonly isHose?: ((name: string) => boolean) | undefined;
  readonly isFitting?: ((name: string) => boolean) | undefined;
}

/** Columns in which at least half of the texts are names that are known. */
function columnsNaming(used: RangeContent, table: FoundTable, isKnown: KnownParts['isHose']): number[] {
  if (!isKnown) return [];
  const columns = table.headings.map((_, i) => table.block.column + i);
  return columns.filter(column => {
    const texts = sample(used, table, column).filter(value => typeof value === 'string');
    return texts.length > 0 && texts.filter(text => isKnown(text as string)).length * 2 >= texts.length;
  });
}

const spanOf = (column: number): ColumnSpan => ({ first: column, last: column });

/** Columns that name parts of the catalogue win over headings that say so of other columns. */
function proposeParts(used: RangeContent, table: FoundTable, found: Partial<Record<Role, ColumnSpan>>, parts: KnownParts): void {
  const [hose] = columnsNaming(used, table, parts.isHose);
  const fittings = columnsNaming(used, table, parts.isFitting);
  if (hose !== undefined && !columnsNaming(used, table, parts.isHose).includes(found.hose?.first ?? -1))
    found.hose = spanOf(hose);
  if (fittings.length === 0) return;
  const [a, b] = [found.fittingA?.first, found.fittingB?.first].filter(column => fittings.includes(column ?? -1));
  const rest = fittings.filter(column => column !== a && column !== b);
  const named = [a, b].filter(column => column !== undefined);
  const ends = named.length === 2 ? named : [...named, ...rest].slice(0, 2).sort((x, y) => x - y);
  [found.fittingA, found.fittingB] = ends.map(spanOf);
  for (const role of ['fittingA', 'fittingB'] as const) if (!found[role]) delete found[role];
}

/** Proposes which column is what, by the words of the headings and by what stands below them. */
export function proposeColumns(used: RangeContent, table: FoundTable, parts: KnownParts = {}): Columns {
  const found: Partial<Record<Role, ColumnSpan>> = {};
  table.headings.forEach((heading, i) => {
    const role = roleOfHeading(heading);
    const column = table.block.column + i;
    if (role && role !== 'readings' && !found[role]) found[role] = { first: column, last: column };
    else if (role === 'fittingA' && !found.fittingB) found.fittingB = { first: column, last: column };
  });
  for (const role of ['overall', 'quantity', 'tolerance', 'target'] as const) {
    const span = found[role];
    const values = span ? sample(used, table, span.first) : [];
    if (values.length > 0 && !values.some(isNumeric)) delete found[role];
  }
  proposeParts(used, table, found, parts);
  const taken = new Set(Object.values(found).map(span => span.first));
  const readings = readingsByHeading(table) ?? readingsByContent(used, table, taken);
  if (readings) found.readings = readings;
  if (!found.hose) {
    const column = table.headings
      .map((_, i) => table.block.column + i)
      .find(
        each => !taken.has(each) && sample(used, table, each).some(value => typeof value === 'string' && /\bDN ?\d/i.test(value)),
      );
    if (column !== undefined) found.hose = { first: column, last: column };
  }
  return Object.fromEntries(ROLE_NAMES.flatMap(role => (found[role] ? [[role, found[role]]] : [])));
}

/** The columns that are in the table; some may have been taken away from it since. */
export function columnsWithin({ block }: FoundTable, columns: Columns): Columns {
  const inside = ({ first, last }: ColumnSpan) => first >= block.column && last < block.column + block.columns;
  return Object.fromEntries(Object.entries(columns).filter(([, span]) => inside(span)));
}
