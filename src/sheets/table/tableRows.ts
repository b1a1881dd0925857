import { nameOfCell } from '../../cells/sheetCell';
import type { FoundTable } from './findTables';
import type { SheetCells } from './sheetCells';
import { sumsRows } from './sumsRows';
import { areUnits } from './unitsRow';

/** Why a row of a sheet is not among those that are worked with. */
export type LeftOutReason =
  'hidden' | 'total' | 'remark' | 'below' | 'done' | 'planned' | 'stop' | 'barred' | 'none wanted' | 'replaced' | 'problem';

/** Words for each reason, for one row and for several. */
export const LEFT_OUT_WORDS: Readonly<Record<LeftOutReason, string>> = {
  hidden: 'hidden or filtered out',
  total: 'totals',
  remark: 'remarks',
  below: 'elsewhere on the sheet',
  done: 'done',
  planned: 'planned already',
  stop: 'STOP',
  barred: 'not to be used by their status',
  'none wanted': 'quantity 0',
  replaced: 'said by another row',
  problem: 'not readable',
};

/** Reasons that a tick sets aside: the rows are taken then. */
export type Takeable = Extract<LeftOutReason, 'hidden' | 'below' | 'done' | 'planned' | 'barred'>;

/** A row of the sheet, as the sheet shows it, and why it was left out. */
export interface LeftOutRow {
  readonly row: number;
  readonly reason: LeftOutReason;
  /** More about it, where there is more to say. */
  readonly sentence?: string | undefined;
  /** The cell to look at, where one is to blame: `G10`. */
  readonly at?: string | undefined;
}

/** What a view has read: shown above its result. */
export interface ReadReport {
  readonly sheet: string;
  /** `A5:K40`, one a table that was read. */
  readonly tables: readonly string[];
  /** Rows that were taken, as the sheet shows them. */
  readonly taken: readonly number[];
  readonly leftOut: readonly LeftOutRow[];
  /** What is to be known of the rows taken, in whole sentences. */
  readonly notes?: readonly string[];
}

const SUMMED = 'total|totals|sum|sums|subtotal|subtotals';
const WORKED_OUT = `${SUMMED}|mean|average|avg\\.?|range|spread|std\\.? ?dev\\.?|standard deviation|min\\.?|minimum|max\\.?|maximum|count`;
/** `Total`, `Sub-total of reel`, and as the spreadsheet's own subtotals have it: `Alder DN 12 Total`, `Carried forward`. */
const TOTAL = new RegExp(
  `^(?:grand |sub[- ]?)?(?:${WORKED_OUT})(?: .*)?:?$|^.* (?:grand |sub[- ]?)?(?:total|totals|subtotal|average|count)s?:?$|^[Σ∑]|^(?:carried|brought) (?:forward|over)`,
  'i',
);

/** A row under the headings: a line, or what it is instead. */
export interface TableRow {
  /** Zero-based. */
  readonly row: number;
  readonly kind: 'line' | 'total' | 'remark' | 'hidden' | 'below';
}

/** True for the row right below the headings where nothing but units stands in it. */
export function isUnitsRow(cells: SheetCells, { block }: FoundTable, row: number): boolean {
  if (row !== block.row + 1) return false;
  return areUnits(Array.from({ length: block.columns }, (_, i) => nameOfCell(cells.value(row, block.column + i))));
}

/** How the rows of a kind of table are told from totals and remarks. */
export interface RowRules {
  /** Zero-based column of the name without which a row of a total is none of ours. */
  readonly name: number | undefined;
  /** Columns of which a line fills at least one. */
  readonly keys: readonly number[];
  readonly takesHidden: boolean;
  /** A name of the workbook's catalogue: its row is no remark, even where nothing else is filled in. */
  readonly isKnown?: ((name: string) => boolean) | undefined;
}

function kindOf(cells: SheetCells, table: FoundTable, row: number, rules: RowRules): TableRow['kind'] | undefined {
  const { block } = table;
  const { name, keys, takesHidden, isKnown } = rules;
  const columns = Array.from({ length: block.columns }, (_, i) => block.column + i);
  const filled = columns.filter(
    column => nameOfCell(cells.value(row, column)) !== '' || typeof cells.value(row, column) === 'object',
  );
  const isShown = (column: number) => {
    const shown = cells.shown(row, column);
    return typeof shown === 'string' ? shown.trim() !== '' : true;
  };
  if (filled.length === 0 && !keys.some(isShown)) return undefined;
  if (isUnitsRow(cells, table, row)) return 'remark';
  const first = filled.length > 0 ? nameOfCell(cells.value(row, filled[0]!)) : '';
  const isNamed = name !== undefined && filled[0] !== name && nameOfCell(cells.shown(row, name)) !== '';
  if (TOTAL.test(first) && !isNamed) return 'total';
  const shownKeys = keys.filter(isShown);
  const isNameless = name === undefined || !isShown(name);
  const isWorkedOut = shownKeys.length > 0 && shownKeys.every(key => cells.isComputed(row, key));
  if (isNameless && isWorkedOut && filled.some(column => sumsRows(cells.formula(row, column), row))) return 'total';
  const isCovered = keys.some(key => key !== name && cells.value(row, key) === '' && (cells.merge(row, key)?.rows ?? 1) > 1);
  const isAlone = filled.length === 1 && !isCovered && typeof cells.value(row, filled[0]!) === 'string' && block.columns > 2;
  const isWords = /\p{L}/u.test(first) && !/^\d/.test(first);
  if (isAlone && isWords && !isKnown?.(first) && (!keys.includes(filled[0]!) || filled[0] === block.column)) return 'remark';
  if (shownKeys.length === 0) return 'remark';
  return cells.isHidden(row) && !takesHidden ? 'hidden' : 'line';
}

/** The rows of a table that hold something, in order, those below its end last. */
export function tableRows(cells: SheetCells, table: FoundTable, rules: RowRules): readonly TableRow[] {
  const { block, below } = table;
  const within = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).flatMap((row): TableRow[] => {
    const kind = kindOf(cells, table, row, rules);
    return kind ? [{ row, kind }] : [];
  });
  const after = below.flatMap((row): TableRow[] => {
    const kind = kindOf(cells, table, row, { ...rules, takesHidden: true });
    return kind === undefined ? [] : [{ row, kind: kind === 'line' ? 'below' : kind }];
  });
  return [...within, ...after];
}
