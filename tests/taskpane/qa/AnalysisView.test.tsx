/** @jest-environment jsdom */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import type { Change } from '../../../src/workbook/workbook';
import { AnalysisView } from '../../../src/taskpane/qa/AnalysisView';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { tableAnswers } from '../../../src/sheets/table/tableAnswers';
import { viewProps } from '../viewProps';
import { sampleSheets } from '../../sheets/analysis/sampleSheet';

let book: Readonly<Record<string, FakeCell[][]>>;
beforeEach(() => localStorage.clear());
beforeAll(async () => {
  book = await sampleSheets('measurement-book.xlsx');
});

function open(sheet: string, address = 'F12', sheets: Readonly<Record<string, FakeCell[][]>> = book) {
  const fake = fakeWorkbook(sheets, { sheet, address });
  render(
    <FluentProvider theme={webLightTheme}>
      <AnalysisView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  return fake;
}

const section = (name = 'All crimps') => screen.findByRole('region', { name });
const fill = (label: RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

test('the machine that has gone off: counts, the finding in a sentence, every number of the picture as text', async () => {
  open('Week 40');
  const crimps = within(await section());
  expect(crimps.getByText(/^All combinations crimp 0\.10 mm large: recalibrate\.$/)).toBeTruthy();
  expect(screen.getByRole('list', { name: 'Verdicts' }).textContent).toMatch(/^\d+ IN SPEC0 TIGHT\d+ LOOSE0 OVAL0 UNSURE$/);
  const table = within(crimps.getByRole('table', { name: 'Deviations by combination' }));
  expect(table.getAllByRole('row').map(row => row.textContent)).toContain('Larch DN 12 with 24° cone60+0.098');
  expect(crimps.getByRole('img', { name: /Deviations of 30 crimps of 5 combinations/ })).toBeTruthy();
});

test('a table without readings is said to have none, not row by row to lack a target', async () => {
  open('Jobs', 'A2', {
    Jobs: [
      ['Line', 'Hose', 'Fitting', 'Length (mm)'],
      [1, 'Larch DN 12', '24° cone', 900],
      [2, 'Larch DN 10', '24° cone', 800],
    ],
  });
  expect(await screen.findByText(/^No readings here: no column of readings was found on sheet Jobs/)).toBeTruthy();
  expect(screen.queryByText(/not readable/)).toBeNull();
});

test('the pictures are drawn: a strip a combination, a shape a verdict', async () => {
  open('Week 39');
  const picture = within(await section()).getByRole('img', { name: /Deviations of 30 crimps/ });
  await waitFor(() => expect(picture.querySelector('svg')).toBeTruthy(), { timeout: 15_000 });
  const titles = [...picture.querySelectorAll('title')].map(each => each.textContent);
  expect(titles).toHaveLength(30);
  expect(titles.filter(text => /LOOSE/.test(text!))).toHaveLength(6);
  expect(picture.textContent).toContain('Rowan DN 19 with split flange');
}, 30_000);

test('change per digit and per turn, entered by hand, make the next dial and the turns', async () => {
  open('Week 41');
  await section();
  fireEvent.click(screen.getByRole('button', { name: 'Limits and machine' }));
  fill(/^Step/, '0.016');
  fill(/^Change per turn/, '0.44');
  const crimps = within(await section());
  expect(
    crimps.getByText(
      /Rowan DN 19 with split flange is 0\.19 mm large of its own: set its dial from 425 to 43(6|7), crimp one trial piece and measure/,
    ),
  ).toBeTruthy();
  expect(crimps.getByText(/^Turn the adjuster 0\.22 turns looser \(0\.44 mm a turn, as entered\)\.$/)).toBeTruthy();
});

test('what is typed wrongly is said at its field and not used', async () => {
  open('Week 40');
  await section();
  fireEvent.click(screen.getByRole('button', { name: 'Limits and machine' }));
  fill(/^Change per turn/, '-0.4');
  expect(screen.getByText('Change per turn is "-0.4": it must be more than 0')).toBeTruthy();
  expect(within(await section()).getByText(/enter its change per turn/)).toBeTruthy();
});

test('a row that cannot be used leads to its cell', async () => {
  const rows = book['Week 40']!.map(row => [...row]);
  rows[9]![6] = 'loose';
  const { workbook } = open('Week 40', 'A9', { 'Week 40': rows });
  const link = await screen.findByText('Row 10');
  expect(link.parentElement!.textContent).toBe('Row 10: reading 2 is "loose": enter a number, like 12.5, 3/8 or 27.5 mm');
  fireEvent.click(link);
  expect((await workbook.selection()).address).toBe('G10');
  expect(screen.getByText(/^29 crimps read from sheet Week 40/)).toBeTruthy();
});

test('columns are corrected by hand: without the target column the rows say once what is missing', async () => {
  const { workbook } = open('Week 40');
  await section();
  const column = (name: string) => screen.getByRole<HTMLSelectElement>('combobox', { name });
  expect([column('F: Reading 1 (mm)').value, column('J: Target (mm)').value]).toEqual(['reading', 'target']);
  fireEvent.change(column('J: Target (mm)'), { target: { value: 'none' } });
  const links = await screen.findAllByText(/^Row \d+$/);
  expect(links.length).toBeGreaterThanOrEqual(30);
  expect(screen.getAllByText(/target is not known: no column/)).toHaveLength(1);
  expect(screen.queryByRole('region', { name: 'All crimps' })).toBeNull();
  // It is remembered with the workbook.
  expect((await tableAnswers(workbook, 'crimps', 'Week 40')).role.get('target (mm)')).toBe('none');
  fireEvent.change(column('J: Target (mm)'), { target: { value: 'target' } });
  expect(await section()).toBeTruthy();
});

test('a heading without a unit is asked about once, with the unit that its size suggests, and the answer is remembered', async () => {
  const { workbook } = open('Crimps', 'A2', {
    Crimps: [
      ['Hose', 'Fitting', 'Target', 'Tolerance', 'Reading 1', 'Reading 2'],
      ['Larch DN 12', 'cone', 27.35, 0.12, 27.3, 27.4],
      ['Larch DN 10', 'cone', 22.8, 0.12, 22.8, 22.8],
    ],
  });
  expect(await screen.findByText('Column E: Reading 1 names no unit. Which is it?')).toBeTruthy();
  expect(screen.getAllByText(/names no unit/)).toHaveLength(1);
  expect(screen.getByText(/the unit of the readings is not known: answer the question about it/)).toBeTruthy();
  expect(screen.getByText('0 crimps read from sheet Crimps.')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'mm' }));
  expect(await screen.findByText('2 crimps read from sheet Crimps.')).toBeTruthy();
  expect((await tableAnswers(workbook, 'crimps', 'Crimps')).unit.get('reading 1')).toBe('mm');
});

test('control charts of one combination, mean and range', async () => {
  open('Week 40');
  const crimps = within(await section());
  fireEvent.change(crimps.getByLabelText('Of'), { target: { value: 'Alder DN 19 with 60° cone' } });
  fireEvent.change(crimps.getByLabelText('Points'), { target: { value: '2' } });
  expect(crimps.getByText(/^Mean: 3 points, centre \+0\.102 mm/)).toBeTruthy();
  expect(crimps.getByText(/^Range: 3 points/)).toBeTruthy();
});

test('results go to a new sheet as values with charts; the try-out sheet says it has no charts', async () => {
  const { written } = open('Week 42');
  await section();
  expect(screen.getByText(/the try-out sheet has no charts of its own/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Write results as a new sheet' }));
  expect(await screen.findByText('Readings', { selector: 'button *, button, a' })).toBeTruthy();
  const changes = written[0] as readonly Change[];
  expect(changes[0]).toEqual({ kind: 'addSheet', sheet: 'Readings' });
  expect(changes.filter(({ kind }) => kind === 'chart')).toHaveLength(3);
});

test('a sheet without readings says what to select', async () => {
  open('Notes', 'A1', { Notes: [['Hello']] });
  expect(await screen.findByText(/No readings here\. Select a cell among your caliper readings/)).toBeTruthy();
});

test('several columns of readings, corrected where one was taken, hold a crimp a row', async () => {
  open('Crimps', 'A2', {
    Crimps: [
      ['Hose', 'Fitting', 'Target (mm)', 'Tolerance (mm)', 'Reading (mm)', 'second', 'third', 'fourth'],
      ['Larch DN 12', 'cone', 27.35, 0.12, 27.3, 27.3, 27.4, 27.4],
      ['Larch DN 10', 'cone', 22.8, 0.12, 22.8, 22.8, 22.8, 22.8],
    ],
  });
  expect(await screen.findByText('0 crimps read from sheet Crimps.')).toBeTruthy();
  for (const name of ['F: second', 'G: third', 'H: fourth']) {
    fireEvent.change(screen.getByRole('combobox', { name }), { target: { value: 'reading' } });
    await waitFor(() => expect(screen.getByRole<HTMLSelectElement>('combobox', { name }).value).toBe('reading'));
  }
  expect(await screen.findByText('2 crimps read from sheet Crimps.')).toBeTruthy();
});
