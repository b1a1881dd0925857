import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';
import { nameOfCell } from '../../cells/sheetCell';
import type { CrimpColumns } from './crimpColumns';
import { isReadingRole, type CrimpField, type ReadingRole } from './crimpRoles';
import type { CellPlace } from '../../workbook/a1';

/** A cell of a reading, and the role of its column. */
export interface ReadingPlace extends CellPlace {
  readonly role: ReadingRole;
}

/** Where one crimp lies on the sheet. */
export interface CrimpCells {
  /** Zero-based; of several rows the first. */
  readonly row: number;
  /** All rows of the sheet that it takes, zero-based. */
  readonly rows: readonly number[];
  readonly readings: readonly ReadingPlace[];
  /** The end, where the layout says it. */
  readonly end: 'A' | 'B' | '';
}

/** Fields that tell one crimp from the next where each reading has a row of its own. */
const IDENTITY: readonly CrimpField[] = [
  'line',
  'crimp',
  'assembly',
  'piece',
  'combination',
  'hose',
  'fitting',
  'end',
  'machine',
  'die',
  'dial',
  'date',
];

/** Fields that number a single crimp: all its readings are those until the next number. */
const NUMBERED: readonly CrimpField[] = ['crimp', 'assembly', 'piece'];

interface Made {
  readonly row: number;
  readonly rows: number[];
  readonly named: ReadonlyMap<CrimpField, string>;
  readonly numbers: string[];
}

/** Rows of single readings, gathered to crimps: names that are left blank below the first reading hold on. */
function gathered(cells: SheetCells, rows: readonly number[], { columns, isLine }: CrimpColumns, readingsACrimp: number): Made[] {
  const textAt = (row: number, role: CrimpField) => {
    const column = columns[role];
    return column === undefined ? '' : nameOfCell(cells.shown(row, column));
  };
  const numbering = NUMBERED.filter(role => role !== 'crimp' || !isLine);
  const isNumbered = ({ named }: Made) => numbering.some(role => named.has(role));
  const made: Made[] = [];
  for (const row of rows) {
    const number = textAt(row, 'readingNumber');
    const names = IDENTITY.map(role => [role, textAt(row, role)] as const).filter(([, text]) => text !== '');
    if (names.length === 0 && number === '' && cells.value(row, columns.reading1!) === '') continue;
    const open = made.at(-1);
    const isSame =
      open !== undefined &&
      row === open.rows.at(-1)! + 1 &&
      names.every(([role, text]) => open.named.get(role) === text) &&
      (number === '' ? isNumbered(open) || open.rows.length < readingsACrimp : !open.numbers.includes(number));
    if (isSame) {
      open.rows.push(row);
      open.numbers.push(number);
    } else made.push({ row, rows: [row], named: new Map(names), numbers: [number] });
  }
  return made;
}

/**
 * Where every crimp of a table lies.
 * @param rows zero-based rows of the sheet that are lines of the table
 * @param readingsACrimp how many rows make a crimp where each reading has its own and no column numbers them
 */
export function crimpCells(
  cells: SheetCells,
  rows: readonly number[],
  found: CrimpColumns,
  readingsACrimp: number,
): CrimpCells[] {
  const { layout, columns, readings } = found;
  const across = (row: number, end: '' | 'B', count: number): ReadingPlace[] =>
    Array.from({ length: count }, (_, index) => {
      const role: ReadingRole = `reading${end}${index + 1}` as ReadingRole;
      return { row, column: columns[role]!, role };
    });
  if (layout === 'column') {
    const column = columns.reading1!;
    return gathered(cells, rows, found, readingsACrimp).map(({ row, rows: own }) => ({
      row,
      rows: own,
      readings: own.map(at => ({ row: at, column, role: 'reading1' as const })),
      end: '',
    }));
  }
  return rows.flatMap((row): CrimpCells[] => {
    if (layout === 'row') return [{ row, rows: [row], readings: across(row, '', readings[0]), end: '' }];
    return [
      { row, rows: [row], readings: across(row, '', readings[0]), end: 'A' },
      { row, rows: [row], readings: across(row, 'B', readings[1]), end: 'B' },
    ];
  });
}

/** Rows below the end of a table that go on with it: readings like its own, or names that wait for some; up to so many rows apart. */
const LONGEST_GAP = 4;
/** Readings of one table lie within this factor of its first. */
const ONE_TABLE = 8;
/** Two of these name a crimp that is yet to be measured. */
const NAMES: readonly CrimpField[] = ['line', 'crimp', 'assembly', 'combination', 'hose', 'fitting', 'end', 'target'];

/** The rows below a table's end that are crimps like its own, in order. */
export function goesOnBelow(cells: SheetCells, { block, below, hostTable }: FoundTable, { columns }: CrimpColumns): number[] {
  const places = Object.entries(columns).flatMap(([role, column]) =>
    column !== undefined && isReadingRole(role) ? [column] : [],
  );
  const numberAt = (row: number, column: number) => {
    const cell = cells.value(row, column);
    return typeof cell === 'number' && cell > 0 ? cell : undefined;
  };
  const inside = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i);
  const first = inside.flatMap(row => places.flatMap(column => numberAt(row, column) ?? []))[0];
  const isLike = (value: number | undefined) =>
    value !== undefined && (first === undefined || (value < first * ONE_TABLE && value > first / ONE_TABLE));
  const names = NAMES.flatMap(role => columns[role] ?? []);
  const isCrimp = (row: number) =>
    places.filter(column => isLike(numberAt(row, column))).length * 2 >= places.length ||
    (places.every(column => cells.isEmpty(row, column)) && names.filter(column => cells.shown(row, column) !== '').length >= 2);
  const taken: number[] = [];
  let last = block.row + block.rows - 1;
  for (const row of hostTable ? [] : below) {
    if (row - last > LONGEST_GAP) break;
    if (!isCrimp(row)) continue;
    taken.push(row);
    last = row;
  }
  return taken;
}
