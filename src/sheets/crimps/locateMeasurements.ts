import { overlap, type Block } from '../../workbook/a1';
import type { HostBlock } from '../../workbook/hostTable';
import type { RangeContent } from '../../workbook/workbook';
import { cellOf, findTable, isEmpty, type FoundTable } from '../table/findTable';
import { namedColumn } from './measurementRoles';
import { proposeMeasurements, type ProposedMeasurements } from './proposeMeasurements';

/** A table of measurements and what its columns are taken for. */
export interface LocatedMeasurements {
  readonly table: FoundTable;
  readonly proposed: ProposedMeasurements;
}

/** A bare number may head a reading, but makes no row of headings: it may as well be a number of the table. */
const roleOf = (heading: string) => {
  if (!/[\p{L}°ø#]/iu.test(heading)) return undefined;
  const { role, end } = namedColumn(heading);
  return role && `${role}${end}`;
};

/** The block of filled cells around a cell, as far as whole rows and columns of it hold something. */
function blockAround(used: RangeContent, { row, column }: Block): Block | undefined {
  const isFilled = (r: number, c: number) => !isEmpty(used, r, c);
  if (!isFilled(row, column)) return undefined;
  let [top, bottom, left, right] = [row, row, column, column];
  while (left > 0 && isFilled(row, left - 1)) left -= 1;
  while (isFilled(row, right + 1)) right += 1;
  const hasAny = (r: number) => Array.from({ length: right - left + 1 }, (_, i) => left + i).some(c => isFilled(r, c));
  while (top > 0 && hasAny(top - 1)) top -= 1;
  while (hasAny(bottom + 1)) bottom += 1;
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** Rows without readings that a table may hold: blank ones, a shift's name, a remark. */
const LONGEST_GAP = 4;
/** Two of these name a crimp that is yet to be measured. */
const NAMES = ['line', 'combination', 'hose', 'fitting', 'end', 'target'] as const;
/** Readings of one table lie within this factor of its first. */
const ONE_TABLE = 8;

const numberAt = (used: RangeContent, row: number, column: number) => {
  const cell = cellOf(used, row, column);
  return typeof cell === 'number' && cell > 0 ? cell : undefined;
};

/** The table down to its last readings: they go on below blank rows and remarks, until other headings come. */
function downToLast(used: RangeContent, { table, proposed }: LocatedMeasurements): FoundTable {
  const { block } = table;
  const columns = [...(proposed.columns.readings ?? []), ...(proposed.columns.readingsB ?? [])];
  const rows = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i);
  const first = rows.flatMap(row => columns.flatMap(column => numberAt(used, row, column) ?? []))[0];
  if (table.hostTable || columns.length === 0) return table;
  const isLike = (value: number | undefined) =>
    value !== undefined && first !== undefined && value < first * ONE_TABLE && value > first / ONE_TABLE;
  const isMeasured = (row: number) => columns.filter(column => isLike(numberAt(used, row, column))).length * 2 >= columns.length;
  const names = NAMES.flatMap(role => proposed.columns[role] ?? []);
  const isWaiting = (row: number) =>
    columns.every(column => isEmpty(used, row, column)) && names.filter(column => !isEmpty(used, row, column)).length >= 2;
  const isHeading = (row: number) => {
    const cells = Array.from({ length: block.columns }, (_, i) => cellOf(used, row, block.column + i));
    return new Set(cells.flatMap(cell => (typeof cell === 'string' ? (roleOf(cell) ?? []) : []))).size >= 2;
  };
  let bottom = block.row + block.rows - 1;
  for (let row = bottom + 1; row < used.row + used.values.length && row - bottom <= LONGEST_GAP; row++) {
    if (isHeading(row)) break;
    if (isMeasured(row) || isWaiting(row)) bottom = row;
  }
  return { ...table, block: { ...block, rows: bottom - block.row + 1 } };
}

/** Blank rows that are looked across for the table that a row belongs to. */
const MOST_GAPS = 20;

/** The table above blank rows and remarks that goes on down to the selected row. */
function acrossGaps(
  used: RangeContent,
  selected: Block,
  tableAt: (row: number) => LocatedMeasurements | undefined,
): LocatedMeasurements | undefined {
  const isBlank = (row: number) => (used.values[row - used.row] ?? []).every(cell => cell === '');
  let gaps = 0;
  for (let row = selected.row - 1; row > used.row && gaps < MOST_GAPS; row--) {
    if (isBlank(row) || !isBlank(row + 1)) continue;
    gaps += 1;
    const found = tableAt(row);
    const { block } = found?.table ?? {};
    if (found?.proposed.columns.readings && block && block.row + block.rows > selected.row) return found;
  }
  return undefined;
}

/** Bare numbers without headings: a table whose heading row lies, blank, above its first row. */
function withoutHeadings(used: RangeContent, selected: Block): FoundTable | undefined {
  const block = blockAround(used, selected);
  if (!block) return undefined;
  const isNumber = (column: number) => typeof cellOf(used, block.row, column) === 'number';
  const columns = Array.from({ length: block.columns }, (_, i) => block.column + i);
  if (!columns.some(isNumber)) return undefined;
  return {
    sheet: used.sheet,
    block: { ...block, row: block.row - 1, rows: block.rows + 1 },
    headings: columns.map(() => ''),
    hostTable: false,
  };
}

/**
 * Finds the measurements around a selected block: the table it lies in, else the first table of the sheet with readings, else the bare
 * numbers around it.
 */
export function locateMeasurements(
  used: RangeContent,
  selected: Block,
  hostTables: readonly HostBlock[] = [],
): LocatedMeasurements | undefined {
  const propose = (table: FoundTable | undefined): LocatedMeasurements | undefined => {
    if (!table) return undefined;
    const located = { table, proposed: proposeMeasurements(used, table) };
    return { ...located, table: downToLast(used, located) };
  };
  const here = propose(findTable(used, selected, hostTables, roleOf));
  if (here?.proposed.columns.readings) return here;
  const above = acrossGaps(used, selected, row => propose(findTable(used, { ...selected, row, rows: 1 }, hostTables, roleOf)));
  if (above) return above;
  const bare = propose(withoutHeadings(used, selected));
  if (bare?.proposed.columns.readings && !overlapsHeading(here, bare)) return bare;
  for (let column = used.column; column < used.column + (used.values[0]?.length ?? 0); column++) {
    const other = propose(findTable(used, { ...selected, column, rows: 1, columns: 1 }, hostTables, roleOf));
    if (other?.proposed.columns.readings) return other;
  }
  return here;
}

/** Bare numbers inside a table that has headings are that table's. */
function overlapsHeading(here: LocatedMeasurements | undefined, bare: LocatedMeasurements): boolean {
  return here !== undefined && overlap(here.table.block, bare.table.block) !== undefined;
}
