import ExcelJS from 'exceljs';
import { zipBomb } from '../../host/catalogueFile/zipBomb';
import type { RawCell, RawTable } from '../../../src/core/catalogue/rawTable';
import { excelWorkbook } from '../../../src/host/excel/excelWorkbook';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { writeParts } from '../../../src/sheets/parts/writeParts';
import { MOST_BYTES, bytesOf } from '../../../src/workbook/requestSize';
import { strictExcel } from '../../host/excel/strictExcel';
import { treeTables, withRows } from '../../core/catalogue/treeCatalogue';
import { LiveWorkbook } from './liveWorkbook';
import { loadThrough } from './loadThrough';
import { csvOf, standingWorkbook } from './standingWorkbook';

const SCRIPT = '<img src=x onerror=alert(1)><script>alert(1)</script>';
const EVIL = ['=HYPERLINK("http://example.invalid","x")', '+cmd|calc', '@SUM(A1)', '-2+3+cmd', '\t=1', SCRIPT];
const PROTOTYPE = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];

const evilHoses = withRows(
  'hoses',
  ...[...EVIL, ...PROTOTYPE].map(name => [name, 'Alder', null, null, 6.3, 200] as RawCell[]),
).hoses!;

test('formulas, scripts and prototype names are written as texts, and are found as parts', async () => {
  const workbook = standingWorkbook();
  const { plan, loaded } = await loadThrough(workbook, { 'hoses.csv': csvOf(evilHoses) });
  expect(loaded.problems).toEqual([]);
  const planned = await plan();
  await writeParts(workbook, planned);
  // Only the Catalogue cell gets a formula; every other text goes as a value, which the port keeps as text.
  const formulas = workbook.written.flat().filter(change => change.kind === 'formulas');
  expect(formulas.map(change => change.kind === 'formulas' && change.formulas[0]![0])).toEqual([
    expect.stringMatching(/^=HOSE\.CATALOGUE\([A-Za-z!:0-9,]+\)$/),
  ]);
  expect(workbook.written.flat()).toContainEqual({
    kind: 'format',
    at: { sheet: 'Hoses', address: 'A1:A15' },
    numberFormat: '@',
  });
  const { index } = (await workbookCatalogue(workbook))!.catalogue!;
  for (const name of [...EVIL, ...PROTOTYPE]) expect(index.hoses.get(name.trim().toLowerCase())?.row?.hose).toBe(name.trim());
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
});

test('Excel gets such a text with the mark that keeps it text', async () => {
  const excel = strictExcel({ Hoses: [['Hose']] }, { sheet: 'Hoses', row: 0, column: 0, rows: 1, columns: 1 });
  await excelWorkbook().write([{ kind: 'values', at: { sheet: 'Hoses', address: 'A1:F1' }, values: [EVIL] }]);
  expect(excel.written).toEqual([`values of Hoses!A1:F1 = ${JSON.stringify([EVIL.map(text => `'${text}`)])}`]);
});

test('headings and sheets with prototype names are passed over', async () => {
  const book = new ExcelJS.Workbook();
  const proto = book.addWorksheet('__proto__');
  proto.addRow(['constructor', '__proto__']);
  proto.addRow(['toString', 1]);
  for (const [name, table] of Object.entries({
    Hoses: treeTables.hoses,
    Fittings: treeTables.fittings,
    Crimps: treeTables.crimps,
  })) {
    const sheet = book.addWorksheet(name);
    (table as RawTable).forEach((row, index) => sheet.addRow([...row, index === 0 ? '__proto__' : 'x']));
  }
  const bytes = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
  const workbook = new LiveWorkbook({ Sheet1: [] });
  const { plan, loaded, tables } = await loadThrough(workbook, { 'parts.xlsx': bytes });
  expect(tables.map(({ guess }) => guess)).toEqual([undefined, 'hoses', 'fittings', 'crimps']);
  await writeParts(workbook, await plan());
  expect(workbook.shown('Hoses')![0]!.at(-1)).toBe('__proto__');
  expect((await workbookCatalogue(workbook))!.catalogue!.handle).toBe(loaded.catalogue!.handle);
});

test.each<[string, () => Uint8Array, RegExp]>([
  ['a zip bomb', () => zipBomb(160), /unpacks to more than 150 MB, so it was not opened/],
  ['a million rows', () => new TextEncoder().encode(`Hose,Family\n${'a,b\n'.repeat(1_000_000)}`), /more than 200000 rows/],
  ['too many cells', () => new TextEncoder().encode(`${','.repeat(150)}\n`.repeat(40_000) + 'x'), /more than 4000000 cells/],
  ['a damaged archive', () => Uint8Array.of(0x50, 0x4b, 3, 4, 1, 2, 3), /is not an \.xlsx file, or it is damaged/],
  ['an empty file', () => new Uint8Array(), /is empty/],
  ['text that is no table', () => new TextEncoder().encode('this was once a workbook'), /holds no table/],
  ['nothing but delimiters', () => new TextEncoder().encode(' \n;;\n'), /holds no table/],
  ['headings without rows', () => new TextEncoder().encode('Hose;Family;Bore (mm)\n'), /has headings but no rows below them/],
])(
  '%s is refused in a sentence, the other files are read, and nothing is written',
  async (_, make, sentence) => {
    const workbook = standingWorkbook();
    const before = workbook.snapshot();
    const { refusals, tables } = await loadThrough(workbook, { 'bad.bin': make(), 'hoses.csv': csvOf(treeTables.hoses) });
    expect(refusals).toEqual([expect.stringMatching(sentence)]);
    expect(refusals[0]).toMatch(/^bad\.bin/);
    expect(tables.map(({ label }) => label)).toEqual(['hoses.csv']);
    expect(workbook.written).toEqual([]);
    expect(workbook.snapshot()).toEqual(before);
  },
  60_000,
);

test('a damaged workbook that is text, and a workbook of empty sheets, are said; an empty sheet named as a table is one', async () => {
  const sheets = async (build: (book: ExcelJS.Workbook) => void) => {
    const book = new ExcelJS.Workbook();
    build(book);
    return new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
  };
  const { refusals, tables } = await loadThrough(new LiveWorkbook({ Sheet1: [] }), {
    'broken.xlsx': new TextEncoder().encode('this was once a workbook'),
    'empty.xlsx': await sheets(book => book.addWorksheet('Hoses')),
    'new.xlsx': await sheets(book => {
      book.addWorksheet('Notes').addRow(['nothing here']);
      book.addWorksheet('Machines').addRow(['Machine', 'Die', 'Dial']);
    }),
  });
  expect(refusals).toEqual([
    'broken.xlsx is not an .xlsx file, or it is damaged',
    expect.stringMatching(/^empty\.xlsx holds no table/),
  ]);
  expect(tables.map(({ label, guess }) => [label, guess])).toEqual([['new.xlsx, sheet Machines', 'machines']]);
});

test('six megabytes of content go in pieces that Excel on the web takes, the Catalogue cell last', async () => {
  const note = 'n'.repeat(300);
  const many = Array.from({ length: 9000 }, (_, i) => [
    `Alder DN 12 no. ${i}`,
    'Alder',
    null,
    null,
    12.7,
    275,
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    note,
  ]);
  const workbook = new LiveWorkbook({ Sheet1: [] });
  const { plan, loaded } = await loadThrough(workbook, {
    'hoses.csv': csvOf([...treeTables.hoses, ...(many as RawCell[][])]),
    'fittings.csv': csvOf(treeTables.fittings),
    'crimps.csv': csvOf(treeTables.crimps),
  });
  await writeParts(workbook, await plan());
  const sizes = workbook.written.map(changes =>
    changes.reduce((sum, change) => sum + (change.kind === 'values' ? bytesOf(change.values) : 0), 0),
  );
  expect(sizes.reduce((a, b) => a + b, 0)).toBeGreaterThan(6_000_000);
  expect(Math.max(...sizes)).toBeLessThanOrEqual(MOST_BYTES);
  expect(sizes.length).toBeGreaterThan(2);
  expect(
    workbook.written
      .slice(0, -1)
      .flat()
      .some(change => change.kind === 'formulas' || change.kind === 'name'),
  ).toBe(false);
  expect((await workbookCatalogue(workbook))!.shown).toBe(loaded.catalogue!.handle);
});
