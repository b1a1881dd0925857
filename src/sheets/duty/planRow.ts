import type { LengthUnit } from '../../core/units/lengthUnit';
import { addressOf, columnLetters, overlap } from '../../workbook/a1';
import { wholeTable, type HostBlock } from '../../workbook/hostTable';
import type { Change, RangeContent } from '../../workbook/workbook';
import { cellOf, isEmpty, type FoundTable } from '../table/findTable';
import type { Columns } from '../table/proposeColumns';
import { ROLES, unitOfHeading, type Role } from '../table/roles';
import { formulaBelow } from './formulaBelow';

/** What goes into the row; a length is given in every unit a heading may ask for. */
export interface RowContent {
  readonly hose: string;
  readonly fittingA: string;
  readonly fittingB: string;
  readonly quantity: number;
  readonly overall: Readonly<Record<LengthUnit, number>> | undefined;
  readonly cutOffA: Readonly<Record<LengthUnit, number>>;
  readonly cutOffB: Readonly<Record<LengthUnit, number>>;
  /** Unit of lengths under a heading that names none. */
  readonly unit: LengthUnit;
}

/** The changes that write the row, and what they do in words. */
export interface RowPlan {
  readonly changes: readonly Change[];
  /** Zero-based. */
  readonly row: number;
  readonly told: string;
}

const WRITTEN = ['hose', 'fittingA', 'fittingB', 'overall', 'quantity', 'cutOffA', 'cutOffB'] as const satisfies readonly Role[];
type Written = (typeof WRITTEN)[number];

const formulaAt = (used: RangeContent, row: number, column: number) =>
  used.formulas[row - used.row]?.[column - used.column] ?? '';

const columnsOf = ({ block }: FoundTable) => Array.from({ length: block.columns }, (_, i) => block.column + i);

/** True where nothing but formulas stands in a row of the table. */
function isFree(used: RangeContent, table: FoundTable, row: number): boolean {
  return columnsOf(table).every(column => cellOf(used, row, column) === '' || formulaAt(used, row, column) !== '');
}

function isTotal(used: RangeContent, table: FoundTable, row: number): boolean {
  const first = columnsOf(table)
    .map(column => cellOf(used, row, column))
    .find(value => value !== '');
  return typeof first === 'string' && /^(grand |sub)?-?\s?(total|sum)s?\b/i.test(first.trim());
}

/** The first row behind the last filled one; a row that only holds formulas waits to be filled. */
function freeRow(used: RangeContent, table: FoundTable, hostTables: readonly HostBlock[]): number {
  const { block } = table;
  const bottom = block.row + block.rows - 1;
  let row = bottom + 1;
  while (row > block.row + 1 && isFree(used, table, row - 1)) row -= 1;
  if (row > block.row + 1 && isTotal(used, table, row - 1)) {
    throw new Error(`Row ${row} is a total with no free row above it. Insert a row there first. Nothing was written.`);
  }
  if (row <= bottom) return row;
  const strip = { row, column: block.column, rows: 1, columns: block.columns };
  const isBlocked = hostTables.some(other => overlap(wholeTable(other), strip));
  if (isBlocked || !columnsOf(table).every(column => isEmpty(used, row, column))) {
    throw new Error(`Row ${row + 1} below the table is not free. Insert a row first. Nothing was written.`);
  }
  return row;
}

function valueOf(role: Written, content: RowContent, heading: string): string | number | undefined {
  const found = content[role];
  if (found === undefined || typeof found !== 'object') return found;
  return found[unitOfHeading(heading) ?? content.unit];
}

/** Formulas of the row above that go on in a row just written below the table. */
function formulasDown(used: RangeContent, table: FoundTable, row: number, taken: ReadonlySet<number>) {
  const from = row - 1;
  const copied: { readonly column: number; readonly formula: string }[] = [];
  const left: number[] = [];
  for (const column of columnsOf(table)) {
    const above = from > table.block.row ? formulaAt(used, from, column) : '';
    if (above === '' || taken.has(column) || formulaAt(used, row, column) !== '') continue;
    const formula = formulaBelow(above, from, row - from);
    if (formula === undefined) left.push(column);
    else copied.push({ column, formula });
  }
  return { copied, left };
}

/** Tables of parts, crimps or stock name hoses too: a row of them is not the place for an order. */
function requireJobTable(columns: Columns): void {
  const hasEnds = columns.fittingA ?? columns.cutOffA;
  const hasAmount = columns.overall ?? columns.quantity;
  if (columns.hose && hasEnds && hasAmount) return;
  throw new Error(
    'The selected table has no columns for hose, fitting, and length or quantity. Select a cell of your job table. Nothing was written.',
  );
}

const headingAt = (table: FoundTable, column: number) => table.headings[column - table.block.column] || columnLetters(column);

/**
 * Plans one more row of someone's table: in its next free row, never over anything. Cells that hold a formula keep it; formulas of the row
 * above are carried on.
 * @throws Error with a sentence where the table is no table of jobs, or has no free row
 */
export function planRow(
  used: RangeContent,
  table: FoundTable,
  columns: Columns,
  content: RowContent,
  hostTables: readonly HostBlock[] = [],
): RowPlan {
  requireJobTable(columns);
  const { sheet, block } = table;
  const row = freeRow(used, table, hostTables);
  const at = (column: number) => ({ sheet, address: addressOf({ row, column, rows: 1, columns: 1 }) });
  const changes: Change[] = [];
  const taken = new Set<number>();
  const written: string[] = [];
  const missing: string[] = [];
  for (const role of WRITTEN) {
    const column = columns[role]?.first;
    const isCutOff = role === 'cutOffA' || role === 'cutOffB';
    if (column === undefined) {
      if (!isCutOff) missing.push(ROLES[role].label);
      continue;
    }
    const value = valueOf(role, content, headingAt(table, column));
    if (value === undefined || formulaAt(used, row, column) !== '' || (isCutOff && formulaAt(used, row - 1, column) !== ''))
      continue;
    taken.add(column);
    changes.push({ kind: 'values', at: at(column), values: [[value]] });
    written.push(`${headingAt(table, column)}: ${value}`);
  }
  const { copied, left } = formulasDown(used, table, row, taken);
  for (const { column, formula } of copied) changes.push({ kind: 'formulas', at: at(column), formulas: [[formula]] });
  const where = addressOf({ row, column: block.column, rows: 1, columns: block.columns });
  const names = (list: readonly number[]) => list.map(column => headingAt(table, column)).join(', ');
  const sentences = [
    `Wrote row ${row + 1} of sheet ${sheet} (${where}). ${written.join('; ')}.`,
    copied.length > 0 && `Formulas carried on: ${names(copied.map(({ column }) => column))}.`,
    left.length > 0 && `Formulas not carried on, since they are not of one row: ${names(left)}.`,
    missing.length > 0 && `No column for: ${missing.join(', ')}.`,
    columns.overall && content.overall === undefined && 'The overall length is not known and was left blank.',
    table.hostTable && row >= block.row + block.rows && 'The row is just below the Excel table: widen the table by its corner.',
  ];
  return { changes, row, told: sentences.filter(Boolean).join(' ') };
}
