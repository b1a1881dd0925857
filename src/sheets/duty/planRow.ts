import type { Measure } from '../../cells/sheetCell';
import { READ_PLACES } from '../../core/units/decimalPlaces';
import type { Length } from '../../core/units/lengthUnit';
import { convertMeasure } from '../../core/units/measureUnit';
import { addressOf, columnLetters, overlap, cellAddress } from '../../workbook/a1';
import { wholeTable, type HostBlock } from '../../workbook/hostTable';
import type { Change } from '../../workbook/workbook';
import type { JobTable } from '../jobs/jobTable';
import { KEYS } from '../jobs/jobTablesOf';
import type { FoundTable } from '../table/findTables';
import { HEADING_WORDS } from '../table/headingWords';
import { formulaBelow } from '../table/formulaBelow';
import type { SheetCells } from '../table/sheetCells';
import { tableRows } from '../table/tableRows';

/** What goes into the row. */
export interface RowContent {
  readonly hose: string;
  readonly fittingA: string;
  readonly fittingB: string;
  readonly quantity: number;
  readonly overall: Length | undefined;
  readonly cutOffA: Length;
  readonly cutOffB: Length;
  /** Hottest of the duty, by which the line is rated; undefined = not written. */
  readonly temperature?: Measure | undefined;
  readonly fluid?: string | undefined;
  /** Degrees; undefined = not given. */
  readonly twist?: number | undefined;
}

/** The changes that write the row, and what they do in words. */
export interface RowPlan {
  readonly changes: readonly Change[];
  /** Zero-based. */
  readonly row: number;
  readonly message: string;
}

const WRITTEN = [
  'hose',
  'fittingA',
  'fittingB',
  'overall',
  'quantity',
  'cutOffA',
  'cutOffB',
  'temperature',
  'fluid',
  'twist',
] as const;
type Written = (typeof WRITTEN)[number];
/** A table that lacks these lacks nothing. */
const OPTIONAL: ReadonlySet<Written> = new Set(['cutOffA', 'cutOffB', 'temperature', 'fluid', 'twist']);

const columnsOf = ({ block }: FoundTable) => Array.from({ length: block.columns }, (_, i) => block.column + i);

/** True where nothing but formulas stands in a row of the table. */
function isFree(cells: SheetCells, table: FoundTable, row: number): boolean {
  return columnsOf(table).every(column => cells.value(row, column) === '' || cells.isComputed(row, column));
}

/** Where a row goes, and the total below it. */
interface FreeRow {
  readonly row: number;
  readonly total: number | undefined;
}

/** The first row behind the last filled one; a row that only holds formulas waits to be filled. */
function freeRow(cells: SheetCells, { table, columns }: JobTable, hostTables: readonly HostBlock[]): FreeRow {
  const { block } = table;
  const keys = KEYS.flatMap(role => columns[role] ?? []);
  const kinds = new Map(
    tableRows(cells, table, { name: columns.hose, keys, takesHidden: true }).map(({ row, kind }) => [row, kind]),
  );
  const isOpen = (row: number) => isFree(cells, table, row) && kinds.get(row) !== 'total';
  const behindFilled = (below: number) => {
    let row = below;
    while (row > block.row + 1 && isOpen(row - 1)) row -= 1;
    return row;
  };
  const bottom = block.row + block.rows - 1;
  const row = behindFilled(bottom + 1);
  let total: number | undefined;
  for (let above = row - 1; above > block.row; above -= 1) {
    const kind = kinds.get(above);
    if (kind === 'total') total = above;
    else if (kind !== 'remark' && !isOpen(above)) break;
  }
  if (total !== undefined) {
    const before = behindFilled(total);
    if (before < total) return { row: before, total };
    throw new Error(`Row ${total + 1} is a total with no free row above it. Insert a row there first. Nothing was written.`);
  }
  if (row <= bottom) return { row, total };
  const strip = { row, column: block.column, rows: 1, columns: block.columns };
  const isBlocked = hostTables.some(other => overlap(wholeTable(other), strip));
  if (isBlocked || !columnsOf(table).every(column => cells.isEmpty(row, column))) {
    throw new Error(`Row ${row + 1} below the table is not free. Insert a row first. Nothing was written.`);
  }
  return { row, total };
}

/** What goes under a heading: lengths in the unit of their column. */
function valueOf(role: Written, content: RowContent, { reader }: JobTable): string | number | undefined {
  const found = content[role];
  if (found === undefined || typeof found !== 'object') return found;
  const unit = reader.unitOf(role);
  if (unit) return convertMeasure(found.value, found.unit, unit).toDecimalPlaces(READ_PLACES).toNumber();
  throw new Error(
    `Column ${reader.heading(role)} has no unit that is known. Write it in the heading, like (mm), or say it under Columns. Nothing was written.`,
  );
}

/** Formulas of the row above that go on in a row just written below the table. */
function formulasDown(cells: SheetCells, table: FoundTable, row: number, taken: ReadonlySet<number>) {
  const from = row - 1;
  const copied: { readonly column: number; readonly formula: string }[] = [];
  const left: number[] = [];
  for (const column of columnsOf(table)) {
    const above = from > table.block.row ? cells.formula(from, column) : '';
    if (above === '' || taken.has(column) || cells.formula(row, column) !== '') continue;
    const formula = formulaBelow(above, from, row - from);
    if (formula === undefined) left.push(column);
    else copied.push({ column, formula });
  }
  return { copied, left };
}

/** Tables of parts, crimps or stock name hoses too: a row of them is not the place for an order. */
function jobTableOrRefusal(jobs: JobTable | undefined): JobTable {
  if (jobs && (jobs.columns.fittingA ?? jobs.columns.cutOffA) !== undefined) return jobs;
  throw new Error(
    'The selected table has no columns for hose, fitting and length. Select a cell of your job table. Nothing was written.',
  );
}

const headingAt = (table: FoundTable, column: number) => table.headings[column - table.block.column] || columnLetters(column);

/**
 * Plans one more row of someone's table: in its next free row, never over anything. Cells that hold a formula keep it; formulas of the row
 * above are carried on.
 * @throws Error with a sentence where the table is no table of jobs, has no free row, or does not name the unit of a length
 */
export function planRow(
  cells: SheetCells,
  found: JobTable | undefined,
  content: RowContent,
  hostTables: readonly HostBlock[] = [],
): RowPlan {
  const jobs = jobTableOrRefusal(found);
  const { table, columns } = jobs;
  const { sheet, block } = table;
  const { row, total } = freeRow(cells, jobs, hostTables);
  const at = (column: number) => ({ sheet, address: cellAddress({ row, column }) });
  const changes: Change[] = [];
  const taken = new Set<number>();
  const written: string[] = [];
  const missing: string[] = [];
  for (const role of WRITTEN) {
    const column = columns[role];
    const isCutOff = role === 'cutOffA' || role === 'cutOffB';
    if (column === undefined) {
      if (!OPTIONAL.has(role)) missing.push(HEADING_WORDS[role].label);
      continue;
    }
    if (cells.isComputed(row, column) || (isCutOff && cells.isComputed(row - 1, column))) continue;
    const value = valueOf(role, content, jobs);
    if (value === undefined) continue;
    taken.add(column);
    changes.push({ kind: 'values', at: at(column), values: [[value]] });
    written.push(`${headingAt(table, column)}: ${value}`);
  }
  const { copied, left } = formulasDown(cells, table, row, taken);
  for (const { column, formula } of copied) changes.push({ kind: 'formulas', at: at(column), formulas: [[formula]] });
  const where = addressOf({ row, column: block.column, rows: 1, columns: block.columns });
  const names = (list: readonly number[]) => list.map(column => headingAt(table, column)).join(', ');
  const sentences = [
    `Wrote row ${row + 1} of sheet ${sheet} (${where}). ${written.join('; ')}.`,
    copied.length > 0 && `Formulas copied: ${names(copied.map(({ column }) => column))}.`,
    left.length > 0 && `Not copied (formula reaches beyond its row): ${names(left)}.`,
    missing.length > 0 && `No column for: ${missing.join(', ')}.`,
    columns.overall !== undefined && content.overall === undefined && 'The overall length is not known and was left blank.',
    total !== undefined && `Row ${total + 1} is a total: check that it covers row ${row + 1}.`,
    table.hostTable && row >= block.row + block.rows && 'The row is just below the Excel table: widen the table by its corner.',
  ];
  return { changes, row, message: sentences.filter(Boolean).join(' ') };
}
