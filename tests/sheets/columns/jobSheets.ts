import type { CellValue, RangeContent } from '../../../src/workbook/workbook';

/** A used part of a sheet that begins at A1. */
export function sheetOf(rows: readonly (readonly CellValue[])[], formats: Readonly<Record<string, string>> = {}): RangeContent {
  const width = Math.max(...rows.map(row => row.length));
  const table = <T>(pick: (r: number, c: number) => T) =>
    rows.map((_, r) => Array.from({ length: width }, (__, c) => pick(r, c)));
  const cell = (r: number, c: number) => `${String.fromCharCode(65 + c)}${r + 1}`;
  return {
    sheet: 'Jobs',
    address: `A1:${cell(rows.length - 1, width - 1)}`,
    row: 0,
    column: 0,
    values: table((r, c) => rows[r]?.[c] ?? ''),
    formulas: table(() => ''),
    formats: table((r, c) => formats[cell(r, c)] ?? 'General'),
  };
}

/** Other words, a title block above, a blank row among the rows, a note below. */
export const OTHER_WORDS = [
  ['Field workshop, week 40'],
  ['Printed for the bench'],
  [],
  ['No', 'Hose type', 'End 1', 'End 2', 'OAL (mm)', 'Qty', 'Deduction 1', 'Deduction 2'],
  [1, 'Alder DN 25', 'cone', 'flare', 1250, 2, 30, 41],
  [],
  [2, 'Larch DN 12', 'cone', 'cone', 840, 1, 22, 22],
  [],
  ['Call before delivery'],
];

/** Inch fractions as text, and one that became a date. */
export const INCHES = [
  ['Hose', 'Fitting A', 'Fitting B', 'Overall length (in)', 'Cut-off A (in)', 'Cut-off B (in)', 'Allowance'],
  ['Larch DN 12', 'cone', 'cone', '27 1/2', '1 3/16', 45724, ''],
  ['Larch DN 10', 'cone', 'cone', '11 7/8', '1 1/8', '1 1/8', ''],
];

/** Two tables on a sheet, side by side with one blank column: both begin with the same word. */
export const TWO_TABLES = [
  ['Hose', 'Qty', '', 'Hose', '0°', '45°', '90°', '135°', 'Target', 'Tol. (mm)', 'Dial', 'Step'],
  ['Alder DN 25', 3, '', 'Alder DN 25', 34.11, 34.15, 34.12, 34.14, 34.1, 0.2, 412, 0.02],
  ['Larch DN 12', 5, '', 'Larch DN 12', 34.51, 34.55, 34.5, 34.52, 34.1, 0.2, 412, 0.02],
];
