/** @jest-environment jsdom */
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { OutsideExcel } from '../../../src/taskpane/app/OutsideExcel';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const functions = [
  {
    id: 'CRIMPCHECK',
    name: 'CRIMPCHECK',
    description: 'Judges crimps.',
    parameters: [{ name: 'readings', description: 'Caliper readings.' }],
  },
];
const rows = [['Verdict'], [{ formula: '=HOSE.CRIMPCHECK(B2:E2,F2,G2)', value: 'TIGHT' }], ['nothing']];

test('the pane shows the verdict in words with its caution, and explains the function', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  render(<TaskPane workbook={workbook} functions={functions} />);
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
  render(<TaskPane workbook={workbook} functions={functions} />);
  await screen.findByText('Judges crimps.');
  await workbook.select({ sheet: 'Bench', address: 'A3' });
  expect(await screen.findByText(/A3 holds no function of ours/)).toBeTruthy();
});

test('a workbook that cannot be read is said, not hidden', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Gone', address: 'A2' });
  render(<TaskPane workbook={workbook} functions={functions} />);
  expect(await screen.findByText(/cannot be read: no range Gone!A2/)).toBeTruthy();
});

test('formulas are entered again on request, and counted', async () => {
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  render(<TaskPane workbook={workbook} functions={functions} />);
  fireEvent.click(screen.getByRole('button', { name: 'Enter formulas again' }));
  await waitFor(() => expect(screen.getByText('Entered 2 formulas again.')).toBeTruthy());
});

test('another file in the same pane: nothing of the one before stays', async () => {
  const first = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  const { rerender } = render(<TaskPane workbook={first.workbook} functions={functions} />);
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
  render(<TaskPane workbook={workbook} functions={functions} />);
  expect((await screen.findByText(/readings differ too much/)).closest('[role=status]')!.textContent).toMatch(/^OVAL/);
});
