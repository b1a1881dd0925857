import type { OpenedWorkbook } from '../xlsx/readXlsx';

const SHEET = { id: 'sheet1', name: 'Sheet1', rowCount: 200, columnCount: 26, cellData: {} };

/** What is shown where there is nothing to open. */
export const EMPTY_WORKBOOK: OpenedWorkbook = {
  data: {
    id: 'workbook',
    name: 'Empty workbook',
    appVersion: '',
    locale: 'enUS' as OpenedWorkbook['data']['locale'],
    styles: {},
    sheetOrder: [SHEET.id],
    sheets: { [SHEET.id]: SHEET },
  },
  cells: [],
  notes: [],
};
