import { excelWorkbook } from '../../../src/host/excel/excelWorkbook';
import { RefusedWriting } from '../../../src/workbook/refusedWriting';
import type { Change, Expected } from '../../../src/workbook/workbook';
import { refusal, strictExcel, structure } from './strictExcel';

const jobs = [
  ['Line', 'Hose', 'Cut', 'Note'],
  [1, 'Alder DN 12', ['=HOSE.CUTLENGTH(1200,48.5,52)', 1099.5], '3/8'],
  [2, 'Birch DN 16', ['=HOSE.CUTLENGTH(900,48.5,52)', 799.5], '=text'],
] as const;
const open = () =>
  strictExcel({ Jobs: jobs, Rack: [['Reel', 6000]], Locked: [['x']] }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });

type Values = readonly (readonly (string | number)[])[];
const values = (sheet: string, address: string, cells: Values): Change => ({
  kind: 'values',
  at: { sheet, address },
  values: cells,
});
const formulas = (sheet: string, address: string, cells: readonly (readonly string[])[]): Change => ({
  kind: 'formulas',
  at: { sheet, address },
  formulas: cells,
});

/** Writes and gives the sentence of the refusal. */
async function refusedWith(changes: readonly Change[], expected?: Expected): Promise<string> {
  const error: unknown = await excelWorkbook()
    .write(changes, expected)
    .then(
      () => undefined,
      (reason: unknown) => reason,
    );
  expect(error).toBeInstanceOf(RefusedWriting);
  return (error as Error).message;
}

/** What each cell holds that is not blank: formulas without their results. */
const snapshot = ({ book }: ReturnType<typeof open>) =>
  book.sheets.flatMap(({ name, rows }) =>
    rows.flatMap((row, r) =>
      row.flatMap((cell, c) =>
        cell === '' ? [] : [`${name} ${r} ${c}: ${typeof cell === 'object' ? cell[0] : typeof cell + cell}`],
      ),
    ),
  );

afterEach(() => {
  refusal.of = [];
  structure.protected = false;
});

describe('refused half way, every cell holds again what it held:', () => {
  test.each<[string, readonly Change[], RegExp]>([
    ['numbers', [values('Jobs', 'A2:A3', [[7], [8]]), values('Rack', 'B1', [[1]])], /^values of Rack/],
    ['text like a formula or a date', [values('Jobs', 'D2:D3', [['x'], ['y']]), values('Rack', 'B1', [[1]])], /^values of Rack/],
    ['formulas', [formulas('Jobs', 'C2:C3', [['=1'], ['']]), values('Rack', 'B1', [[1]])], /^values of Rack/],
    ['cells that were blank', [values('Jobs', 'F9:G10', [[1, 2], [3, 4]]), values('Rack', 'B1', [[1]])], /^values of Rack/], // prettier-ignore
    [
      'number formats',
      [
        { kind: 'format', at: { sheet: 'Jobs', address: 'A1:A3' }, numberFormat: '@' },
        values('Jobs', 'A2', [['2']]),
        values('Rack', 'B1', [[1]]),
      ],
      /^values of Rack/,
    ],
    [
      'a name that stood, and a new sheet',
      [
        { kind: 'addSheet', sheet: 'Plan' },
        { kind: 'name', name: 'Catalogue', refersTo: { sheet: 'Plan', address: 'A1:B2' } },
        values('Jobs', 'A2', [[7]]),
        values('Rack', 'B1', [[1]]),
      ],
      /^values of Rack/,
    ],
  ])('%s', async (_, changes, refuse) => {
    const excel = open();
    const before = snapshot(excel);
    refusal.of = [refuse];
    expect(await refusedWith(changes)).toMatch(/^Excel refused it: .* Nothing was written\.$/);
    expect(snapshot(excel)).toEqual(before);
    expect([...excel.book.sheet('Jobs').formats.values()].filter(format => format !== 'General')).toEqual([]);
    if (changes.some(({ kind }) => kind === 'name')) expect(excel.written).toContain('name Catalogue =Jobs!$B$1');
  });

  test('and what cannot be put back is named, for looks what may have changed; no undo is promised', async () => {
    const excel = open();
    refusal.of = [/^values of Rack/, /^formulas of Jobs/];
    const style: Change = { kind: 'style', at: { sheet: 'Jobs', address: 'A1:D1' }, style: { bold: true } };
    const message = await refusedWith([style, values('Jobs', 'A2:A3', [[7], [8]]), values('Rack', 'B1', [[1]])]);
    expect(message).toMatch(
      / Not put back: Jobs!A2:A3\. Look there\. Colours, borders or widths may have changed in Jobs!A1:D1\.$/,
    );
    expect(message).not.toMatch(/Ctrl|Undo/);
    expect(excel.shown('Jobs', 'A2:A3')).toEqual([[7], [8]]);
  });
});

describe('a sheet that somebody', () => {
  test('renames while a plan is shown is named, and nothing is written', async () => {
    const excel = open();
    excel.book.sheet('Rack').name = 'Rack old';
    expect(await refusedWith([values('Jobs', 'A2', [[7]]), values('Rack', 'B1', [[1]])])).toBe(
      'Sheet "Rack" is no longer there: it was renamed or deleted. Look at the sheets, then try again. Nothing was written.',
    );
    expect(excel.written).toEqual([]);
  });

  test('renames while it is written to is still the one that is written to', async () => {
    const excel = open();
    excel.meanwhile(5, book => (book.sheet('Jobs').name = 'Jobs 41'));
    await excelWorkbook().write([values('Jobs', 'A2', [[7]])]);
    expect(excel.written).toEqual(['values of Jobs 41!A2 = [[7]]']);
  });

  test('deletes while it is written to is named; what was written elsewhere is put back', async () => {
    const excel = open();
    excel.meanwhile(5, book => book.remove('Rack'));
    const message = await refusedWith([values('Jobs', 'A2', [[7]]), values('Rack', 'B1', [[1]])]);
    expect(message).toMatch(/^A sheet or range that this needs is no longer there\. Not put back: sheet Rack\. Look there\.$/);
    expect(excel.shown('Jobs', 'A2')).toEqual([[1]]);
  });

  test('protects before the writing is named with the way out; nothing is written', async () => {
    const excel = open();
    excel.book.sheet('Rack').isProtected = true;
    expect(await refusedWith([values('Jobs', 'A2', [[7]]), values('Rack', 'B1', [[1]])])).toBe(
      'Sheet "Rack" is protected: lift the protection (Review, Unprotect Sheet), then try again. Nothing was written.',
    );
    expect(excel.written).toEqual([]);
  });

  test('protects in the midst of the writing: the other sheets hold what they held', async () => {
    const excel = open();
    excel.meanwhile(5, book => (book.sheet('Rack').isProtected = true));
    const message = await refusedWith([values('Jobs', 'A2', [[7]]), values('Rack', 'B1', [[1]])]);
    expect(message).toMatch(/^Excel refused it: the sheet or workbook is protected.* Nothing was written\.$/);
    expect(excel.shown('Jobs', 'A2')).toEqual([[1]]);
  });
});

describe('what a co-author typed between plan and writing', () => {
  const changes = [values('Jobs', 'A4:B4', [[3, 'Cedar DN 20']])];

  test.each<[string, Expected]>([
    ['into cells that should be blank', 'blank'],
    ['into cells of which the undo knows what they held', [values('Jobs', 'A4:B4', [['', '']])]],
  ])('%s stays: nothing is written, and the cell is named', async (_, expected) => {
    const excel = open();
    excel.edit('Jobs', 'B4', 'Maple DN 10');
    expect(await refusedWith(changes, expected)).toBe(
      'Jobs!B4 has changed since this was planned, perhaps by somebody who works in the same workbook. Look at it, then try again. Nothing was written.',
    );
    expect(excel.written).toEqual([]);
    expect(excel.shown('Jobs', 'B4')).toEqual([['Maple DN 10']]);
  });

  test('into a blank cell, a formula that shows nothing, stays too', async () => {
    const excel = open();
    excel.edit('Jobs', 'B4', ['=IF(A4="","",1)', '']);
    expect(await refusedWith(changes, 'blank')).toMatch(/^Jobs!B4 has changed since/);
    expect(excel.written).toEqual([]);
  });

  test('elsewhere is no hindrance, nor are a formula and a value that are as they were', async () => {
    const excel = open();
    excel.edit('Jobs', 'E9', 'elsewhere');
    const expected = [formulas('Jobs', 'C2', [['=HOSE.CUTLENGTH(1200,48.5,52)']]), values('Jobs', 'B3', [['Birch DN 16']])];
    await excelWorkbook().write([values('Jobs', 'B2:C3', [['a', 1], ['b', 2]])], expected); // prettier-ignore
    expect(excel.shown('Jobs', 'B2:C3')).toEqual([['a', 1], ['b', 2]]); // prettier-ignore
  });
});

// learn.microsoft.com, office/dev/add-ins/excel/performance: Excel on the web takes 5 MB in one request.
test('ten thousand small changes go in requests that Excel on the web takes', async () => {
  const excel = open();
  const changes = Array.from({ length: 10_000 }, (_, row) => values('Rack', `C${row + 1}`, [[row]]));
  await excelWorkbook().write(changes);
  expect(excel.heaviest).toBeLessThan(5_000_000);
  expect(excel.shown('Rack', 'C10000')).toEqual([[9999]]);
});

test('a request that is refused as too large in the midst leaves nothing, and says to select fewer rows', async () => {
  const excel = open();
  const before = snapshot(excel);
  const rows = Array.from({ length: 120 }, () => ['x'.repeat(30_000)]);
  refusal.of = [/^values of Rack!C81/];
  refusal.code = 'RequestPayloadSizeLimitExceeded';
  try {
    expect(await refusedWith([values('Rack', 'C1:C120', rows)])).toMatch(/Select fewer rows\. Nothing was written/);
  } finally {
    refusal.code = 'AccessDenied';
  }
  expect(snapshot(excel)).toEqual(before);
});

test('a writing is one step of Excel’s undo; a sheet that is taken away goes last, since that empties it', async () => {
  const excel = open();
  await excelWorkbook().write([values('Jobs', 'A2', [[7]]), formulas('Jobs', 'C2', [['=1']])]);
  expect(excel.book.undoSteps).toHaveLength(1);
  await excelWorkbook().write([{ kind: 'removeSheet', sheet: 'Rack' }, values('Jobs', 'A2', [[1]])]);
  expect(excel.written.slice(-2)).toEqual(['values of Jobs!A2 = [[1]]', 'delete Rack']);
  expect(excel.book.undoSteps).toHaveLength(0);
});

test('where cells are refused, no sheet has been taken away yet', async () => {
  const excel = open();
  refusal.of = [/^values of Jobs/];
  expect(await refusedWith([{ kind: 'removeSheet', sheet: 'Rack' }, values('Jobs', 'A2', [[1]])])).toMatch(/Nothing was written/);
  expect(excel.shown('Rack', 'B1')).toEqual([[6000]]);
});

test('on a slow host a second writing waits for the first, also where that is refused', async () => {
  const excel = open();
  excel.delay = 5;
  const workbook = excelWorkbook();
  refusal.of = [/^values of Rack!B1/];
  const first = workbook.write([values('Jobs', 'A2', [[7]]), values('Rack', 'B1', [[1]])]);
  const second = workbook.write([values('Jobs', 'A3', [[8]])]);
  await expect(first).rejects.toThrow('Nothing was written.');
  await second;
  expect(excel.shown('Jobs', 'A2:A3')).toEqual([[1], [8]]);
  expect(excel.written.at(-1)).toBe('values of Jobs!A3 = [[8]]');
});
