import { excelWorkbook } from '../../../src/host/excel/excelWorkbook';
import type { Change } from '../../../src/workbook/workbook';
import { answerLimit, excelTables, refusal, strictExcel, structure } from './strictExcel';

const jobs = [
  ['Overall', ['=HOSE.CATALOGUE(1)', 'CAT']],
  [1200, ['=HOSE.CUTLENGTH(A2,1,2)', '#NAME?']],
  [985, ['=SUM(A1)', '#NAME?']],
] as const;

const select = (row: number, column: number, rows: number, columns: number, sheet = 'Jobs') =>
  strictExcel({ Jobs: jobs, Empty: [], Locked: [['x']] }, { sheet, row, column, rows, columns });

test('the selection comes with values, formulas and formats; errors are told apart from text', async () => {
  select(1, 0, 1, 2);
  const content = await excelWorkbook().selection();
  expect(content).toEqual({
    sheet: 'Jobs',
    address: 'A2:B2',
    row: 1,
    column: 0,
    values: [[1200, { error: '#NAME?' }]],
    formulas: [['', '=HOSE.CUTLENGTH(A2,1,2)']],
    formats: [['General', 'General']],
  });
});

test('text that begins with = is no formula', async () => {
  // Excel gives such text without its apostrophe, as formula and as value (OfficeDev/office-js issue 6687).
  strictExcel({ Jobs: [['=HOSE.CATALOGUE(A1)']] }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
  const content = await excelWorkbook().selection();
  expect([content.values, content.formulas]).toEqual([[['=HOSE.CATALOGUE(A1)']], [['']]]);
});

test('a whole column that is selected is clipped to the used rows, in one round', async () => {
  const excel = select(0, 0, 1_048_576, 1);
  const content = await excelWorkbook().selection();
  expect(content.values).toEqual([['Overall'], [1200], [985]]);
  // One sync of ours; the run's closing one sends nothing more.
  expect(excel.syncs).toBe(2);
});

test('a selection outside the used part is its first cell, blank', async () => {
  select(50, 7, 3, 3);
  expect(await excelWorkbook().selection()).toMatchObject({ address: 'H51', values: [['']] });
});

test('several ranges are read in one round; an empty sheet has no used part', async () => {
  const excel = select(0, 0, 1, 1);
  const contents = await excelWorkbook().read([
    { sheet: 'Jobs', address: 'A2:A3' },
    { sheet: 'Jobs', address: 'B1' },
  ]);
  expect(contents.map(({ values }) => values)).toEqual([[[1200], [985]], [['CAT']]]);
  expect(excel.syncs).toBe(2);
  expect(await excelWorkbook().used('Empty')).toBeUndefined();
  await expect(excelWorkbook().read([{ sheet: 'Jobs', address: 'nonsense' }])).rejects.toThrow('does not exist');
});

test('names of ranges of one sheet are listed, also of a copied sheet; those of constants, formulas and other files are not', async () => {
  select(0, 0, 1, 1);
  expect(await excelWorkbook().names()).toEqual([
    { name: 'Catalogue', at: { sheet: 'Jobs', address: 'B1' } },
    { name: 'Copied', at: { sheet: "Parts (2), o'clock", address: 'A1:C9' } },
    { name: 'Columns', at: { sheet: 'Jobs', address: 'A:B' } },
  ]);
});

test('a batch is written whole: new sheet, text that must stay text, formulas', async () => {
  const excel = select(0, 0, 1, 1);
  await excelWorkbook().write([
    { kind: 'addSheet', sheet: 'Cut list' },
    { kind: 'values', at: { sheet: 'Cut list', address: 'A1:B1' }, values: [['=1+1', 3]] },
    { kind: 'formulas', at: { sheet: 'Jobs', address: 'C2' }, formulas: [['=HOSE.CUTLENGTH(A2,1,2)']] },
  ]);
  expect(excel.written).toEqual([
    'add Cut list',
    `values of Cut list!A1:B1 = [["'=1+1",3]]`,
    'formulas of Jobs!C2 = [["=HOSE.CUTLENGTH(A2,1,2)"]]',
  ]);
});

test('a name that stands is moved, after the sheet it goes to was added; a new one is added', async () => {
  const excel = select(0, 0, 1, 1);
  await excelWorkbook().write([
    { kind: 'addSheet', sheet: 'Parts list' },
    { kind: 'name', name: 'Catalogue', refersTo: { sheet: 'Parts list', address: 'A1:B2' } },
    { kind: 'name', name: 'Rack', refersTo: { sheet: 'Parts list', address: 'D1' } },
  ]);
  expect(excel.written).toEqual(['add Parts list', "name Catalogue ='Parts list'!$A$1:$B$2", 'name Rack']);
});

test('what exceeds one request of Excel on the web goes in pieces of whole rows, several changes together too', async () => {
  const excel = select(0, 0, 1, 1);
  const row = ['x'.repeat(30_000)];
  const rows = (count: number) => Array.from({ length: count }, () => row);
  const value = (address: string, count: number) =>
    ({ kind: 'values', at: { sheet: 'Jobs', address }, values: rows(count) }) as const;
  await excelWorkbook().write([value('F1:F40', 40), value('G1:G40', 40)]);
  expect(excel.book.undoSteps.map(step => step.length)).toEqual([1, 1]);
  expect(excel.heaviest).toBeLessThan(5_000_000);
  excel.written.length = 0;
  await excelWorkbook().write([value('H1:H120', 120)]);
  expect(excel.written.map(text => text.slice(0, text.indexOf(' =')))).toEqual([
    'values of Jobs!H1:H40',
    'values of Jobs!H41:H80',
    'values of Jobs!H81:H120',
  ]);
});

test('a sheet is taken away; one that is not there is said', async () => {
  const excel = select(0, 0, 1, 1);
  await excelWorkbook().write([{ kind: 'removeSheet', sheet: 'Empty' }]);
  expect(excel.written).toEqual(['delete Empty']);
  await expect(excelWorkbook().write([{ kind: 'removeSheet', sheet: 'Gone' }])).rejects.toThrow('no longer there');
});

test.each([
  ['a sheet that is there already', { kind: 'addSheet', sheet: 'Jobs' }, /already a sheet "Jobs"/],
  ['a sheet that is not there', { kind: 'values', at: { sheet: 'Gone', address: 'A1' }, values: [[1]] }, /no longer there/],
  ['a protected sheet', { kind: 'values', at: { sheet: 'Locked', address: 'A1' }, values: [[1]] }, /is protected/],
  ['a wrong shape', { kind: 'values', at: { sheet: 'Jobs', address: 'A1:B2' }, values: [[1]] }, /does not have the shape/],
] as const)('%s is refused before anything is written', async (_, change, message) => {
  const excel = select(0, 0, 1, 1);
  await expect(
    excelWorkbook().write([{ kind: 'values', at: { sheet: 'Jobs', address: 'A9' }, values: [[1]] }, change]),
  ).rejects.toThrow(message);
  expect(excel.written).toEqual([]);
});

describe('a batch that Excel refuses in its midst', () => {
  const value = (sheet: string, address: string) => ({ kind: 'values', at: { sheet, address }, values: [[1]] }) as const;

  test('on new sheets leaves nothing: sheets and names that came with it are taken away', async () => {
    const excel = select(0, 0, 1, 1);
    refusal.of = [/^values of Plan!A2/];
    const changes: readonly Change[] = [
      { kind: 'addSheet', sheet: 'Plan' },
      { kind: 'name', name: 'Rack', refersTo: { sheet: 'Plan', address: 'A1' } },
      value('Plan', 'A1'),
      value('Plan', 'A2'),
    ];
    await expect(excelWorkbook().write(changes)).rejects.toThrow(/^Excel refused it: .* Nothing was written\.$/);
    expect(excel.written).toEqual(['add Plan', 'name Rack', 'values of Plan!A1 = [[1]]', 'delete name Rack', 'delete Plan']);
  });

  test('and a sheet that cannot be taken away is named', async () => {
    select(0, 0, 1, 1);
    refusal.of = [/^values of Plan/, /^delete Plan/];
    await expect(excelWorkbook().write([{ kind: 'addSheet', sheet: 'Plan' }, value('Plan', 'A1')])).rejects.toThrow(
      'The new sheets Plan are incomplete and could not be removed: delete them.',
    );
  });

  test('before anything was written says that too', async () => {
    select(0, 0, 1, 1);
    await expect(excelWorkbook().write([value('Locked', 'A1')])).rejects.toThrow(/is protected: .* Nothing was written\.$/);
  });
});

test('in a workbook with protected structure no sheet is added or removed; cells are written', async () => {
  const excel = select(0, 0, 1, 1);
  structure.protected = true;
  const value = { kind: 'values', at: { sheet: 'Jobs', address: 'A9' }, values: [[1]] } as const;
  try {
    for (const change of [{ kind: 'addSheet', sheet: 'New' } as const, { kind: 'removeSheet', sheet: 'Empty' } as const]) {
      await expect(excelWorkbook().write([value, change])).rejects.toThrow('workbook is protected');
    }
    expect(excel.written).toEqual([]);
    await excelWorkbook().write([value]);
    expect(excel.written).toEqual(['values of Jobs!A9 = [[1]]']);
  } finally {
    structure.protected = false;
  }
});

test.each([
  ['all', 'B2', ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight']],
  ['all', 'B2:C2', ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight', 'InsideVertical']],
  ['bottom', 'B2:C2', ['EdgeBottom']],
  ['bottom', 'B2:C3', ['EdgeBottom', 'InsideHorizontal']],
] as const)('border %s of %s has no lines between cells where there are none', async (border, address, edges) => {
  const excel = select(0, 0, 1, 1);
  await excelWorkbook().write([{ kind: 'style', at: { sheet: 'Jobs', address }, style: { border } }]);
  expect(excel.written).toEqual(edges.map(edge => `${edge} Continuous`));
});

test('a table of Excel is its headings and rows; a row of totals is told apart, a table without headings is none', async () => {
  select(0, 0, 1, 1);
  const table = { row: 1, column: 1, rows: 5, columns: 3, showHeaders: true, showTotals: false };
  excelTables.Jobs = [
    { ...table, name: 'Week' },
    { ...table, name: 'Summed', column: 5, showTotals: true },
    { ...table, name: 'Bare', column: 9, showHeaders: false },
  ];
  try {
    expect(await excelWorkbook().tables('Jobs')).toEqual([
      { name: 'Week', sheet: 'Jobs', address: 'B2:D6' },
      { name: 'Summed', sheet: 'Jobs', address: 'F2:H5', hasTotals: true },
    ]);
  } finally {
    delete excelTables.Jobs;
  }
});

test('a range to select is shown', async () => {
  const excel = select(0, 0, 1, 1);
  await excelWorkbook().select({ sheet: 'Jobs', address: 'A2' });
  expect(excel.written).toEqual(['activate Jobs', 'select Jobs!A2']);
});

test('a range of a hidden sheet is not selected, but said', async () => {
  const excel = strictExcel({ Jobs: jobs, Hidden: [['x']] }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
  await expect(excelWorkbook().select({ sheet: 'Hidden', address: 'A1' })).rejects.toThrow('"Hidden" is hidden');
  expect(excel.written).toEqual([]);
});

// OfficeDev/office-js issue 4783: Excel on the desktop answers null for more than five million cells.
const TOO_LARGE = ['ResponsePayloadSizeLimitExceeded', 'RangeExceedsLimit', 'null'];
describe.each(TOO_LARGE)('what is too large for one answer (%s)', code => {
  const many = Array.from({ length: 30_001 }, (_, row) => [row, `part ${row}`]);

  beforeEach(() => {
    Object.assign(answerLimit, { cells: 25_000, code });
    strictExcel({ Parts: many, Jobs: jobs }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
  });
  afterEach(() => (answerLimit.cells = Infinity));

  test('is read in pieces of whole rows, as if it had come at once', async () => {
    const used = await excelWorkbook().used('Parts');
    expect(used).toMatchObject({ sheet: 'Parts', address: 'A1:B30001', row: 0, column: 0 });
    expect(used!.values).toEqual(many);
    const [parts, cell] = await excelWorkbook().read([
      { sheet: 'Parts', address: 'A3:B90000' },
      { sheet: 'Jobs', address: 'B1' },
    ]);
    expect(parts!.values).toEqual(many.slice(2));
    expect([parts!.address, parts!.row, parts!.formats.length]).toEqual(['A3:B30001', 2, 29_999]);
    expect(cell).toMatchObject({ values: [['CAT']], formulas: [['=HOSE.CATALOGUE(1)']] });
  });

  test('does not stop formulas from being entered again', async () => {
    expect(await excelWorkbook().reenterUnknownNames()).toBe(1);
  });
});
