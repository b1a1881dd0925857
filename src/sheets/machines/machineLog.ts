import { momentNumber } from '../../core/units/sheetDate';
import type { Workbook } from '../../workbook/workbook';
import { appendRows, type Appended, type GrowingColumn } from '../print/appendRows';
import type { WrittenCell } from '../print/sheetWriter';

const LOG_SHEET = 'Machine log';

const COLUMNS: readonly GrowingColumn[] = [
  { heading: 'Date', width: 110, format: 'yyyy-mm-dd hh:mm' },
  { heading: 'Machine', width: 130 },
  { heading: 'Kind', width: 60 },
  { heading: 'What', width: 220 },
  { heading: 'Unit', width: 40 },
  { heading: 'Expected', width: 60 },
  { heading: 'Readings', width: 150, format: '@' },
  { heading: 'Mean', width: 60 },
  { heading: 'Deviation', width: 60 },
  { heading: 'Per turn', width: 60 },
  { heading: 'Turns, + is tighter', width: 70 },
  { heading: 'Done by', width: 90 },
  { heading: 'Note', width: 200 },
];

/** One line of the log: a check of the machine, or care that was done. */
export interface LogEntry {
  /** ISO date with its time of day: it tells the crimps made before a recalibration from those after it. */
  readonly date: string;
  readonly machine: string;
  readonly kind: 'Check' | 'Care';
  readonly what: string;
  readonly unit?: string;
  readonly expected?: number;
  readonly readings?: string;
  readonly mean?: number;
  readonly deviation?: number;
  readonly perTurn?: number | undefined;
  readonly turns?: number | undefined;
  readonly by: string;
  readonly note: string;
}

function cellsOf(entry: LogEntry): readonly WrittenCell[] {
  const { date, machine, kind, what, unit, expected, readings, mean, deviation, perTurn, turns, by, note } = entry;
  const cells = [momentNumber(date), machine, kind, what, unit, expected, readings, mean, deviation, perTurn, turns, by, note];
  return cells.map(cell => cell ?? '');
}

/** Plans a line of the sheet Machine log, which is made where it is not there. */
export async function logEntry(workbook: Workbook, entry: LogEntry): Promise<Appended> {
  const sheets = await workbook.sheets();
  const name = sheets.find(sheet => sheet.toLowerCase() === LOG_SHEET.toLowerCase());
  const used = name ? await workbook.used(name) : undefined;
  return appendRows({ sheet: name ?? LOG_SHEET, columns: COLUMNS, rows: [cellsOf(entry)] }, used, name !== undefined);
}
