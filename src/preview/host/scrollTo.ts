import { ICommandService, type Univer } from '@univerjs/core';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { CellBlock } from '../xlsx/address';
import { scrollOffset } from './scrollOffset';

/** What is surely in sight behind frozen rows and columns, in pixels. */
const SEEN_DOWN = 240;
const SEEN_ACROSS = 400;

/** Height or width of the first rows or columns together. */
function sizeOfFirst(count: number, sizeOf: (index: number) => number): number {
  let size = 0;
  for (let index = 0; index < count; index++) size += sizeOf(index);
  return size;
}

/** Scrolls a sheet of the page to the beginning of a block, as far as it is not frozen. */
export async function scrollTo(univer: Univer, sheet: FWorksheet, block: CellBlock): Promise<void> {
  const { startRow: firstRow, startColumn: firstColumn } = sheet.getFreeze();
  const heightOf = (row: number) => sheet.getRowHeight(row);
  const widthOf = (column: number) => sheet.getColumnWidth(column);
  const row = Math.max(block.startRow, Math.min(block.endRow, firstRow));
  const column = Math.max(block.startColumn, Math.min(block.endColumn, firstColumn));
  const { sheetViewStartRow, sheetViewStartColumn, offsetX, offsetY } = sheet.getScrollState();
  const down = sizeOfFirst(sheetViewStartRow, heightOf) + offsetY;
  const across = sizeOfFirst(sheetViewStartColumn, widthOf) + offsetX;
  await univer
    .__getInjector()
    .get(ICommandService)
    .executeCommand('sheet.command.scroll-view', {
      sheetViewStartRow: 0,
      sheetViewStartColumn: 0,
      offsetY: scrollOffset(row, firstRow, down, SEEN_DOWN, heightOf),
      offsetX: scrollOffset(column, firstColumn, across, SEEN_ACROSS, widthOf),
    });
}
