import { addressOf, type Block } from '../../workbook/a1';
import type { SheetLayout } from '../../workbook/workbook';
import { ExcelRefusal, run } from './run';

/** Rows told in one answer: some dozens of bytes each, and Excel on the web gives 5 MB. */
const ROWS_A_PIECE = 20_000;

type Hidden = Omit<SheetLayout, 'merges'>;

interface HiddenParts extends Hidden {
  /** The used block; undefined where the sheet is empty. */
  readonly block?: Block;
}

/** Source: Excel.Range columnHidden (ExcelApi 1.2; null where some columns are hidden and others are not), getColumnProperties (1.9). */
async function hiddenColumnsOf(context: Excel.RequestContext, used: Excel.Range, block: Block): Promise<ReadonlySet<number>> {
  if (used.columnHidden === false) return new Set();
  const asked = used.getRow(0).getColumnProperties({ columnHidden: true });
  await context.sync();
  return new Set(asked.value.flatMap(({ columnHidden }, index) => (columnHidden ? [block.column + index] : [])));
}

/**
 * The used block of a sheet and what is hidden. Asked by rows and not by visible cells
 * (`SpecialCellType.visible`), for a column that is hidden makes areas of visible cells, too, and where all are, there is none.
 * Source: Excel.Range rowHidden (ExcelApi 1.2; null where some rows are hidden and others are not), getRowProperties (1.9: an item a row).
 */
async function hiddenParts(context: Excel.RequestContext, sheet: string): Promise<HiddenParts> {
  const worksheet = context.workbook.worksheets.getItem(sheet);
  const used = worksheet.getUsedRangeOrNullObject(true);
  worksheet.load('visibility');
  used.load('rowIndex,columnIndex,rowCount,columnCount,rowHidden,columnHidden');
  await context.sync();
  const isHidden = worksheet.visibility !== 'Visible';
  if (used.isNullObject) return { isHidden, hiddenRows: new Set(), hiddenColumns: new Set() };
  const block = { row: used.rowIndex, column: used.columnIndex, rows: used.rowCount, columns: used.columnCount };
  const hiddenRows = new Set<number>();
  const hiddenColumns = await hiddenColumnsOf(context, used, block);
  if (used.rowHidden === false) return { block, isHidden, hiddenRows, hiddenColumns };
  for (let first = block.row; first < block.row + block.rows; first += ROWS_A_PIECE) {
    const rows = Math.min(ROWS_A_PIECE, block.row + block.rows - first);
    const asked = worksheet
      .getRange(addressOf({ row: first, column: block.column, rows, columns: 1 }))
      .getRowProperties({ rowHidden: true });
    await context.sync();
    asked.value.forEach(({ rowHidden }, index) => rowHidden && hiddenRows.add(first + index));
  }
  return { block, isHidden, hiddenRows, hiddenColumns };
}

/**
 * Merged cells that begin in a block. The areas are read one by one, for the address of all of them may name their first cells only
 * (OfficeDev/office-js issue 1590).
 * Source: Excel.Range getMergedAreasOrNullObject (ExcelApi 1.13); it gives those whose first cell lies in the range (issue 3611).
 */
async function mergesOf(context: Excel.RequestContext, sheet: string, block: Block): Promise<Block[]> {
  const merged = context.workbook.worksheets.getItem(sheet).getRange(addressOf(block)).getMergedAreasOrNullObject();
  merged.load('areaCount');
  await context.sync();
  if (merged.isNullObject) return [];
  const { areas } = merged;
  areas.load('items/rowIndex,items/columnIndex,items/rowCount,items/columnCount');
  await context.sync();
  return areas.items.map(area => ({
    row: area.rowIndex,
    column: area.columnIndex,
    rows: area.rowCount,
    columns: area.columnCount,
  }));
}

/** The same, by halves where Excel gives none at once: it fails at more than 512 merged areas (Excel.Range, getMergedAreasOrNullObject). */
async function mergesByHalves(sheet: string, block: Block): Promise<readonly Block[]> {
  try {
    return await run(context => mergesOf(context, sheet, block));
  } catch (error) {
    if (!(error instanceof ExcelRefusal) || block.rows === 1) throw error;
  }
  const upper = Math.floor(block.rows / 2);
  const above = await mergesByHalves(sheet, { ...block, rows: upper });
  const below = await mergesByHalves(sheet, { ...block, row: block.row + upper, rows: block.rows - upper });
  return [...above, ...below];
}

/** What is hidden of a sheet, and merged cells of its used part; builds that cannot tell merged cells (before ExcelApi 1.13) tell none. */
export async function sheetLayout(sheet: string): Promise<SheetLayout> {
  const { block, ...hidden } = await run(context => hiddenParts(context, sheet));
  const tellsMerges = block && Office.context.requirements.isSetSupported('ExcelApi', '1.13');
  return { ...hidden, merges: tellsMerges ? await mergesByHalves(sheet, block) : [] };
}
