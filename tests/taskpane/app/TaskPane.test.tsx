/** @jest-environment ./tests/quickJsdom.mjs */
import { fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { OutsideExcel } from '../../../src/taskpane/app/OutsideExcel';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import type { Workbook } from '../../../src/workbook/workbook';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { openPlace } from '../openPlace';

const functions = [
  {
    id: 'CRIMPCHECK',
    name: 'CRIMPCHECK',
    description: 'Judges crimps.',
    parameters: [{ name: 'readings', description: 'Caliper readings.' }],
  },
];
const rows = [['Verdict'], [{ formula: '=HOSE.CRIMPCHECK(B2:E2,F2,G2)', value: 'TIGHT' }], ['nothing']];

const line = () => within(screen.getByRole('region', { name: 'Selected cell' })).getAllByRole('button')[0]!;
/** Opens the pane with its strip unfolded. */
const open = (workbook: Workbook) => {
  const shown = render(<TaskPane workbook={workbook} functions={functions} />);
  if (line().getAttribute('aria-expanded') === 'false') fireEvent.click(line());
  return shown;
};

beforeEach(() => localStorage.clear());

test('five tabs in two named rows; the pane opens at what is wanted, and stays where a place is unknown', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  const { rerender } = render(<TaskPane workbook={workbook} functions={functions} wanted={{ place: 'qa/records' }} />);
  const selected = () => screen.getAllByRole('tab', { selected: true }).map(({ textContent }) => textContent);
  expect(within(screen.getByRole('tablist', { name: 'Tabs' })).getAllByRole('tab')).toHaveLength(5);
  expect(within(screen.getByRole('tablist', { name: 'Views of QA' })).getAllByRole('tab')).toHaveLength(4);
  expect(selected()).toEqual(['QA', 'Records']);
  rerender(<TaskPane workbook={workbook} functions={functions} wanted={{ place: 'readings' }} />);
  expect(selected()).toEqual(['QA', 'Records']);
  // The button of a view that lacks something leads to where it is got.
  await openPlace('parts/search');
  fireEvent.click(await screen.findByRole('button', { name: 'Load parts data' }));
  expect(selected()).toEqual(['Parts', 'Load']);
  for (const tab of screen.getAllByRole('tab', { selected: true }))
    expect(document.getElementById(tab.getAttribute('aria-controls')!)!.getAttribute('role')).toBe('tabpanel');
});

test('folded, the strip says the selected cell and the verdict in one line; it stays as it was left', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  const { unmount } = render(<TaskPane workbook={workbook} functions={functions} />);
  await waitFor(() => expect(line().textContent).toBe('A2 HOSE.CRIMPCHECK: TIGHT'));
  expect(line().getAttribute('aria-expanded')).toBe('false');
  expect(screen.queryByText('Judges crimps.')).toBeNull();
  // What is selected is read out by the sheet itself: a strip that talks at each step would drown it.
  expect(screen.getByRole('region', { name: 'Selected cell' }).querySelector('[aria-live]')).toBeNull();
  fireEvent.click(line());
  expect(await screen.findByText('Judges crimps.')).toBeTruthy();
  unmount();
  const { rerender } = render(<TaskPane workbook={workbook} functions={functions} />);
  expect(line().getAttribute('aria-expanded')).toBe('true');
  rerender(<TaskPane workbook={workbook} functions={functions} wanted={{ place: 'parts', strip: 'folded' }} />);
  expect(line().getAttribute('aria-expanded')).toBe('false');
});

test('the strip shows the verdict in words with its caution, and explains the function', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  open(workbook);
  expect(await screen.findByText('Judges crimps.')).toBeTruthy();
  expect(screen.getAllByText('TIGHT').length).toBeGreaterThan(0);
  expect(screen.getByText(/stays rejected/)).toBeTruthy();
  expect(screen.getByText('Caliper readings.')).toBeTruthy();
});

test('in Excel the pane is the main part of its page; in the try-out page it is part of another', () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  const { rerender } = render(<TaskPane workbook={{ ...workbook, host: 'excel' }} functions={functions} />);
  expect(screen.queryByRole('main')).not.toBeNull();
  rerender(<TaskPane workbook={{ ...workbook, host: 'try-out' }} functions={functions} />);
  expect(screen.queryByRole('main')).toBeNull();
});

test('another selection is followed', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  open(workbook);
  await screen.findByText('Judges crimps.');
  await workbook.select({ sheet: 'Bench', address: 'A3' });
  expect(await screen.findByText(/A3: no Benchrow function/)).toBeTruthy();
});

test('a workbook that cannot be read is said, not hidden', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Gone', address: 'A2' });
  open(workbook);
  expect(await screen.findAllByText(/The selection cannot be read: no range Gone!A2/)).toHaveLength(2);
});

test('formulas are entered again on request, and counted', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  open(workbook);
  fireEvent.click(screen.getByRole('button', { name: 'Enter formulas again' }));
  await waitFor(() => expect(screen.getByText('Entered 2 formulas again.')).toBeTruthy());
});

test('another file in the same pane: nothing of the one before stays', async () => {
  const first = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  const { rerender } = open(first.workbook);
  fireEvent.click(screen.getByRole('button', { name: 'Enter formulas again' }));
  await screen.findByText('Entered 2 formulas again.');
  const second = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  rerender(<TaskPane workbook={second.workbook} functions={functions} />);
  expect(await screen.findByText('Judges crimps.')).toBeTruthy();
  expect(screen.queryByText('Entered 2 formulas again.')).toBeNull();
});

test('without Office.js, or outside Excel, the pane says so and what to do', () => {
  render(<OutsideExcel absence="noOfficeJs" />);
  expect(screen.getByText('Office.js did not load')).toBeTruthy();
  render(<OutsideExcel absence="notExcel" />);
  expect(screen.getByText('This page is not open in Excel')).toBeTruthy();
});

test('of several verdicts in a row the worst is shown large', async () => {
  const both = [['Mean', 'Spread'], ['IN SPEC', 'OVAL'].map(value => ({ formula: '=HOSE.CRIMPCHECK(C2:F2,G2,H2)', value }))];
  const { workbook } = fakeWorkbook({ Bench: both }, { sheet: 'Bench', address: 'A2' });
  open(workbook);
  expect((await screen.findByText(/readings differ too much/)).parentElement!.textContent).toMatch(/^OVAL/);
  expect(line().textContent).toBe('A2 HOSE.CRIMPCHECK: IN SPEC · this row: OVAL');
});
