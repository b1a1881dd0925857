import type { Page } from 'playwright-core';

/** Cells by sheet, from A1 on. */
type Sheets = Readonly<Record<string, readonly (readonly (string | number)[])[]>>;

/**
 * Runs in the page in place of office.js: an Excel of plain values. Only what the pane asks for as it opens; what it asks for besides fails
 * by its name. Files of new workbooks are kept in `createdWorkbooks`.
 */
function pretendExcel({ sheets, sets }: { sheets: Sheets; sets: readonly string[] }): void {
  const letters = (column: number) => String.fromCharCode(65 + column);
  const numbers = (address: string) =>
    address.split(':').map(cell => {
      const [, column = 'A', row = '1'] = /^\$?([A-Z]+)\$?(\d+)$/.exec(cell) ?? [];
      return { column: [...column].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1, row: Number(row) - 1 };
    });
  const nothing = { isNullObject: true, load: () => undefined };
  const range = (sheet: string, first: { row: number; column: number }, last = first): object => {
    const rows = Array.from({ length: last.row - first.row + 1 }, (_, r) =>
      Array.from({ length: last.column - first.column + 1 }, (__, c) => sheets[sheet]![first.row + r]?.[first.column + c] ?? ''),
    );
    const name = (cell: { row: number; column: number }) => `${letters(cell.column)}${cell.row + 1}`;
    return {
      ...{
        isNullObject: false,
        load: () => undefined,
        rowHidden: false,
        columnHidden: false,
        numberFormat: rows.map(row => row.map(() => 'General')),
      },
      ...{ address: `${sheet}!${name(first)}:${name(last)}`, rowIndex: first.row, columnIndex: first.column },
      ...{ rowCount: rows.length, columnCount: rows[0]!.length, values: rows, formulas: rows },
      valueTypes: rows.map(row => row.map(value => (typeof value === 'number' ? 'Double' : 'String'))),
      get worksheet() {
        return worksheet(sheet);
      },
      getIntersectionOrNullObject: () => {
        const used = usedEnd(sheet);
        const end = { row: Math.min(last.row, used.row), column: Math.min(last.column, used.column) };
        return end.row < first.row || end.column < first.column ? nothing : range(sheet, first, end);
      },
      getMergedAreasOrNullObject: () => nothing,
    };
  };
  const usedEnd = (sheet: string) => ({
    row: Math.max(0, sheets[sheet]!.length - 1),
    column: Math.max(0, ...sheets[sheet]!.map(row => row.length - 1)),
  });
  const start = { row: 0, column: 0 };
  const worksheet = (name: string): object => ({
    ...{ name, visibility: 'Visible', load: () => undefined, tables: { items: [], load: () => undefined } },
    getRange: (address: string) => {
      const [first, last] = numbers(address);
      return range(name, first!, last);
    },
    getUsedRange: () => range(name, start, usedEnd(name)),
    getUsedRangeOrNullObject: () => (sheets[name]!.length > 0 ? range(name, start, usedEnd(name)) : nothing),
  });
  const events = { add: () => ({ remove: () => undefined }) };
  const first = Object.keys(sheets)[0]!;
  const workbook = {
    worksheets: {
      ...{ load: () => undefined, items: Object.keys(sheets).map(worksheet), getItem: worksheet },
      ...{ onActivated: events, onChanged: events, onCalculated: events },
    },
    ...{ names: { load: () => undefined, items: [] }, onSelectionChanged: events },
    settings: { getItemOrNullObject: () => nothing, add: () => undefined },
    getSelectedRange: () => range(first, start),
    getActiveCell: () => range(first, start),
  };
  const created: string[] = [];
  Object.assign(globalThis, {
    createdWorkbooks: created,
    Office: {
      onReady: async () => ({ host: 'Excel', platform: 'PC' }),
      HostType: { Excel: 'Excel' },
      PlatformType: { Mac: 'Mac', iOS: 'iOS' },
      context: { platform: 'PC', requirements: { isSetSupported: (_: string, version: string) => sets.includes(version) } },
    },
    Excel: {
      run: (...args: unknown[]) =>
        (args.at(-1) as (context: object) => Promise<unknown>)({ workbook, sync: async () => undefined }),
      createWorkbook: async (base64: string) => void created.push(base64),
    },
    CustomFunctions: { associate: () => undefined, Error: class extends Error {}, ErrorCode: {} },
  });
}

/** Puts such an Excel into a page before it is opened; the scripts of Microsoft's CDN are empty then. */
export async function openInFakeExcel(page: Page, url: string, sheets: Sheets, sets: readonly string[] = ['1.8', '1.9']) {
  await page.route(/^https:/, route =>
    route.request().url().includes('/office.js') ? route.fulfill({ contentType: 'text/javascript', body: '' }) : route.abort(),
  );
  await page.addInitScript(pretendExcel, { sheets, sets });
  await page.goto(`${url}taskpane.html`);
}
