import type { IWorksheetData } from '@univerjs/core';
import type { Worksheet } from 'exceljs';
import type { PageSetup } from '../../host/workbook';

/** How a file's sheet is printed; undefined where it says nothing about it. */
export function readPrinting({ pageSetup }: Worksheet): PageSetup | undefined {
  const { orientation, printArea, printTitlesRow, fitToPage, fitToWidth, scale } = pageSetup ?? {};
  const page: PageSetup = {
    ...(orientation === 'landscape' && { orientation }),
    ...(printArea && { printArea }),
    ...(printTitlesRow && { titleRows: printTitlesRow }),
    ...(fitToPage && fitToWidth === 1 && { fitWidth: true }),
    ...(!fitToPage && scale && scale !== 100 && { scale }),
  };
  return Object.keys(page).length > 0 ? page : undefined;
}

const POINTS_PER_INCH = 72;

/** A file counts margins in inches; head and foot lines keep half of the margin. */
function marginsOf(points: number) {
  const inches = points / POINTS_PER_INCH;
  return { left: inches, right: inches, top: inches, bottom: inches, header: inches / 2, footer: inches / 2 };
}

/** Writes how a sheet is printed, as it was read or as the task pane set it. */
export function writePrinting(sheet: Partial<IWorksheetData>, worksheet: Worksheet): void {
  const page = (sheet.custom as { page?: PageSetup } | null | undefined)?.page;
  if (!page) return;
  Object.assign(worksheet.pageSetup, {
    ...(page.orientation && { orientation: page.orientation }),
    ...(page.printArea && { printArea: page.printArea }),
    ...(page.titleRows && { printTitlesRow: page.titleRows }),
    ...(page.margin !== undefined && { margins: marginsOf(page.margin) }),
    ...(page.fitWidth && { fitToPage: true, fitToWidth: 1, fitToHeight: 0 }),
    ...(page.scale !== undefined && { scale: page.scale }),
  });
  // A break stands below the row before.
  for (const row of page.breaksBefore ?? []) worksheet.getRow(row - 1).addPageBreak();
}
