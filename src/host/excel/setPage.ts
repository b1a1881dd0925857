import type { PageSetup } from '../../workbook/workbook';

/** Sets how a sheet is printed. */
export function setPage(worksheet: Excel.Worksheet, page: PageSetup): void {
  const { pageLayout } = worksheet;
  if (page.orientation) {
    pageLayout.orientation = page.orientation === 'landscape' ? Excel.PageOrientation.landscape : Excel.PageOrientation.portrait;
  }
  if (page.printArea) pageLayout.setPrintArea(page.printArea);
  if (page.titleRows) pageLayout.setPrintTitleRows(page.titleRows.replace(/(\d+)/g, '$$$1'));
  if (page.titleColumns) pageLayout.setPrintTitleColumns(page.titleColumns.replace(/([A-Z]+)/g, '$$$1'));
  if (page.fitWidth) pageLayout.zoom = { horizontalFitToPages: 1 };
  if (page.scale !== undefined) pageLayout.zoom = { scale: page.scale };
  if (page.margin !== undefined) {
    pageLayout.leftMargin = pageLayout.rightMargin = pageLayout.topMargin = pageLayout.bottomMargin = page.margin;
  }
  for (const row of page.breaksBefore ?? []) worksheet.horizontalPageBreaks.add(`A${row}`);
}
