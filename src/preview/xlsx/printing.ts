import type { IWorksheetData } from '@univerjs/core';
import type { Worksheet } from 'exceljs';
import { blockOf } from '../../workbook/a1';
import type { PageSetup } from '../../workbook/workbook';

/** The library knows no numbers of rows where whole columns are printed, and no letters where whole rows are. */
function areaOf(printArea: string | undefined): string | undefined {
  const area = printArea?.replace(/NaN|undefined/g, '');
  return area && blockOf(area) ? area : undefined;
}

/** The library sets a dollar before the columns only, and an area that moves with the selected cell is none. */
const fixedArea = (area: string) => area.replace(/([A-Z])(?=\d)/gi, '$1$$');

/** How a file's sheet is printed; undefined where it says nothing about it. */
export function readPrinting({ pageSetup }: Worksheet): PageSetup | undefined {
  const { orientation, printArea, printTitlesRow, printTitlesColumn, fitToPage, fitToWidth, scale } = pageSetup ?? {};
  const area = areaOf(printArea);
  const page: PageSetup = {
    ...(orientation === 'landscape' && { orientation }),
    ...(area && { printArea: area }),
    ...(printTitlesRow && { titleRows: printTitlesRow }),
    ...(printTitlesColumn && { titleColumns: printTitlesColumn }),
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
    ...(page.printArea && { printArea: fixedArea(page.printArea) }),
    ...(page.titleRows && { printTitlesRow: page.titleRows }),
    ...(page.titleColumns && { printTitlesColumn: page.titleColumns }),
    ...(page.margin !== undefined && { margins: marginsOf(page.margin) }),
    ...(page.fitWidth && { fitToPage: true, fitToWidth: 1, fitToHeight: 0 }),
    ...(page.scale !== undefined && { scale: page.scale }),
  });
  // A break stands below the row before.
  for (const row of page.breaksBefore ?? []) worksheet.getRow(row - 1).addPageBreak();
}
