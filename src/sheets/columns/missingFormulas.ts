import { columnLetters, cellAddress } from '../../workbook/a1';
import { spilledResult, type SpilledResult } from '../../workbook/spilledResult';
import type { Change } from '../../workbook/workbook';
import { formulaBelow } from '../table/formulaBelow';
import { lineRows } from './lineRows';
import { longerSpill, reaching, type FilledRows } from './longerSpill';
import { goesByPair, rowToGoOn } from './rowToGoOn';
import { ownColumns, tableColumns, tableRowsOf, type OwnColumn, type ReadTable } from './ownColumns';

/** Formulas that lines of a table lack in columns of ours. */
export interface MissingFormulas {
  /** Rows that lack one at least, as the sheet shows them. */
  readonly rows: readonly number[];
  readonly headings: readonly string[];
  readonly changes: readonly Change[];
}

const refersTo = (formula: string, column: number) =>
  new RegExp(`(?<![A-Z$])\\$?${columnLetters(column)}\\$?\\d`, 'i').test(formula);

/** A hose alone lacks no formula that takes a coupling, and none that goes by what such a formula gives. */
function isForCouplings({ cells, columns }: ReadTable, formula: string, row: number, own: readonly OwnColumn[]): boolean {
  const couplings = [columns.fittingA, columns.fittingB].flatMap(each => (each ? [each.first] : []));
  if (couplings.length === 0 || couplings.some(column => cells.shown(row, column) !== '')) return false;
  return [...couplings, ...own.map(({ column }) => column)].some(column => refersTo(formula, column));
}

/** One column of a result by itself. */
const partOfCall = (formula: string, { call }: SpilledResult, part: number) =>
  `=INDEX(${formula.slice(call.from, call.to)},1,${part})`;

/** The formulas of a row by their columns: one that fills them all, or, where somebody typed into some of them, one for each of the others. */
function rowFormulas({ cells }: ReadTable, formula: string, row: number, column: number): (readonly [number, string])[] {
  const result = spilledResult(formula);
  const parts = result?.rows === 1 ? result.columns : [1];
  const empty = parts.map((_, across) => cells.isEmpty(row, column + across) && !cells.merge(row, column + across));
  if (empty.every(Boolean)) return [[column, formula]];
  return parts.flatMap((part, across) => (empty[across] ? [[column + across, partOfCall(formula, result!, part)] as const] : []));
}

/** Whether a formula beside the column fills its cells nearer to a row than its own formula does: that one goes on there. */
function isFilledBesideAfter({ cells }: ReadTable, column: number, from: number, row: number): boolean {
  for (let each = row - 1; each > from; each -= 1) if (cells.filledBy(each, column)) return true;
  return false;
}

/** A formula a row: the one of the nearest row above goes on; what somebody typed stays. */
function furtherRows(view: ReadTable, own: OwnColumn, lines: readonly number[], all: readonly OwnColumn[]): FilledRows {
  const { cells, table } = view;
  const { column } = own;
  const isByPair = goesByPair(view, own);
  const rows: number[] = [];
  const changes: Change[] = [];
  const at = (row: number, of: number) => ({
    sheet: table.sheet,
    address: cellAddress({ row, column: of }),
  });
  for (const row of lines.filter(each => cells.formula(each, column) === '' && !cells.filledBy(each, column))) {
    const from = rowToGoOn(view, own.filled, row, isByPair);
    if (from === undefined || isFilledBesideAfter(view, column, from, row)) continue;
    const formula = formulaBelow(cells.formula(from, column), from, row - from);
    if (formula === undefined || isForCouplings(view, formula, row, all)) continue;
    const written = rowFormulas(view, formula, row, column);
    if (written.length === 0) continue;
    rows.push(row);
    const isWhole = written[0]![1] === formula;
    const formatted = isWhole ? (spilledResult(formula)?.columns ?? [1]).map((_, i) => column + i) : written.map(([to]) => to);
    changes.push(
      ...formatted.map((to): Change => ({ kind: 'format', at: at(row, to), numberFormat: cells.format(from, to) || 'General' })),
      ...written.map(([to, each]): Change => ({ kind: 'formulas', at: at(row, to), formulas: [[each]] })),
    );
  }
  return { rows, changes };
}

/** Headings of a column and of those beside it that its formulas fill. */
function headingsFilled({ cells }: ReadTable, { column, filled }: OwnColumn, all: readonly OwnColumn[]): string[] {
  const width = spilledResult(cells.formula(filled[0]!, column))?.columns.length ?? 1;
  return all.filter(each => each.column >= column && each.column < column + width).map(({ heading }) => heading);
}

/** What lines of a table lack of the columns that we have written: rows were appended since. */
export function missingFormulas(view: ReadTable): MissingFormulas {
  const { cells, columns, table } = view;
  const all = ownColumns(view);
  const own = all.filter(({ filled }) => filled.length > 0);
  const { others, last } = lineRows(view);
  const isOwn = new Set(all.map(({ column }) => column));
  const typed = tableColumns(view).filter(column => !isOwn.has(column));
  const keys = Object.values(columns).flatMap(({ first }) => (isOwn.has(first) ? [] : [first]));
  const holds = (row: number) => (keys.length > 0 ? keys : typed).some(column => cells.shown(row, column) !== '');
  const lines = tableRowsOf(view).filter(row => row <= last && !others.has(row) && holds(row));
  const found = own.map(each => {
    const formula = cells.formula(each.filled[0]!, each.column);
    // A formula that serves several rows fills cells that hold none of their own.
    const isSpill = !table.hostTable && each.filled.length === 1 && reaching(formula, each.filled[0]!, last) !== undefined;
    return { each, ...(isSpill ? longerSpill(view, each, last) : furtherRows(view, each, lines, all)) };
  });
  const lacking = found.filter(({ rows }) => rows.length > 0);
  return {
    rows: [...new Set(lacking.flatMap(({ rows }) => rows.map(row => row + 1)))].sort((a, b) => a - b),
    headings: [...new Set(lacking.flatMap(({ each }) => headingsFilled(view, each, all)))],
    changes: lacking.flatMap(({ changes }) => changes),
  };
}
