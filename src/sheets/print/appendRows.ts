import { addressOf } from '../../workbook/a1';
import type { Change, RangeContent } from '../../workbook/workbook';
import { printedWidth } from './printedWidth';
import { nameOfCell } from '../../cells/sheetCell';
import { plainHeading } from '../table/heading';
import type { WrittenCell } from './sheetWriter';

/** A column of a sheet that grows row by row. */
export interface GrowingColumn {
  readonly heading: string;
  /** Points, on a new sheet. */
  readonly width: number;
  /** Number format of the cells written. */
  readonly format?: string;
}

/** What is to be appended. */
export interface Growth {
  readonly sheet: string;
  readonly columns: readonly GrowingColumn[];
  /** Cells in the order of the columns. */
  readonly rows: readonly (readonly WrittenCell[])[];
}

/** The changes that append rows, and those that take them back. */
export interface Appended {
  readonly changes: readonly Change[];
  readonly undo: readonly Change[];
  /** First of the new rows as the sheet shows it. */
  readonly row: number;
  readonly isNewSheet: boolean;
}

const LOOK_IN = 30;

/** Position of each column of ours in the sheet's heading row; -1 where it has none. */
function headingRow({ values }: RangeContent, columns: readonly GrowingColumn[]) {
  const wanted = columns.map(({ heading }) => plainHeading(heading));
  let best: { readonly row: number; readonly at: readonly number[]; readonly found: number } | undefined;
  values.slice(0, LOOK_IN).forEach((cells, row) => {
    const words = cells.map(cell => plainHeading(nameOfCell(cell)));
    const at = wanted.map(word => words.indexOf(word));
    const found = at.filter(index => index >= 0).length;
    if (found * 2 > columns.length && found > (best?.found ?? 0)) best = { row, at, found };
  });
  return best;
}

function newSheet({ sheet, columns, rows }: Growth, exists: boolean): Appended {
  const at = (row: number, column: number, height: number, width: number) => ({
    sheet,
    address: addressOf({ row, column, rows: height, columns: width }),
  });
  const changes: Change[] = [
    ...(exists ? [] : [{ kind: 'addSheet' as const, sheet }]),
    ...columns.map(({ width }, column): Change => ({ kind: 'style', at: at(0, column, 1, 1), style: { columnWidth: width } })),
    { kind: 'values', at: at(0, 0, 1, columns.length), values: [columns.map(({ heading }) => heading)] },
    { kind: 'style', at: at(0, 0, 1, columns.length), style: { bold: true, wrap: true, border: 'bottom' } },
    { kind: 'page', sheet, page: { titleRows: '1:1', ...printedWidth(columns.map(({ width }) => width)) } },
  ];
  if (rows.length > 0) {
    columns.forEach(({ format }, column) => {
      if (format) changes.push({ kind: 'format', at: at(1, column, rows.length, 1), numberFormat: format });
    });
    changes.push({ kind: 'values', at: at(1, 0, rows.length, columns.length), values: rows });
  }
  const blank = Array.from({ length: rows.length + 1 }, () => columns.map(() => ''));
  const undo: Change[] = [{ kind: 'values', at: at(0, 0, rows.length + 1, columns.length), values: blank }];
  return { changes, undo, row: 2, isNewSheet: true };
}

/**
 * Appends rows to a sheet under its headings, whatever their order; headings that are missing are added on the right. A sheet that is
 * not there or blank gets the headings first. Nothing that stands is written over.
 * @param used the sheet's used part; undefined where it is blank
 * @param exists whether the sheet is there
 * @throws Error with a sentence where the sheet holds something else
 */
export function appendRows(growth: Growth, used: RangeContent | undefined, exists: boolean): Appended {
  const { sheet, columns, rows } = growth;
  if (!used) return newSheet(growth, exists);
  const found = headingRow(used, columns);
  if (!found) {
    const names = columns.slice(0, 4).map(({ heading }) => heading);
    throw new Error(
      `Sheet "${sheet}" holds something else: it has no headings ${names.join(', ')}, … . Rename that sheet; a new one is made.`,
    );
  }
  let next = used.values[0]!.length;
  const places = found.at.map(index => used.column + (index >= 0 ? index : next++));
  const changes: Change[] = [];
  const undo: Change[] = [];
  const cell = (row: number, column: number, height = 1) => ({
    sheet,
    address: addressOf({ row, column, rows: height, columns: 1 }),
  });
  const first = used.row + used.values.length;
  columns.forEach(({ heading, format }, index) => {
    const column = places[index]!;
    if (found.at[index]! < 0) {
      const at = cell(used.row + found.row, column);
      changes.push({ kind: 'values', at, values: [[heading]] }, { kind: 'style', at, style: { bold: true } });
      undo.unshift({ kind: 'values', at, values: [['']] });
    }
    if (rows.length === 0) return;
    const at = cell(first, column, rows.length);
    if (format) changes.push({ kind: 'format', at, numberFormat: format });
    changes.push({ kind: 'values', at, values: rows.map(cells => [cells[index] ?? '']) });
    undo.unshift({ kind: 'values', at, values: rows.map(() => ['']) });
  });
  return { changes, undo, row: first + 1, isNewSheet: false };
}
