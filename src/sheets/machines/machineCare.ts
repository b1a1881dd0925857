import { quotedText } from '../../core/quotedText';
import { nameOfCell } from '../../cells/sheetCell';
import { dayNumber, isoDate, type DateOrders } from '../../core/units/sheetDate';
import { splitHeading } from '../../core/units/headingUnit';
import { cellAddress } from '../../workbook/a1';
import type { CellValue, Change, RangeAddress, RangeContent } from '../../workbook/workbook';
import { columnDateOrders } from '../table/columnDateOrders';
import { findTables } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { columnsByRole, type RoleList } from '../table/tableColumns';
import { tableRows } from '../table/tableRows';
import { countedText } from '../../core/countedText';
import { cellWords } from '../../workbook/cellWords';
import { DATE_FORMAT } from '../print/dateFormat';

export const CARE_SHEET = 'Machine care';
/** Sorts what cannot be dated before what is overdue. */
const UNDATED = -1e9;

type CareRole = 'machine' | 'task' | 'every' | 'last';
const ROLES: RoleList<CareRole> = [
  ['every', 'every'],
  ['last', 'lastDone'],
  ['machine', 'machine', 'crimper'],
  ['task', 'task'],
];

/** A task of care and when it is due. */
export interface CareTask {
  readonly row: number;
  readonly machine: string;
  readonly task: string;
  /** Days until it is due, below 0 = overdue; undefined where that cannot be said. */
  readonly dueIn: number | undefined;
  readonly lastDone: string;
  /** When it is due, or what is missing, in words. */
  readonly sentence: string;
  /** The cell of the date and what stands in it. */
  readonly lastAt: RangeAddress;
  readonly lastInSheet: CellValue;
}

function dueText(dueIn: number, last: string): string {
  if (dueIn < 0) return `Overdue by ${countedText(-dueIn, 'day')} (last done ${last})`;
  if (dueIn === 0) return `Due today (last done ${last})`;
  return `Due in ${countedText(dueIn, 'day')} (last done ${last})`;
}

function whenDue(every: CellValue, last: CellValue, { perUnit, orders }: Pick<CareColumns, 'perUnit' | 'orders'>, today: number) {
  if (typeof every !== 'number' || every <= 0) return { sentence: 'No number of days: write how often it is done', lastDone: '' };
  if (last === '') return { dueIn: 0, sentence: 'Never done yet: due now', lastDone: '' };
  const day = typeof last === 'object' || typeof last === 'boolean' ? undefined : dayNumber(last, orders);
  if (day === undefined)
    return {
      sentence: `${quotedText(cellWords(last))} is not a date like 2025-03-14`,
      lastDone: '',
    };
  if (day > today) return { sentence: `Last done is in the future: ${isoDate(day)}`, lastDone: isoDate(day) };
  const dueIn = Math.ceil(day + every * perUnit - today);
  return { dueIn, sentence: dueText(dueIn, isoDate(day)), lastDone: isoDate(day) };
}

interface CareColumns {
  readonly task: number;
  readonly every: number;
  readonly last: number;
  readonly machine: number | undefined;
  /** Days in the unit of the column Every. */
  readonly perUnit: number;
  /** The order of day and month in the column Last done. */
  readonly orders?: DateOrders;
}

/** The columns of care; undefined where it is another table. */
function careColumns(headings: readonly string[], column: number): CareColumns | undefined {
  const block = { row: 0, column, rows: 1, columns: headings.length };
  const { task, every, last, machine } = columnsByRole({ headings, block }, ROLES);
  if (task === undefined || every === undefined || last === undefined) return undefined;
  const isWeeks = /^weeks?$/i.test(splitHeading(headings[every - column]!).bracket ?? '');
  return { task, every, last, machine, perUnit: isWeeks ? 7 : 1 };
}

function careTask(cells: SheetCells, columns: CareColumns, row: number, today: string): CareTask {
  const { task, every, last, machine } = columns;
  const standing = cells.value(row, last);
  return {
    row: row + 1,
    machine: machine === undefined ? '' : nameOfCell(cells.shown(row, machine)),
    task: nameOfCell(cells.value(row, task)),
    dueIn: undefined,
    ...whenDue(cells.value(row, every), standing, columns, dayNumber(today)!),
    lastAt: { sheet: cells.sheet, address: cellAddress({ row, column: last }) },
    lastInSheet: standing,
  };
}

/** True where a sheet has the headings of care, without a row below them yet. */
const hasHeadings = ({ values, column }: RangeContent) =>
  values.some(row => careColumns(row.map(nameOfCell), column) !== undefined);

/**
 * The tasks of a sheet Machine care, the most urgent first; those that cannot be dated stand before all others. Hidden rows count, too.
 * @param today ISO date
 * @returns undefined where the sheet has no headings Task, Every (days) and Last done
 */
export function careTasks(content: RangeContent | undefined, today: string): readonly CareTask[] | undefined {
  if (!content) return undefined;
  const cells = new SheetCells(content);
  for (const table of findTables(cells)) {
    const found = careColumns(table.headings, table.block.column);
    if (!found) continue;
    const columns = { ...found, orders: columnDateOrders(cells, table, found.last) };
    const rules = { name: columns.task, keys: [columns.task], takesHidden: true, isKnown: () => true };
    const rows = tableRows(cells, table, rules).filter(({ kind }) => kind === 'line' || kind === 'below');
    const tasks = rows.map(({ row }) => careTask(cells, columns, row, today));
    return tasks.sort((a, b) => (a.dueIn ?? UNDATED) - (b.dueIn ?? UNDATED));
  }
  return hasHeadings(content) ? [] : undefined;
}

/** The sheet Machine care as it ships: headings only, the tasks are the user's. */
export function careSheet(exists: boolean): readonly Change[] {
  const at = (address: string) => ({ sheet: CARE_SHEET, address });
  const widths = [130, 260, 70, 80];
  return [
    ...(exists ? [] : [{ kind: 'addSheet' as const, sheet: CARE_SHEET }]),
    { kind: 'values', at: at('A1:D1'), values: [['Machine', 'Task', 'Every (days)', 'Last done']] },
    { kind: 'style', at: at('A1:D1'), style: { bold: true, border: 'bottom' } },
    { kind: 'format', at: at('D2:D200'), numberFormat: DATE_FORMAT },
    ...widths.map((columnWidth, column): Change => ({
      kind: 'style',
      at: at(cellAddress({ row: 0, column })),
      style: { columnWidth },
    })),
  ];
}

/** The changes that note a task as done. */
export function doneChanges({ lastAt }: CareTask, today: string): readonly Change[] {
  return [
    { kind: 'format', at: lastAt, numberFormat: DATE_FORMAT },
    { kind: 'values', at: lastAt, values: [[dayNumber(today)!]] },
  ];
}

/** The changes that take that back. */
export function undoneChanges({ lastAt, lastInSheet }: CareTask): readonly Change[] {
  return [{ kind: 'values', at: lastAt, values: [[typeof lastInSheet === 'object' ? '' : lastInSheet]] }];
}
