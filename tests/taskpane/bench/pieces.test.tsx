/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { rememberJobSheet } from '../../../src/sheets/pieces/jobsOfPieces';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import { EntryView } from '../../../src/taskpane/bench/EntryView';
import { addressOf } from '../../../src/workbook/a1';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { METRIC, writeAll } from '../../sheets/pieces/pieceSheets';
import { viewProps } from '../viewProps';

beforeEach(() => localStorage.clear());

/** Entry over a workbook whose pieces are planned; line 1 has the pieces H3-117-1 … 4. */
async function open() {
  const fake = fakeWorkbook({ Jobs: METRIC }, { sheet: 'Jobs', address: 'A2' });
  await writeAll(fake.workbook, 'mm');
  await rememberJobSheet(fake.workbook, 'Jobs');
  render(
    <FluentProvider theme={webLightTheme}>
      <EntryView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  const user = userEvent.setup();
  const scan = async (text: string) => {
    await user.click(await screen.findByLabelText('Piece or tag'));
    await user.keyboard(`${text}{Enter}`);
  };
  return { ...fake, user, scan };
}

const pieceOf = async ({ workbook }: Pick<ReturnType<typeof fakeWorkbook>, 'workbook'>, number: string) =>
  (await readPieces(workbook))!.pieces.find(({ piece }) => piece === number);
const statusOfLine = async ({ workbook }: Pick<ReturnType<typeof fakeWorkbook>, 'workbook'>, row: number) =>
  (await workbook.read([{ sheet: 'Jobs', address: `U${row}` }]))[0]!.values[0]![0];
const fill = (label: string | RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const save = () => fireEvent.click(screen.getByRole('button', { name: 'Save piece' }));

test('a scanned tag leads to its piece: readings go into its row, its status and that of its line follow', async () => {
  const fake = await open();
  await fake.scan('h3-117-2');
  expect(await screen.findByText('Piece H3-117-2: planned')).toBeTruthy();
  expect((await fake.workbook.selection()).sheet).toBe('Pieces');
  await waitFor(() => expect(screen.getByRole('heading', { level: 2 }).textContent).toMatch(/H3-117-2.*end A/));
  fireEvent.focus(screen.getByLabelText('Reading 1'));
  await fake.user.click(screen.getByLabelText('Reading 1'));
  await fake.user.keyboard('27.35{Enter}27.36{Enter}27.34{Enter}27.35{Enter}');
  await waitFor(() => expect(screen.getByRole('heading', { level: 2 }).textContent).toMatch(/H3-117-2.*end B/));
  expect(await screen.findByText('Piece H3-117-2: cut')).toBeTruthy();
  await fake.user.keyboard('27.33{Enter}27.33{Enter}27.34{Enter}27.33{Enter}');
  expect(await screen.findByText('Piece H3-117-2: crimped')).toBeTruthy();
  expect(await pieceOf(fake, 'H3-117-2')).toMatchObject({ status: 'crimped' });
  // The line is as far as the piece of it that is least far.
  expect(await statusOfLine(fake, 2)).toBe('planned');
});

test('finished length and test are filled in; what is replaced leaves its old value with the time in the note', async () => {
  const fake = await open();
  await fake.scan('41/3-1');
  expect(await screen.findByText('Piece 41/3-1: planned')).toBeTruthy();
  fill('Finished length (mm)', '2181');
  fill('Coupling lot A', 'C-5');
  save();
  await waitFor(async () => expect((await pieceOf(fake, '41/3-1'))!.finished?.value.toString()).toBe('2181'));
  fill('Finished length (mm)', '2182');
  save();
  await waitFor(async () =>
    expect((await pieceOf(fake, '41/3-1'))!.note).toMatch(/^Finished length \(mm\) 2181 until \d{4}-\d\d-\d\d \d\d:\d\d$/),
  );
  expect(await pieceOf(fake, '41/3-1')).toMatchObject({ status: 'cut' });
  expect((await pieceOf(fake, '41/3-1'))!.ends[0].lot).toBe('C-5');
  fill('Finished length (mm)', 'long');
  expect(screen.getByText(/Finished length is "long"/)).toBeTruthy();
});

test('a scrapped piece gets a successor that waits, and leaves why, when and what it was', async () => {
  const fake = await open();
  await fake.scan('H3-117-4');
  await screen.findByText('Piece H3-117-4: planned');
  fill('Why it is scrapped', 'kinked');
  fireEvent.click(screen.getByRole('button', { name: 'Scrap piece' }));
  expect(await screen.findByText(/H3-117-5 replaces it and waits for the next cut list/)).toBeTruthy();
  expect(await pieceOf(fake, 'H3-117-4')).toMatchObject({
    status: 'scrapped',
    note: expect.stringMatching(/scrapped .*: kinked \(was planned\)/),
  });
  expect(await pieceOf(fake, 'H3-117-5')).toMatchObject({ status: '', replaces: 'H3-117-4' });
  expect(await screen.findByText('H3-117-5 is made in its place.')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  await waitFor(async () => expect(await pieceOf(fake, 'H3-117-5')).toBeUndefined());
});

test('a piece is made again from its tag; a number nobody knows is told', async () => {
  const fake = await open();
  await fake.scan('H9-1');
  expect(await screen.findByText('No piece is called “H9-1”.')).toBeTruthy();
  await fake.scan('41/2-3');
  await screen.findByText('Piece 41/2-3: planned');
  fill('How many again', '2');
  fireEvent.click(screen.getByRole('button', { name: 'Make again' }));
  expect(await screen.findByText(/41\/2-4 to 41\/2-5 added: waiting for the next cut list/)).toBeTruthy();
  expect(await pieceOf(fake, '41/2-5')).toMatchObject({ status: '', cutLength: { unit: { symbol: 'mm' } } });
});

test('a tag scanned in the strip opens Entry at its piece from wherever one is, each scan once', async () => {
  const fake = fakeWorkbook({ Jobs: METRIC }, { sheet: 'Jobs', address: 'A2' });
  await writeAll(fake.workbook, 'mm');
  render(<TaskPane workbook={fake.workbook} functions={[]} wanted={{ place: 'qa/gauges' }} />);
  const user = userEvent.setup();
  const scan = async (text: string) => {
    await user.click(await screen.findByLabelText(/^Scan a tag/));
    await user.keyboard(`${text}{Enter}`);
  };
  const shown = () => screen.getAllByRole('tab', { selected: true }).map(({ textContent }) => textContent);
  await scan('h3-117-2');
  expect(shown()).toEqual(['Bench', 'Entry']);
  expect(await screen.findByText('Piece H3-117-2: planned')).toBeTruthy();
  const pieces = (await readPieces(fake.workbook))!.pieces;
  const rowOf = (number: string) => pieces.find(({ piece }) => piece === number)!.row;
  const selectedRow = async () => (await fake.workbook.selection()).row + 1;
  expect((await fake.workbook.selection()).sheet).toBe('Pieces');
  expect(await selectedRow()).toBe(rowOf('H3-117-2'));
  await waitFor(() => expect(screen.getByRole('heading', { level: 2 }).textContent).toMatch(/H3-117-2.*end A/));
  await scan('41/3-1');
  expect(await screen.findByText('Piece 41/3-1: planned')).toBeTruthy();
  expect(await selectedRow()).toBe(rowOf('41/3-1'));
  // What was scanned is done with: coming back to Entry leads nowhere by itself.
  await user.click(screen.getByRole('tab', { name: 'QA' }));
  await fake.workbook.select({ sheet: 'Jobs', address: 'A2' });
  await user.click(screen.getByRole('tab', { name: 'Bench' }));
  await scan('nothing-9');
  expect(await screen.findByText('No piece is called “nothing-9”.')).toBeTruthy();
  expect((await fake.workbook.selection()).sheet).toBe('Jobs');
});

test('what a co-author fills in meanwhile stays, and is said where somebody types into the same field', async () => {
  const fake = await open();
  await fake.scan('41/3-1');
  await screen.findByText('Piece 41/3-1: planned');
  const { row } = (await pieceOf(fake, '41/3-1'))!;
  const { columns } = (await readPieces(fake.workbook))!.table;
  const elsewhere = (role: 'lotA' | 'finished', value: string | number) =>
    fake.workbook.write([
      {
        kind: 'values',
        at: { sheet: 'Pieces', address: addressOf({ row: row - 1, column: columns[role]!, rows: 1, columns: 1 }) },
        values: [[value]],
      },
    ]);
  await elsewhere('lotA', 'C-9');
  fill('Finished length (mm)', '2181');
  save();
  await waitFor(async () => expect((await pieceOf(fake, '41/3-1'))!.finished?.value.toString()).toBe('2181'));
  expect((await pieceOf(fake, '41/3-1'))!.ends[0].lot).toBe('C-9');
  await waitFor(() => expect((screen.getByLabelText('Coupling lot A') as HTMLInputElement).value).toBe('C-9'));

  await elsewhere('finished', 2179);
  fill('Finished length (mm)', '2183');
  save();
  expect(
    await screen.findByText(/Finished length \(mm\) was changed meanwhile: it is “2179” now. Save again to replace it/),
  ).toBeTruthy();
  expect((await pieceOf(fake, '41/3-1'))!.finished?.value.toString()).toBe('2179');
  save();
  await waitFor(async () => expect((await pieceOf(fake, '41/3-1'))!.finished?.value.toString()).toBe('2183'));
  expect((await pieceOf(fake, '41/3-1'))!.note).toMatch(/2179 until/);
});

test('a save reads each sheet once before it writes and once after it, however many look at it', async () => {
  const fake = await open();
  await fake.scan('41/3-1');
  await screen.findByText('Piece 41/3-1: planned');
  const read: string[] = [];
  const { used } = fake.workbook;
  fake.workbook.used = async sheet => {
    read.push(sheet);
    return used(sheet);
  };
  fill('Finished length (mm)', '2181');
  save();
  expect(await screen.findByText('Piece 41/3-1: cut')).toBeTruthy();
  expect(read.sort()).toEqual(['Jobs', 'Pieces', 'Pieces']);
});
