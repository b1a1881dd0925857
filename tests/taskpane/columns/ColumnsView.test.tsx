/** @jest-environment ./tests/quickJsdom.mjs */
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { columnField } from '../columnField';
import { OTHER_WORDS, TWO_TABLES } from '../../sheets/columns/jobSheets';

async function open(rows: Parameters<typeof fakeWorkbook>[0][string], address: string) {
  const fake = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address });
  render(<TaskPane workbook={fake.workbook} functions={[]} wanted={{ place: 'week/columns' }} />);
  return fake;
}

test('a cut length column is added in one batch, and what was written is said', async () => {
  const { written } = await open(OTHER_WORDS, 'B5');
  fireEvent.click(await screen.findByRole('checkbox', { name: 'Cut length' }));
  fireEvent.click(screen.getByRole('button', { name: 'Add 1 column' }));
  expect(await screen.findByText(/Wrote Cut length \(mm\) in column I, rows 5 to 7/)).toBeTruthy();
  expect(written).toHaveLength(1);
  expect(written[0]!.at(-1)).toMatchObject({ at: { sheet: 'Jobs', address: 'I5:I7' } });
});

test('without parts data the looked-up columns are disabled, and one sentence says why for all of them', async () => {
  await open(OTHER_WORDS, 'B5');
  const die = await screen.findByRole('checkbox', { name: 'Die A' });
  expect(die).toHaveProperty('disabled', true);
  const [said, ...more] = screen.getAllByText(/holds =HOSE.CATALOGUE/);
  expect(more).toEqual([]);
  for (const name of ['Die A', 'Working pressure', 'Cost each']) {
    const box = screen.getByRole('checkbox', { name });
    expect(document.getElementById(box.getAttribute('aria-describedby')!)!.contains(said!)).toBe(true);
  }
  // What else keeps a column from being added is said at that column.
  expect(screen.getAllByText('Needs a column for: Readings, Target diameter, Tolerance.')).toHaveLength(2);
});

test('a column corrected by hand is used', async () => {
  const { written } = await open(OTHER_WORDS, 'B5');
  fireEvent.change(await waitFor(() => columnField('H: Deduction 2')), { target: { value: 'cutOffA' } });
  await waitFor(() => expect(columnField('H: Deduction 2')).toHaveProperty('value', 'cutOffA'));
  fireEvent.change(columnField('G: Deduction 1'), { target: { value: 'cutOffB' } });
  await waitFor(() => expect(columnField('G: Deduction 1')).toHaveProperty('value', 'cutOffB'));
  fireEvent.click(screen.getByRole('checkbox', { name: 'Cut length' }));
  fireEvent.click(screen.getByRole('button', { name: 'Add 1 column' }));
  await waitFor(() => expect(written).toHaveLength(1));
  expect(written[0]!.at(-1)).toMatchObject({ formulas: expect.arrayContaining([['=HOSE.CUTLENGTH(E5,H5,G5)']]) });
});

test('crimp columns come with their cautions', async () => {
  await open(TWO_TABLES, 'F2');
  fireEvent.click(await screen.findByRole('checkbox', { name: 'Verdict' }));
  expect(screen.getByText(/A rejected crimp stays rejected/)).toBeTruthy();
});

test('a sheet that is protected is said with the way out, and nothing is written', async () => {
  const { workbook, written } = fakeWorkbook(
    { Jobs: OTHER_WORDS },
    { sheet: 'Jobs', address: 'B5' },
    { protectedSheets: ['Jobs'] },
  );
  render(<TaskPane workbook={workbook} functions={[]} wanted={{ place: 'week/columns' }} />);
  fireEvent.click(await screen.findByRole('checkbox', { name: 'Cut length' }));
  fireEvent.click(screen.getByRole('button', { name: 'Add 1 column' }));
  expect(await screen.findByText(/^Sheet "Jobs" is protected: lift the protection .* Nothing was written\.$/)).toBeTruthy();
  expect(written).toEqual([]);
});

test('a cell that somebody fills while the column is written stays, and is named', async () => {
  const { workbook, written, edit } = fakeWorkbook({ Jobs: OTHER_WORDS }, { sheet: 'Jobs', address: 'B5' });
  const write = workbook.write.bind(workbook);
  // Between the last look at the table and the writing.
  jest.spyOn(workbook, 'write').mockImplementation((changes, expected) => {
    edit('Jobs', 'I6', 'urgent');
    return write(changes, expected);
  });
  render(<TaskPane workbook={workbook} functions={[]} wanted={{ place: 'week/columns' }} />);
  fireEvent.click(await screen.findByRole('checkbox', { name: 'Cut length' }));
  fireEvent.click(screen.getByRole('button', { name: 'Add 1 column' }));
  expect(await screen.findByText(/^Jobs!I6 has changed since this was planned.* Nothing was written\.$/)).toBeTruthy();
  expect(written).toEqual([]);
});

test('where there is no table the view says what to select', async () => {
  await open([['only a word']], 'A1');
  expect(await screen.findByText(/No table here/)).toBeTruthy();
});

test('what was written stays said when the table is read again with its new column', async () => {
  const sheets = { Jobs: OTHER_WORDS as Parameters<typeof fakeWorkbook>[0][string] };
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'B5' });
  jest.spyOn(workbook, 'write').mockImplementation(async () => {
    sheets.Jobs = OTHER_WORDS.map((row, r) => (r === 3 ? [...row, 'Cut length (mm)'] : row));
    await workbook.select({ sheet: 'Jobs', address: 'B5' });
  });
  render(<TaskPane workbook={workbook} functions={[]} wanted={{ place: 'week/columns' }} />);
  fireEvent.click(await screen.findByRole('checkbox', { name: 'Cut length' }));
  fireEvent.click(screen.getByRole('button', { name: 'Add 1 column' }));
  expect(await screen.findByText(/Table A4:I7/)).toBeTruthy();
  expect(screen.getByText(/Wrote Cut length \(mm\) in column I/)).toBeTruthy();
});

test('what was corrected by hand is remembered with the workbook', async () => {
  const { workbook, remembered } = await open(OTHER_WORDS, 'B5');
  fireEvent.change(await waitFor(() => columnField('H: Deduction 2')), { target: { value: 'none' } });
  await waitFor(() => expect(columnField('H: Deduction 2')).toHaveProperty('value', 'none'));
  expect([...remembered.keys()]).toEqual(['tables']);
  await workbook.select({ sheet: 'Jobs', address: 'B6' });
  expect(await screen.findByText('Needs a column for: Cut-off B.')).toBeTruthy();
});

test('rows that were appended are filled on request', async () => {
  const cut = (row: number) => ({ formula: `=HOSE.CUTLENGTH(B${row},C${row},D${row})`, value: 796 });
  const rows = [
    ['Hose', 'Overall length (mm)', 'Cut-off A (mm)', 'Cut-off B (mm)', 'Cut length (mm)'],
    ['Larch DN 12', 840, 22, 22, cut(2)],
    ['Larch DN 12', 900, 22, 22, ''],
  ];
  const { written } = await open(rows, 'A2');
  expect(await screen.findByText('1 row has no formulas')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Fill them' }));
  expect(await screen.findByText('Filled Cut length (mm) in rows 3 of sheet Jobs.')).toBeTruthy();
  expect(written[0]!.at(-1)).toMatchObject({ at: { address: 'E3' }, formulas: [['=HOSE.CUTLENGTH(B3,C3,D3)']] });
  await waitFor(() => expect(screen.queryByText('1 row has no formulas')).toBeNull());
});

test('one press adds all columns of a group, and the rows that need a look are counted, each with a way to it', async () => {
  const sheets = { Jobs: TWO_TABLES as Parameters<typeof fakeWorkbook>[0][string] };
  const { workbook, written } = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'F2' });
  const write = workbook.write.bind(workbook);
  jest.spyOn(workbook, 'write').mockImplementation(async changes => {
    await write(changes);
    const verdicts = [
      ['LOOSE', 0.2, 420],
      ['IN SPEC', 0.01, 412],
    ];
    await write([{ kind: 'values', at: { sheet: 'Jobs', address: 'M2:O3' }, values: verdicts }]);
  });
  render(<TaskPane workbook={workbook} functions={[]} wanted={{ place: 'week/columns' }} />);
  fireEvent.click(await screen.findByRole('button', { name: 'For QA (3)' }));
  expect(await screen.findByText('1 of 2 rows needs a look')).toBeTruthy();
  const address = written[0]!.flatMap(change => (change.kind === 'formulas' ? [change.at.address] : []));
  // Verdict and deviation come from one call, the next dial from another.
  expect(address).toEqual(['M2:M3', 'O2:O3']);
  expect(screen.getByText(/A rejected crimp stays rejected/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Row 2' }));
  await waitFor(async () => expect((await workbook.selection()).address).toBe('M2'));
});

test('where the selection is in no table, the tables of the workbook are offered', async () => {
  const { workbook } = fakeWorkbook({ Plain: [['only a word']], Jobs: OTHER_WORDS }, { sheet: 'Plain', address: 'A1' });
  render(<TaskPane workbook={workbook} functions={[]} wanted={{ place: 'week/columns' }} />);
  fireEvent.click(await screen.findByRole('button', { name: /^Jobs A4:H/ }));
  expect(await screen.findByText(/Table A4:H7 of sheet Jobs/)).toBeTruthy();
});

const typedLines = (count: number) => [
  ['Hose', 'Overall length (mm)', 'Cut-off A (mm)', 'Cut-off B (mm)'],
  ...Array.from({ length: count }, (_, i) => ['Larch DN 12', 800 + i, 22, 22]),
];

test('above 500 rows one formula serves all rows, with the reason; the choice is left to the person', async () => {
  const { written } = await open(typedLines(501), 'A2');
  expect(await screen.findByText(/One formula will serve all rows \(proposed above 500\)/)).toBeTruthy();
  expect(screen.getByText(/Excel waits for every call, and thousands can end in #BUSY!/)).toBeTruthy();
  fireEvent.click(screen.getByRole('checkbox', { name: 'Cut length' }));
  fireEvent.click(screen.getByRole('button', { name: 'Add 1 column' }));
  await waitFor(() => expect(written[0]!.at(-1)).toMatchObject({ formulas: [['=HOSE.CUTLENGTH(B2:B502,C2:C502,D2:D502)']] }));
  fireEvent.click(screen.getByRole('radio', { name: 'A formula in every cell' }));
  expect(screen.queryByText(/One formula will serve all rows/)).toBeNull();
});

test('up to 500 rows a formula a row is written', async () => {
  const { written } = await open(typedLines(500), 'A2');
  fireEvent.click(await screen.findByRole('checkbox', { name: 'Cut length' }));
  expect(screen.getByRole('radio', { name: 'One formula a row and function' })).toHaveProperty('checked', true);
  fireEvent.click(screen.getByRole('button', { name: 'Add 1 column' }));
  await waitFor(() => expect(written[0]!.at(-1)).toMatchObject({ at: { address: 'E2:E501' } }));
});
