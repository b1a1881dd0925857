import { sharedBlock } from './address';
import type { Batch, Block } from './batch';
import { guarded } from './guarded';
import { refused } from './refusals';

interface ExcelLayout {
  readonly hiddenRows?: readonly number[];
  readonly hiddenColumns?: readonly number[];
  readonly visibility?: 'Visible' | 'Hidden' | 'VeryHidden';
  readonly merges?: readonly Block[];
}

/** Hidden rows and columns (from 0), visibility and merged cells by sheet; a test sets them, and takes them away. */
export const excelLayouts: Record<string, ExcelLayout> = {};

/** From here on Excel fails to give merged areas: documentation of Excel.Range, getMergedAreasOrNullObject. */
const MOST_MERGES = 512;

const hiddenIn = (sheet: string, { row, rows }: Block) =>
  Array.from({ length: rows }, (_, index) => excelLayouts[sheet]?.hiddenRows?.includes(row + index) ?? false);
const hiddenAcross = (sheet: string, { column, columns }: Block) =>
  Array.from({ length: columns }, (_, index) => excelLayouts[sheet]?.hiddenColumns?.includes(column + index) ?? false);

const allOrSome = (hidden: readonly boolean[]) => hidden.every(Boolean) || (hidden.some(Boolean) ? null : false);

/** `rowHidden` of a range: null where some rows are hidden and others are not. */
export const rowHiddenOf = (sheet: string, block: Block): boolean | null => allOrSome(hiddenIn(sheet, block));

/** `columnHidden` of a range, likewise. */
export const columnHiddenOf = (sheet: string, block: Block): boolean | null => allOrSome(hiddenAcross(sheet, block));

/** Properties of each column of a range, known after the next sync; only those that were asked for. */
export function columnPropertiesOf(
  { pending }: Batch,
  sheet: () => string,
  block: () => Block,
  asked: { columnHidden?: boolean },
) {
  let known: object[] | undefined;
  pending.push({
    __load: () => (known = hiddenAcross(sheet(), block()).map(columnHidden => (asked.columnHidden ? { columnHidden } : {}))),
  });
  return {
    get value() {
      if (!known) throw new Error('value read before sync');
      return known;
    },
  };
}

/** Properties of each row of a range, known after the next sync; only those that were asked for. */
export function rowPropertiesOf({ pending }: Batch, sheet: string, block: Block, asked: { rowHidden?: boolean }): object {
  let known: object[] | undefined;
  pending.push({
    __load: () => (known = hiddenIn(sheet, block).map(rowHidden => (asked.rowHidden ? { rowHidden } : {}))),
  });
  return {
    get value() {
      if (!known) throw new Error('value read before sync');
      return known;
    },
  };
}

/** Merged areas whose first cell lies in the block (OfficeDev/office-js issue 3611); a null object where there is none. */
export function mergedAreasOf({ pending }: Batch, sheet: string, block: Block): object {
  const found = () => {
    const merges = (excelLayouts[sheet]?.merges ?? []).filter(merge => sharedBlock(block, { ...merge, rows: 1, columns: 1 }));
    if (merges.length > MOST_MERGES) throw refused('too many merged areas', 'GeneralException');
    return merges;
  };
  const items = () =>
    found().map(({ row, column, rows, columns }) => ({
      rowIndex: row,
      columnIndex: column,
      rowCount: rows,
      columnCount: columns,
    }));
  return guarded(pending, () => (found().length > 0 ? { areaCount: found().length } : undefined), {
    get areas() {
      if (found().length === 0) throw new Error('areas of a null object');
      return guarded(pending, () => ({ items: items() }), {});
    },
  });
}
