import { addressOf, columnLetters } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { plainHeading } from '../table/heading';
import { formulaBelow } from '../table/formulaBelow';
import type { TableView } from './columnsView';
import { lineRows } from './lineRows';

const OURS = /(?:_xldudf_)?\bHOSE[._][A-Z0-9]+\(/i;

type Read = Pick<TableView, 'cells' | 'table' | 'columns'>;

/** A column of a table that our functions fill. */
export interface OwnColumn {
  /** Zero-based on the sheet. */
  readonly column: number;
  readonly heading: string;
  /** Rows that hold a formula of ours. */
  readonly filled: readonly number[];
}

const columnsOf = ({ table: { block } }: Read) => Array.from({ length: block.columns }, (_, i) => block.column + i);
const rowsOf = ({ table: { block } }: Read) => Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i);

/** The columns of a table that hold formulas with functions of ours. */
export function ownColumns(view: Read): readonly OwnColumn[] {
  const { cells, table } = view;
  return columnsOf(view).flatMap((column): OwnColumn[] => {
    const filled = rowsOf(view).filter(row => OURS.test(cells.formula(row, column)));
    const heading = table.headings[column - table.block.column] ?? '';
    return filled.length > 0 ? [{ column, heading: heading || columnLetters(column), filled }] : [];
  });
}

/** Whether a cell holds what a formula of ours further left gives: one call answers with several columns. */
function isSpilled({ cells, table: { block } }: Read, row: number, column: number): boolean {
  if (cells.isEmpty(row, column) || cells.formula(row, column) !== '') return false;
  for (let left = column - 1; left >= block.column && !cells.isEmpty(row, left); left--) {
    const formula = cells.formula(row, left);
    if (formula !== '') return OURS.test(formula);
  }
  return false;
}

/** The column that already is what a heading says, where our functions fill it, one by one or from the left. */
export function columnNamed(view: Read, heading: string): number | undefined {
  const own = ownColumns(view).find(each => plainHeading(each.heading) === plainHeading(heading));
  if (own) return own.column;
  const { headings } = view.table;
  return columnsOf(view).find(
    (column, index) =>
      plainHeading(headings[index] ?? '') === plainHeading(heading) && rowsOf(view).some(row => isSpilled(view, row, column)),
  );
}

/** Formulas that lines of a table lack in columns of ours. */
export interface MissingFormulas {
  /** Rows that lack one at least, as the sheet shows them. */
  readonly rows: readonly number[];
  readonly headings: readonly string[];
  readonly changes: readonly Change[];
}

const RANGE = /(\$?[A-Z]{1,3}\$?)(\d{1,7})(:\$?[A-Z]{1,3}\$?)(\d{1,7})/gi;

/** One formula that serves all rows from its own on, made to reach a later row; undefined where it is of its own row only. */
function reaching(formula: string, row: number, last: number): { readonly formula: string; readonly before: number } | undefined {
  const ends = [...formula.matchAll(RANGE)].filter(([, , first, , end]) => Number(first) === row + 1 && Number(end) > row + 1);
  if (ends.length === 0) return undefined;
  const before = Math.max(...ends.map(([, , , , end]) => Number(end)));
  const longer = formula.replace(RANGE, (whole, a: string, first: string, b: string, end: string) =>
    Number(first) === row + 1 && Number(end) === before ? `${a}${first}${b}${last + 1}` : whole,
  );
  return { formula: longer, before: before - 1 };
}

interface Filled {
  readonly rows: readonly number[];
  readonly changes: readonly Change[];
}

const NOTHING: Filled = { rows: [], changes: [] };

/** One formula a column: it is made to reach the last line. */
function longerSpill({ table: { sheet } }: Read, { column, filled }: OwnColumn, formula: string, last: number): Filled {
  const row = filled[0]!;
  const found = filled.length === 1 ? reaching(formula, row, last) : undefined;
  if (!found || found.before >= last) return NOTHING;
  const at = { sheet, address: addressOf({ row, column, rows: 1, columns: 1 }) };
  const rows = Array.from({ length: last - found.before }, (_, i) => found.before + 1 + i);
  return { rows, changes: [{ kind: 'formulas', at, formulas: [[found.formula]] }] };
}

const refersTo = (formula: string, column: number) =>
  new RegExp(`(?<![A-Z$])\\$?${columnLetters(column)}\\$?\\d`, 'i').test(formula);

/** A hose alone lacks no formula that takes a coupling, and none that goes by what such a formula gives. */
function isForCouplings({ cells, columns }: Read, formula: string, row: number, own: readonly OwnColumn[]): boolean {
  const couplings = [columns.fittingA, columns.fittingB].flatMap(each => (each ? [each.first] : []));
  if (couplings.length === 0 || couplings.some(column => cells.shown(row, column) !== '')) return false;
  return [...couplings, ...own.map(({ column }) => column)].some(column => refersTo(formula, column));
}

/** A formula a row: the one of the nearest row above goes on; what somebody typed stays. */
function furtherRows(view: Read, own: OwnColumn, lines: readonly number[], all: readonly OwnColumn[]): Filled {
  const { cells, table } = view;
  const { column } = own;
  const rows: number[] = [];
  const changes: Change[] = [];
  for (const row of lines.filter(each => cells.isEmpty(each, column))) {
    const from = own.filled.filter(each => each < row).at(-1) ?? own.filled[0]!;
    const formula = formulaBelow(cells.formula(from, column), from, row - from);
    if (formula === undefined || isForCouplings(view, formula, row, all)) continue;
    rows.push(row);
    const at = { sheet: table.sheet, address: addressOf({ row, column, rows: 1, columns: 1 }) };
    changes.push(
      { kind: 'format', at, numberFormat: cells.format(from, column) },
      { kind: 'formulas', at, formulas: [[formula]] },
    );
  }
  return { rows, changes };
}

/** What lines lack of the columns that we have written: rows were appended since. */
export function missingFormulas(view: Read): MissingFormulas {
  const { cells, columns, table } = view;
  const own = ownColumns(view);
  const { others, last } = lineRows(view);
  const isOwn = new Set(own.map(({ column }) => column));
  const typed = columnsOf(view).filter(column => !isOwn.has(column));
  const keys = Object.values(columns).flatMap(({ first }) => (isOwn.has(first) ? [] : [first]));
  const holds = (row: number) => (keys.length > 0 ? keys : typed).some(column => cells.shown(row, column) !== '');
  const lines = rowsOf(view).filter(row => row <= last && !others.has(row) && holds(row));
  const found = own.map(each => {
    const formula = cells.formula(each.filled[0]!, each.column);
    // A formula that serves several rows fills cells that hold none of their own.
    const isSpill = !table.hostTable && each.filled.length === 1 && reaching(formula, each.filled[0]!, last) !== undefined;
    return { each, ...(isSpill ? longerSpill(view, each, formula, last) : furtherRows(view, each, lines, own)) };
  });
  const lacking = found.filter(({ rows }) => rows.length > 0);
  return {
    rows: [...new Set(lacking.flatMap(({ rows }) => rows.map(row => row + 1)))].sort((a, b) => a - b),
    headings: lacking.map(({ each }) => each.heading),
    changes: lacking.flatMap(({ changes }) => changes),
  };
}
