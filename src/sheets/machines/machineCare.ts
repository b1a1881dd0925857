import { quotedText } from '../../core/quotedText';
import { dayNumber, isoDate } from '../../core/catalogue/dayNumber';
import { addressOf } from '../../workbook/a1';
import type { CellValue, Change, RangeAddress, RangeContent } from '../../workbook/workbook';
import { cellOf, dataRows, findTable, sheetRow, textOf, type HeadingPatterns } from '../table/sheetTable';

export const CARE_SHEET = 'Machine care';
const DATE_FORMAT = 'yyyy-mm-dd';
/** Sorts what cannot be dated before what is overdue. */
const UNDATED = -1e9;

const HEADINGS = {
  machine: /^(?:machine|crimper|press)$/,
  task: /^(?:task|care|work|what)$/,
  every: /^(?:every|interval|every … days|every days|days)$/,
  last: /^(?:last done|last|done|done on)$/,
} as const satisfies HeadingPatterns<string>;

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
  readonly lastStanding: CellValue;
}

const days = (count: number) => `${count} ${count === 1 ? 'day' : 'days'}`;

function dueText(dueIn: number, last: string): string {
  if (dueIn < 0) return `Overdue by ${days(-dueIn)} (last done ${last})`;
  if (dueIn === 0) return `Due today (last done ${last})`;
  return `Due in ${days(dueIn)} (last done ${last})`;
}

function whenDue(every: CellValue, last: CellValue, perUnit: number, today: number) {
  if (typeof every !== 'number' || every <= 0) return { sentence: 'No number of days: write how often it is done', lastDone: '' };
  if (last === '') return { dueIn: 0, sentence: 'Never done yet: due now', lastDone: '' };
  const day = typeof last === 'object' || typeof last === 'boolean' ? undefined : dayNumber(last);
  if (day === undefined)
    return {
      sentence: `${quotedText(typeof last === 'object' ? last.error : String(last))} is no date, like 2025-03-14`,
      lastDone: '',
    };
  if (day > today) return { sentence: `Last done lies ahead: ${isoDate(day)}`, lastDone: isoDate(day) };
  const dueIn = Math.ceil(day + every * perUnit - today);
  return { dueIn, sentence: dueText(dueIn, isoDate(day)), lastDone: isoDate(day) };
}

/**
 * The tasks of a sheet Machine care, the most urgent first; those that cannot be dated stand before all others.
 * @param today ISO date
 * @returns undefined where the sheet has no headings Task, Every (days) and Last done
 */
export function careTasks(content: RangeContent | undefined, today: string): readonly CareTask[] | undefined {
  const table = findTable<keyof typeof HEADINGS>(content, HEADINGS, ['task', 'every', 'last']);
  if (!table) return undefined;
  const perUnit = /^weeks?$/.test(table.columns.every!.unit) ? 7 : 1;
  const tasks = dataRows(table).flatMap((row): CareTask[] => {
    const task = textOf(table, row, 'task');
    if (task === '') return [];
    const last = cellOf(table, row, 'last');
    const due = whenDue(cellOf(table, row, 'every'), last, perUnit, dayNumber(today)!);
    const place = { row: table.content.row + row, column: table.content.column + table.columns.last!.index, rows: 1, columns: 1 };
    const lastAt = { sheet: table.content.sheet, address: addressOf(place) };
    return [
      {
        row: sheetRow(table, row),
        machine: textOf(table, row, 'machine'),
        task,
        dueIn: undefined,
        ...due,
        lastAt,
        lastStanding: last,
      },
    ];
  });
  return [...tasks].sort((a, b) => (a.dueIn ?? UNDATED) - (b.dueIn ?? UNDATED));
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
      at: at(addressOf({ row: 0, column, rows: 1, columns: 1 })),
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
export function undoneChanges({ lastAt, lastStanding }: CareTask): readonly Change[] {
  return [{ kind: 'values', at: lastAt, values: [[typeof lastStanding === 'object' ? '' : lastStanding]] }];
}
