import ExcelJS from 'exceljs';
import type { RawTable } from '../../../src/core/catalogue/rawTable';
import { fittingsTable } from '../../../src/core/catalogue/tables/fittingsTable';
import { machinesTable } from '../../../src/core/catalogue/tables/machinesTable';
import { guessTable, headingRow } from '../../../src/sheets/catalogue/guessTable';
import { requestPieces } from '../../../src/sheets/parts/requestPieces';
import { roomBelow } from '../../../src/sheets/parts/roomBelow';
import { readPartsFile } from '../../../src/host/catalogueFile/readPartsFile';
import { tablesFromFiles } from '../../../src/sheets/parts/tablesFromFiles';
import { tableGrid } from '../../../src/sheets/parts/tableGrid';
import { treeTables } from '../../core/catalogue/treeCatalogue';

test.each([
  ['Hoses', [], false, 'hoses'],
  [' fittings ', [], false, 'fittings'],
  ['hose list 2026.csv', ['A', 'B'], true, 'hoses'],
  ['my_crimps.csv', [], true, 'crimps'],
  ['crimps.csv', ['Hose', 'Coupling', 'Die', 'Dial'], true, 'crimps'],
  ['couplings.csv', ['Teil', 'Art'], true, 'fittings'],
  ['Jobs', ['Hose', 'Fitting A', 'Overall'], false, undefined],
  ['hose orders', ['Hose', 'Quantity'], false, undefined],
  ['export.csv', treeTables.crimps[0]!, true, 'crimps'],
  ['Sheet1', treeTables.machines[0]!, false, 'machines'],
  ['constructor', ['__proto__'], true, undefined],
] as const)('%j with headings %j (a file: %j) is taken for %j', (name, headings, isFile, expected) =>
  expect(guessTable(name, [...headings], isFile)).toBe(expected),
);

test('the heading row is found below a title block; without known headings it is the first row as full as one', () => {
  expect(headingRow([['Hoses of the workshop'], [null], ['Bore', 'of all'], ...treeTables.hoses])).toBe(3);
  expect(headingRow([[null], ['Schlauch', 'Innen'], ['x', 1]])).toBe(1);
  expect(headingRow([['Preisliste 2026'], ['Schlauch', 'Innen', 'Druck', 'Preis'], ['x', 1, 2, 3]])).toBe(1);
  expect(headingRow([])).toBe(0);
});

describe('a table over another', () => {
  const grid = (table: RawTable, before: string[]) => tableGrid(fittingsTable, table, before);

  test('columns stay where their headings stand, new ones take the places of those that come no more', () => {
    const { cells, moved, dropped } = grid(
      [
        ['Price', 'Fitting', 'Bore (in)', 'Thread', 'Mass (kg)'],
        [4, 'x', 0.5, 'M22', 0.1],
      ],
      ['Fitting', 'Shelf', 'Bore (mm)', 'Price'],
    );
    expect(cells[0]).toEqual(['Fitting', 'Thread', 'Bore (in)', 'Price', 'Mass (kg)']);
    expect(cells[1]).toEqual(['x', 'M22', 0.5, 4, 0.1]);
    expect([moved, dropped]).toEqual([[1, 4], ['Shelf']]);
  });

  test('blank rows and columns fall away; errors and truth values keep what they show', () => {
    const { cells } = grid(
      [
        ['Fitting', null, 'Note'],
        [null, null, ''],
        ['x', null, { error: '#REF!' }],
        [true, null, 'y'],
      ],
      [],
    );
    expect(cells).toEqual([
      ['Fitting', 'Note'],
      ['x', '#REF!'],
      [true, 'y'],
    ]);
  });

  test('columns of dates, of texts that look like formulas and of names that look like numbers are told', () => {
    const table: RawTable = [
      ['Machine', 'Note', 'Date', 'Dial'],
      ['Bench 1', '=1', 46_265, 300],
      ['-12', 'x', 46_266, 45_000],
    ];
    const { dates, guarded } = tableGrid(machinesTable, table, []);
    expect([dates, guarded]).toEqual([[2], [0, 1]]);
  });

  test('a column of somebody’s own keeps a text that looks like a number; one of numbers is left as it is', () => {
    const table: RawTable = [
      ['Machine', 'Drawing', 'Shelf', 'Lowest'],
      ['Bench 1', '1E5', 4711, '1.250'],
    ];
    expect(tableGrid(machinesTable, table, []).guarded).toEqual([1]);
  });
});

test.each([
  ['a new table', 41, [], undefined, 91],
  ['a long one', 50_001, [], undefined, 55_002],
  ['one whose range was longer already', 41, [], 500, 500],
  ['one with something below', 41, [{ row: 60, column: 0 }], undefined, 60],
  ['one with something right below', 41, [{ row: 41, column: 0 }], undefined, 41],
])('room below %s', (_, rows, below, before, expected) => {
  const block = { row: 0, column: 0, rows, columns: 3 };
  expect(roomBelow(block, below, before === undefined ? undefined : { ...block, rows: before })).toBe(expected);
});

test('pieces keep the order, part large blocks between rows, and never a row', () => {
  const at = (address: string) => ({ sheet: 'Hoses', address });
  const values = Array.from({ length: 10 }, (_, row) => [row, 'x'.repeat(40)]);
  const pieces = requestPieces(
    [
      { kind: 'addSheet', sheet: 'Hoses' },
      { kind: 'values', at: at('A1:B10'), values },
      { kind: 'formulas', at: at('D1'), formulas: [['=1']] },
    ],
    400,
  );
  const changes = pieces.flatMap(piece => piece.changes);
  expect(changes.map(({ kind }) => kind)).toEqual(['addSheet', 'values', 'values', 'values', 'values', 'formulas']);
  expect(changes.flatMap(change => (change.kind === 'values' ? change.values : []))).toEqual(values);
  expect(changes.flatMap(change => (change.kind === 'values' ? [change.at.address] : []))).toEqual([
    'A1:B3',
    'A4:B6',
    'A7:B9',
    'A10:B10',
  ]);
});

describe('sheets of an .xlsx', () => {
  async function guesses(sheets: Readonly<Record<string, RawTable>>) {
    const book = new ExcelJS.Workbook();
    for (const [name, rows] of Object.entries(sheets)) book.addWorksheet(name).addRows(rows as never);
    const bytes = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
    const { tables } = await tablesFromFiles(readPartsFile, [{ name: 'parts.xlsx', bytes: async () => bytes }], 1, {});
    return tables.map(({ label, guess }) => [label, guess]);
  }

  test('named as the tables are taken by name only', async () => {
    expect(await guesses({ Hoses: treeTables.hoses, Settings: treeTables.crimps })).toEqual([
      ['parts.xlsx, sheet Hoses', 'hoses'],
      ['parts.xlsx, sheet Settings', undefined],
    ]);
  });

  test('with other names are taken by their headings', async () => {
    expect(await guesses({ Rubber: treeTables.hoses, Settings: treeTables.crimps })).toEqual([
      ['parts.xlsx, sheet Rubber', 'hoses'],
      ['parts.xlsx, sheet Settings', 'crimps'],
    ]);
  });
});
