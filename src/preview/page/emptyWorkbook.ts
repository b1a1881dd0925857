import type { OpenedWorkbook } from '../xlsx/readXlsx';

/** What the empty workbook is called in the list of samples and beside the buttons. */
export const EMPTY_TITLE = 'Empty workbook';

/** A workbook to begin one's own sheets in; also what is shown where there is nothing to open. Made anew each time: the spreadsheet writes into it. */
export function emptyWorkbook(): OpenedWorkbook {
  const sheet = {
    ...{ id: 'sheet1', name: 'Sheet1', rowCount: 200, columnCount: 26, cellData: {} },
    // As Excel's own empty sheets.
    ...{ defaultColumnWidth: 64, defaultRowHeight: 20 },
  };
  return {
    data: {
      id: 'workbook',
      name: EMPTY_TITLE,
      appVersion: '',
      locale: 'enUS' as OpenedWorkbook['data']['locale'],
      styles: {},
      sheetOrder: [sheet.id],
      sheets: { [sheet.id]: sheet },
    },
    cells: [],
    notes: [],
  };
}
