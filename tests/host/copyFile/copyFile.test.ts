import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { Workbook } from 'exceljs';
import { copyFile } from '../../../src/host/copyFile/copyFile';
import { canDownload } from '../../../src/host/copyFile/downloads';
import type { CopiedWorkbook } from '../../../src/workbook/copiedWorkbook';

const COPY: CopiedWorkbook = {
  title: 'Copy',
  sheets: [
    {
      name: "Jobs 'n' more",
      row: 1,
      column: 1,
      cells: [
        [
          { value: 'Length', format: 'General', looks: 'heading' },
          { value: '=1+1', format: 'General' },
        ],
        [
          { value: 12.5, formula: '=IF(B4="",10,2.5)*ROUND(5,0)', format: '0.0' },
          { value: { error: '#N/A' }, formula: '=NA()', format: 'General' },
        ],
        [
          { value: '', formula: '=""', format: 'General' },
          { value: 'kept', format: 'General', looks: 'kept' },
        ],
      ],
      hiddenRows: [3],
      hiddenColumns: [2],
      isHidden: false,
      merges: [{ row: 5, column: 0, rows: 1, columns: 2 }],
      widths: [8, 12, 9],
    },
  ],
};

const partOf = (bytes: Uint8Array, name: string) => Buffer.from(unzipSync(bytes)[name]!).toString('utf8');

async function opened(bytes: Uint8Array) {
  const workbook = new Workbook();
  await workbook.xlsx.load(bytes.slice().buffer as ArrayBuffer);
  return workbook.worksheets[0]!;
}

test('a copy as a file: places, formats, hidden rows and columns, merges; results stand beside the formulas, texts are no formulas', async () => {
  const sheet = await opened(await copyFile(COPY));
  expect(sheet.name).toBe("Jobs 'n' more");
  expect(sheet.getCell('B2').value).toBe('Length');
  expect(sheet.getCell('C2').value).toBe('=1+1');
  expect(sheet.getCell('B3').value).toEqual({ formula: 'IF(B4="",10,2.5)*ROUND(5,0)', result: 12.5 });
  expect(sheet.getCell('B3').numFmt).toBe('0.0');
  expect(sheet.getCell('C3').value).toEqual({ formula: 'NA()', result: { error: '#N/A' } });
  expect(sheet.getCell('B2').font?.bold).toBe(true);
  expect(sheet.getRow(4).hidden).toBe(true);
  expect([2, 3].map(number => sheet.getColumn(number).hidden)).toEqual([false, true]);
  expect(sheet.state).toBe('visible');
  expect(sheet.getCell('B6').master.address).toBe('A6');
  expect(sheet.getColumn(2).width).toBe(12);
});

/**
 * LibreOffice keeps the stored texts of formulas that it does not know only where the file says that Excel wrote it; with another name, or
 * none, such cells turn to #NAME? (tried with LibreOffice 7.4.7).
 */
test('the files name Microsoft Excel as their application', async () => {
  const samples = join(__dirname, '../../../samples');
  const files = readdirSync(samples).filter(name => name.endsWith('.xlsx'));
  expect(files.length).toBeGreaterThanOrEqual(4);
  for (const bytes of [await copyFile(COPY), ...files.map(name => new Uint8Array(readFileSync(join(samples, name))))]) {
    expect(/<Application>([^<]*)<\/Application>/.exec(partOf(bytes, 'docProps/app.xml'))?.[1]).toBe('Microsoft Excel');
  }
});

describe('downloads', () => {
  const host = globalThis as { Office?: unknown; document?: unknown };
  afterEach(() => {
    delete host.Office;
    delete host.document;
  });

  test.each([
    ['Excel for Mac', 'Mac', false],
    ['Excel on Windows', 'PC', true],
    ['Excel on the web', 'OfficeOnline', true],
  ])('%s', (_, platform, expected) => {
    host.document = {};
    host.Office = { context: { platform }, PlatformType: { Mac: 'Mac', iOS: 'iOS', PC: 'PC', OfficeOnline: 'OfficeOnline' } };
    expect(canDownload()).toBe(expected);
  });

  test('a page without Office', () => {
    host.document = {};
    expect(canDownload()).toBe(true);
  });
});
