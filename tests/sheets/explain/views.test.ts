import '../../host/customFunctions';
import '../../../src/functions/register';
import { registeredFunctions } from '../../../src/workbook/registeredFunctions';
import type { CellValue } from '../../../src/workbook/workbook';
import { cellView } from '../../../src/sheets/explain/cellView';
import { cellSummary } from '../../../src/sheets/explain/cellSummary';
import { rowView } from '../../../src/sheets/explain/rowView';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const functions = [
  {
    id: 'CUTLENGTH',
    name: 'CUTLENGTH',
    description: 'Length to cut.',
    parameters: ['overall', 'cutOffA', 'cutOffB'].map(name => ({ name, description: `help of ${name}` })),
  },
  {
    id: 'CRIMPDETAIL',
    name: 'CRIMPDETAIL',
    description: 'Detail.',
    parameters: ['readings', 'target', 'tolerance'].map(name => ({ name })),
  },
];

const failed: CellValue = { error: '#VALUE!' };

async function viewOf(rows: Parameters<typeof fakeWorkbook>[0][string], address: string) {
  const { workbook } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address });
  const cell = await workbook.selection();
  return { cell: await cellView(workbook, functions, cell), row: await rowView(workbook, cell) };
}

const jobs = [
  ['Overall', 'Cut-off A', 'Cut-off B', 'Cut'],
  [1200, 48.5, 52, { formula: '=HOSE.CUTLENGTH(A2,B2,C2)', value: 1099.5 }],
  [1200, 'x', 52, { formula: '=HOSE.CUTLENGTH(A3,B3,C3)', value: failed }],
  [1200, 'x', 52, { formula: '=HOSE.CUTLENGTH(A4,B4*1,C4)', value: failed }],
  [1200, { error: '#REF!' }, 52, { formula: '=HOSE.CUTLENGTH(A5,B5,C5)', value: { error: '#N/A' } }],
];

test('a cell of ours is explained: each argument with its help, as written and as it stands now', async () => {
  const { cell } = await viewOf(jobs, 'D2');
  expect(cell.call).toMatchObject({ id: 'CUTLENGTH', description: 'Length to cut.' });
  expect(cell.call!.arguments[1]).toEqual({
    name: 'cutOffA',
    help: 'help of cutOffA',
    optional: false,
    written: 'B2',
    now: '48.5',
  });
  expect(cell.error).toBeUndefined();
});

test('the sentence of an error that the host hides is found by asking the function again', async () => {
  expect((await viewOf(jobs, 'D3')).cell).toMatchObject({
    error: '#VALUE!',
    sentence: 'cut-off A is "x": enter a length, like 12.5, 3/8 or 1 1/2',
  });
  expect((await viewOf(jobs, 'D5')).cell.sentence).toBe('cut-off A holds #REF!: correct that cell first');
});

test('an argument that is a formula of its own is named as the obstacle', async () => {
  expect((await viewOf(jobs, 'D4')).cell.sentence).toMatch(/An argument is a formula of its own/);
});

/**
 * A build that hands blank cells over as 0 (OfficeDev/office-js issues 1951, 4702 and 5262): what a cell shows there, by the real function.
 */
function byBlanksAsZero(cells: readonly (number | '')[]): CellValue {
  const handed = cells.map(cell => [[cell === '' ? 0 : cell]]);
  return (registeredFunctions()!.CUTLENGTH!(...handed) as number[][])[0]![0]!;
}

test.each<[string, readonly (number | '')[], boolean]>([
  ['a blank coupling', [1200, 48.5, ''], true],
  ['no blank', [1200, 48.5, 52], false],
  ['a coupling that is 0', [1200, 48.5, 0], false],
])('a value of an Excel that hands blanks over as 0 is told with what to do: %s', async (_, cells, isTold) => {
  const row = [...cells, { formula: '=HOSE.CUTLENGTH(A2,B2,C2)', value: byBlanksAsZero(cells) }];
  const { cell } = await viewOf([['Overall', 'A', 'B', 'Cut'], row], 'D2');
  expect(cell.warning ?? '').toMatch(isTold ? /hands blank cells to the function as 0.*Update Excel/ : /^$/);
  expect(cellSummary(cell, []).isWrong).toBe(isTold);
});

test('what an Excel shows that hands blanks over as blanks is right', async () => {
  const blank = (registeredFunctions()!.CUTLENGTH!([[1200]], [[48.5]], [[null]]) as CellValue[][])[0]![0]!;
  const value = blank instanceof Error ? failed : blank;
  const row = [1200, 48.5, '', { formula: '=HOSE.CUTLENGTH(A2,B2,C2)', value }];
  expect((await viewOf([['Overall', 'A', 'B', 'Cut'], row], 'D2')).cell.warning).toBeUndefined();
});

const bench = [
  ['R1', 'R2', 'Target', 'Tolerance', 'Mean', 'Deviation', 'Spread', 'Verdict'],
  [27.7, 27.7, 27.5, 0.1, { formula: '=HOSE.CRIMPDETAIL(A2:B3,C2:C3,D2:D3)', value: 27.7, spill: 'E2:H3' }, 0.2, 0, 'LOOSE'],
  [27.5, 'oops', 27.5, 0.1, failed, failed, failed, failed],
];

test('a cell that a formula spills into shows the error of its own row', async () => {
  const { cell } = await viewOf(bench, 'G3');
  expect(cell).toMatchObject({
    call: { id: 'CRIMPDETAIL' },
    error: '#VALUE!',
    sentence: 'reading 2 is "oops": enter the caliper reading, like 12.5, 3/8 or 1 1/2',
  });
  expect(cell.call!.arguments[0]!.now).toBe('27.5, oops (row 2 of 2)');
});

const chosen = [
  ['R1', 'R2', 'Target', 'Tolerance', 'Verdict', 'Deviation'],
  [
    27.7,
    27.7,
    27.5,
    0.1,
    { formula: '=CHOOSECOLS(HOSE.CRIMPDETAIL(A2:B3,C2:C3,D2:D3),4,2)', value: 'LOOSE', spill: 'E2:F3' },
    0.2,
  ],
  [27.5, 'oops', 27.5, 0.1, failed, failed],
  [27.5, 27.5, 27.5, 0.1, { formula: '=CHOOSECOLS(HOSE.CRIMPDETAIL(A4:B4,C4,D4),4,2)', value: { error: '#SPILL!' } }, 'seen'],
];

test('columns chosen from a result are explained like the result, each under its own heading', async () => {
  expect((await viewOf(chosen, 'F3')).cell).toMatchObject({
    call: { id: 'CRIMPDETAIL' },
    sentence: 'reading 2 is "oops": enter the caliper reading, like 12.5, 3/8 or 1 1/2',
  });
  expect((await viewOf(chosen, 'B2')).row).toEqual([
    { title: 'Verdict', text: 'LOOSE', verdict: 'LOOSE', isError: false },
    { title: 'Deviation', text: '0.2', isError: false },
  ]);
});

test('a formula that Excel refuses to spill is explained by what is in its way', async () => {
  expect((await viewOf(chosen, 'E4')).cell.sentence).toMatch(/are not empty: clear or move what stands beside/);
});

test('the selected row shows its results under their headings, and what they spill', async () => {
  expect((await viewOf(bench, 'A2')).row).toEqual([
    { title: 'Mean', text: '27.7', isError: false },
    { title: 'Deviation', text: '0.2', isError: false },
    { title: 'Spread', text: '0', isError: false },
    { title: 'Verdict', text: 'LOOSE', verdict: 'LOOSE', isError: false },
  ]);
});

test('words that the rows above spill are no headings', async () => {
  const assembly = (row: number, wrong: string) => [
    'Larch DN 12',
    { formula: `=HOSE.ASSEMBLY(Catalogue,A${row},"a","b",900)`, value: 800, spill: `B${row}:C${row}` },
    wrong,
  ];
  const jobs = [['Hose', 'Cut length', 'Can be made'], assembly(2, 'OK'), assembly(3, 'families differ')];
  expect((await viewOf(jobs, 'A3')).row).toEqual([
    { title: 'Cut length', text: '800', isError: false },
    { title: 'Can be made', text: 'families differ', isError: false },
  ]);
});

test('what somebody typed beside a result is none', async () => {
  const row = [1200, 48.5, 52, { formula: '=HOSE.CUTLENGTH(A2,B2,C2)', value: 1099.5 }, 'urgent', '', 7];
  expect((await viewOf([['Overall', 'Cut-off A', 'Cut-off B', 'Cut', 'Note', '', 'Box'], row], 'A2')).row).toEqual([
    { title: 'Cut', text: '1099.5', isError: false },
  ]);
});

test('a verdict word that somebody typed is no result of ours; a heading row shows nothing', async () => {
  expect((await viewOf([['Verdict'], ['LOOSE']], 'A2')).row).toEqual([]);
  expect((await viewOf(bench, 'A1')).row).toEqual([]);
});
