import type { RangeContent } from '../../workbook/workbook';
import { cellOf, type FoundTable } from '../table/findTable';
import { ROLES_OF_B, type MeasurementColumns, type MeasurementRole } from './measurementRoles';
import type { ProposedMeasurements } from './proposeMeasurements';

/** A cell by zero-based numbers of the sheet. */
export interface CellPlace {
  readonly row: number;
  readonly column: number;
}

/** Where one crimp stands on the sheet: its readings, and the cell of every other role. */
export interface CrimpCells {
  /** Zero-based; of several rows the first. */
  readonly row: number;
  readonly readings: readonly CellPlace[];
  readonly cells: Readonly<Partial<Record<MeasurementRole, CellPlace>>>;
  /** The end, where the layout says it. */
  readonly end: 'A' | 'B' | '';
}

/** Roles that tell one crimp from the next where each reading has a row of its own. */
const IDENTITY: readonly MeasurementRole[] = ['line', 'combination', 'hose', 'fitting', 'end', 'machine', 'die', 'dial', 'date'];

/** What begins a row that sums up those above it. */
const SUMMARY =
  /^(mean|average|avg\.?|total|sum|range|spread|std\.? ?dev\.?|standard deviation|min\.?|minimum|max\.?|maximum)( of .*)?:?$/i;

/** Words that stand alone in a row: `Night shift`. */
const REMARK = /^\p{L}[\p{L}.,:-]*(?: [\p{L}.,:-]+)+$/u;

/** A row of means or totals under the crimps is none itself, nor is a remark between them. */
function isNoCrimp(used: RangeContent, { block }: FoundTable, row: number): boolean {
  const cells = Array.from({ length: block.columns }, (_, i) => cellOf(used, row, block.column + i));
  const [first, ...others] = cells.filter(cell => cell !== '');
  if (typeof first !== 'string') return false;
  return SUMMARY.test(first.trim()) || (others.length === 0 && REMARK.test(first.trim()));
}

function rowsOf(used: RangeContent, table: FoundTable, picked: ReadonlySet<number> | undefined): number[] {
  const { block } = table;
  return Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).filter(
    row => (!picked || picked.has(row + 1)) && !isNoCrimp(used, table, row),
  );
}

function cellsAt(columns: MeasurementColumns, row: number, end: 'A' | 'B' | ''): CrimpCells['cells'] {
  const cells: Partial<Record<MeasurementRole, CellPlace>> = {};
  for (const [role, [column]] of Object.entries(columns) as [MeasurementRole, readonly number[]][]) {
    if (column !== undefined) cells[role] = { row, column };
  }
  if (end !== 'B') return cells;
  for (const [role, ofB] of Object.entries(ROLES_OF_B) as [MeasurementRole, MeasurementRole][]) {
    if (cells[ofB]) cells[role] = cells[ofB];
  }
  return cells;
}

const across = (row: number, columns: readonly number[] = []): CellPlace[] => columns.map(column => ({ row, column }));

/** Rows of single readings, gathered to crimps: names that are left blank below the first reading hold on. */
function gatherColumn(
  used: RangeContent,
  rows: readonly number[],
  columns: MeasurementColumns,
  readingsACrimp: number,
): CrimpCells[] {
  const [column] = columns.readings ?? [];
  if (column === undefined) return [];
  const textAt = (row: number, role: MeasurementRole) => {
    const at = columns[role]?.[0];
    return at === undefined ? '' : String(cellOf(used, row, at)).trim();
  };
  const made: { row: number; last: number; readings: CellPlace[]; named: Map<MeasurementRole, string>; numbers: string[] }[] = [];
  for (const row of rows) {
    const number = textAt(row, 'readingNumber');
    const names = IDENTITY.map(role => [role, textAt(row, role)] as const).filter(([, text]) => text !== '');
    const isBlank = names.length === 0 && number === '' && cellOf(used, row, column) === '';
    if (isBlank) continue;
    const open = made.at(-1);
    const isSame =
      open !== undefined &&
      row === open.last + 1 &&
      names.every(([role, text]) => open.named.get(role) === text) &&
      (number === '' ? open.readings.length < readingsACrimp : !open.numbers.includes(number));
    if (isSame) {
      open.readings.push({ row, column });
      open.numbers.push(number);
      open.last = row;
    } else made.push({ row, last: row, readings: [{ row, column }], named: new Map(names), numbers: [number] });
  }
  return made.map(({ row, readings }) => ({ row, readings, cells: cellsAt(columns, row, ''), end: '' }));
}

/**
 * Where every crimp of a table stands.
 * @param readingsACrimp how many rows make a crimp where each reading has its own and no column numbers them
 * @param picked rows of the sheet as it shows them; undefined = the whole table
 */
export function crimpCells(
  used: RangeContent,
  table: FoundTable,
  { layout, columns }: ProposedMeasurements,
  readingsACrimp: number,
  picked?: ReadonlySet<number>,
): CrimpCells[] {
  const rows = rowsOf(used, table, picked);
  if (layout === 'column') return gatherColumn(used, rows, columns, readingsACrimp);
  return rows.flatMap((row): CrimpCells[] => {
    if (layout === 'row') return [{ row, readings: across(row, columns.readings), cells: cellsAt(columns, row, ''), end: '' }];
    return [
      { row, readings: across(row, columns.readings), cells: cellsAt(columns, row, 'A'), end: 'A' },
      { row, readings: across(row, columns.readingsB), cells: cellsAt(columns, row, 'B'), end: 'B' },
    ];
  });
}
