import type { Worksheet } from 'exceljs';

/** What stands on every printed page. */
export const INVENTED = 'Invented data: never cut or crimp from these';

/** Landscape A4, one page wide, headings on every page; headings stay in sight on the screen. */
export function setUpSheet(sheet: Worksheet, headingRow: number, frozenColumns: number): void {
  sheet.views = [{ state: 'frozen', xSplit: frozenColumns, ySplit: headingRow, showGridLines: false }];
  sheet.pageSetup = {
    paperSize: 9,
    orientation: 'landscape',
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    printTitlesRow: `${headingRow}:${headingRow}`,
    margins: { left: 0.4, right: 0.4, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
  };
  sheet.headerFooter.oddHeader = `&L&A&R${INVENTED}`;
  sheet.headerFooter.oddFooter = '&LBenchrow sample&RPage &P of &N';
}
