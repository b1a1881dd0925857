import { addressOf, type Block, cellAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import type { RangeContent } from '../../workbook/workbook';
import { formatAt, formulaAt, isInside, valueAt } from './filledCells';
import type { Spilled } from './spilledBlocks';
import type { TableGrid } from './tableGrid';
import { plainValue } from '../../workbook/cellWords';
import type { WrittenCell } from '../print/sheetWriter';
import { DATE_FORMAT } from '../print/dateFormat';

const TEXT_FORMAT = '@';
const SHARE_FORMAT = '0.0 %';
/** Narrowest and widest column of a new sheet, in points; a character is about 5.5. */
const [NARROWEST, WIDEST, CHARACTER] = [50, 220, 5.5];

const columnBlock = (block: Block, column: number): Block => ({ ...block, column: block.column + column, columns: 1 });

/** Number formats of the columns: dates and texts that look like formulas; columns that took another's place lose its format. */
function formatChanges({ moved, dates, guarded }: TableGrid, sheet: string, block: Block, isNew: boolean): Change[] {
  const formats = new Map<number, string>(isNew ? [] : moved.map(column => [column, 'General']));
  for (const column of dates) formats.set(column, DATE_FORMAT);
  for (const column of guarded) formats.set(column, TEXT_FORMAT);
  return [...formats].map(([column, numberFormat]) => ({
    kind: 'format',
    at: { sheet, address: addressOf(columnBlock(block, column)) },
    numberFormat,
  }));
}

/** Fractions of the table Rates in per cent; a number that takes the place of one is shown as a number again. */
function shareFormats({ shares }: TableGrid, sheet: string, block: Block, standing: RangeContent | undefined): Change[] {
  return shares.flatMap(({ row, column, isShare }): Change[] => {
    const cell = { row: block.row + row, column: block.column + column };
    const isPercent = formatAt(standing, cell).includes('%');
    if (isShare === isPercent) return [];
    return [{ kind: 'format', at: { sheet, address: cellAddress(cell) }, numberFormat: isShare ? SHARE_FORMAT : 'General' }];
  });
}

/** Changes that write a table; what stands in the rest of `block` is blanked. */
export function tableChanges(
  grid: TableGrid,
  sheet: string,
  block: Block,
  isNew: boolean,
  standing?: RangeContent | undefined,
): readonly Change[] {
  const blank = Array<WrittenCell>(block.columns).fill('');
  const values = Array.from({ length: block.rows }, (_, row) => {
    const cells = grid.cells[row];
    return cells ? [...cells, ...blank.slice(cells.length)] : blank;
  });
  return [
    ...formatChanges(grid, sheet, block, isNew),
    ...shareFormats(grid, sheet, block, standing),
    { kind: 'values', at: { sheet, address: addressOf(block) }, values },
  ];
}

/** Looks of a new table's sheet: headings, widths. */
export function newTableLooks(grid: TableGrid, sheet: string): readonly Change[] {
  const headings = grid.cells[0]!;
  const at = (block: Block) => ({ sheet, address: addressOf(block) });
  const width = (column: number) => {
    const longest = Math.max(
      ...grid.cells.slice(0, 200).map((cells, row) => String(cells[column]).length / (row === 0 ? 1.5 : 1)),
    );
    return Math.min(WIDEST, Math.max(NARROWEST, Math.round(longest * CHARACTER) + 10));
  };
  return [
    {
      kind: 'style',
      at: at({ row: 0, column: 0, rows: 1, columns: headings.length }),
      style: { bold: true, wrap: true, border: 'bottom' },
    },
    ...headings.map((_, column): Change => ({
      kind: 'style',
      at: at({ row: 0, column, rows: 1, columns: 1 }),
      style: { columnWidth: width(column) },
    })),
  ];
}

/** Changes that put back what stood in a block: values, then formulas, which fill again what they had filled. */
export function restoringChanges(
  content: RangeContent | undefined,
  sheet: string,
  block: Block,
  spilled: readonly Spilled[] = [],
): readonly Change[] {
  const at = (down: number, across: number) => ({ row: block.row + down, column: block.column + across });
  const formulas: Change[] = [];
  const values = Array.from({ length: block.rows }, (_, down) =>
    Array.from({ length: block.columns }, (__, across): WrittenCell => {
      const cell = at(down, across);
      const formula = formulaAt(content, cell);
      if (formula !== '') formulas.push({ kind: 'formulas', at: { sheet, address: cellAddress(cell) }, formulas: [[formula]] });
      const value = spilled.some(each => isInside(cell, each.block)) ? '' : valueAt(content, cell);
      return plainValue(value);
    }),
  );
  return [{ kind: 'values', at: { sheet, address: addressOf(block) }, values }, ...formulas];
}

/** Number formats that stood where rates are written. */
export function restoringShares(
  { shares }: TableGrid,
  content: RangeContent | undefined,
  sheet: string,
  block: Block,
): readonly Change[] {
  return shares.map(({ row, column }) => {
    const cell = { row: block.row + row, column: block.column + column };
    return { kind: 'format', at: { sheet, address: cellAddress(cell) }, numberFormat: formatAt(content, cell) };
  });
}
