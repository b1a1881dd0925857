import ExcelJS from 'exceljs';
import { zipSync } from 'fflate';
import { hosesTable } from '../../../src/core/catalogue/tables/hosesTable';
import { mapHeadings, unknownHeadings } from '../../../src/host/catalogueFile/mapHeadings';
import { readCsv } from '../../../src/host/catalogueFile/readCsv';
import { readWorkbookFile } from '../../../src/host/catalogueFile/readWorkbookFile';

const bytes = (text: string) => new TextEncoder().encode(text);

describe('.csv', () => {
  const expected = [
    ['Hose', 'Price'],
    ['Alder °', 12.5],
  ];
  test.each([
    ['comma', bytes('Hose,Price\nAlder °,12.5\n')],
    ['semicolon, decimal comma, byte order mark, CRLF', bytes('\ufeffHose;Price\r\nAlder °;12,5\r\n')],
    ['tab', bytes('Hose\tPrice\nAlder °\t12.5')],
    ['Windows-1252 (° is one byte, B0)', Uint8Array.from('Hose;Price\nAlder \u00b0;12,5', sign => sign.charCodeAt(0))],
    ['UTF-16 little endian', new Uint8Array(Buffer.from('\ufeffHose;Price\nAlder °;12,5', 'utf16le'))],
  ])('%s', (_, file) => expect(readCsv('hoses.csv', file)).toEqual(expected));

  test('quoted cells keep delimiters and line ends; formulas, leading zeros and prototype names stay text', () => {
    expect(readCsv('x.csv', bytes('A,B,__proto__\n"a,\n""b""",007,=1+1\nconstructor,-3,1e3\n\n,,\n'))).toEqual([
      ['A', 'B', '__proto__'],
      ['a,\n"b"', '007', '=1+1'],
      ['constructor', -3, 1000],
    ]);
  });

  test('a million rows, an empty file and a file of another kind are refused in a sentence', () => {
    expect(() => readCsv('big.csv', bytes('a,b\n'.repeat(1_000_000)))).toThrow(/^big.csv has more than 200000 rows: split it/);
    expect(() => readCsv('none.csv', bytes(' \n'))).toThrow('none.csv is empty');
    expect(() => readCsv('wide.csv', bytes(','.repeat(500) + 'x'))).toThrow(/501 columns, more than 200/);
    expect(() => readCsv('huge.csv', new Uint8Array(51 * 2 ** 20))).toThrow(/51 MB, more than 50/);
  });
});

describe('.xlsx', () => {
  test('gives each sheet with plain values', async () => {
    const workbook = new ExcelJS.Workbook();
    const sheet = workbook.addWorksheet('Hoses');
    sheet.addRow(['Hose', 'Bore (mm)', 'Date', 'Sum']);
    sheet.addRow(['__proto__', 12.7, new Date(Date.UTC(2024, 2, 5)), { formula: 'B2*2', result: 25.4 }]);
    sheet.addRow([{ richText: [{ text: 'Al' }, { text: 'der' }] }, { error: '#REF!' }]);
    const tables = await readWorkbookFile('parts.xlsx', new Uint8Array((await workbook.xlsx.writeBuffer()) as ArrayBuffer));
    expect(tables.get('Hoses')).toEqual([
      ['Hose', 'Bore (mm)', 'Date', 'Sum'],
      ['__proto__', 12.7, 45_356, 25.4],
      ['Alder', { error: '#REF!' }, null, null],
    ]);
  });

  test('an archive that unpacks to far more than it weighs, and what is no archive, are refused', async () => {
    const bomb = zipSync({ 'xl/worksheets/sheet1.xml': new Uint8Array(160 * 2 ** 20) }, { level: 9 });
    expect(bomb.length).toBeLessThan(2 ** 20);
    await expect(readWorkbookFile('bomb.xlsx', bomb)).rejects.toThrow('bomb.xlsx unpacks to more than 150 MB: it is not opened');
    await expect(readWorkbookFile('x.xlsx', bytes('no archive'))).rejects.toThrow('x.xlsx is no .xlsx file, or it is damaged');
    await expect(readWorkbookFile('y.xlsx', zipSync({ 'a.txt': bytes('a') }))).rejects.toThrow('y.xlsx holds no sheet');
  });
});

test('unknown headings are listed, and mapped by hand with the unit they had', () => {
  const table = [
    ['Schlauch', 'Family', 'Innen (mm)', 'Shelf'],
    ['Alder', 'Alder', 12.7, 3],
  ];
  expect(unknownHeadings(hosesTable, table)).toEqual(['Schlauch', 'Innen (mm)', 'Shelf']);
  const map = new Map([
    ['Schlauch', 'Hose'],
    ['Innen (mm)', 'Bore'],
  ]);
  expect(mapHeadings(table, map)[0]).toEqual(['Hose', 'Family', 'Bore (mm)', 'Shelf']);
});
