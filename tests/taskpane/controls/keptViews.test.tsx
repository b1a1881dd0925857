/** @jest-environment jsdom */
import { act, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import { benchSheets } from '../../sheets/crimps/benchSheets';
import { demoSheets } from '../../sheets/cutlist/demoWorkbook';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

beforeEach(() => localStorage.clear());

const isShown = (element: Element) => element.closest('[hidden]') === null;
const pause = (ms: number) => act(() => new Promise(resolve => setTimeout(resolve, ms)));

/** Goes to a tab, and lets the view under it read what it wants to. */
async function tab(name: string) {
  const all = [...document.querySelectorAll('[role=tab]')].filter(isShown);
  fireEvent.click(all.find(({ textContent }) => textContent!.startsWith(name))!);
  await pause(20);
}

const field = (label: string) => screen.getAllByLabelText<HTMLInputElement>(label).find(isShown)!;
const type = (label: string, value: string) => fireEvent.change(field(label), { target: { value } });

function open(sheets: typeof demoSheets, sheet: string, address: string) {
  const fake = fakeWorkbook(sheets, { sheet, address });
  return { ...fake, ...render(<TaskPane workbook={fake.workbook} functions={[]} />) };
}

test('a plan stays while other tabs of the pane, and of the panel, are looked at', async () => {
  open(demoSheets, 'Jobs', 'A2');
  await tab('Cuts');
  await screen.findByText('Rack', { selector: 'option' });
  type('Kerf (mm)', '3');
  fireEvent.click(screen.getByText('Plan the cuts'));
  const before = await screen.findByText('Larch DN 12', { selector: 'h2' });
  await tab('Sheet');
  expect(isShown(before)).toBe(false);
  await tab('Cuts');
  await tab('Tags');
  await tab('Cut list');
  expect(screen.getByText('Larch DN 12', { selector: 'h2' })).toBe(before);
  expect(isShown(before)).toBe(true);
});

test('half-typed readings stay while another tab is looked at', async () => {
  open(benchSheets, 'Record', 'A6');
  await tab('Readings');
  await tab('Entry');
  await screen.findByLabelText('Reading 1');
  type('Reading 1', '27.4');
  await tab('Analysis');
  await tab('Sheet');
  await tab('Readings');
  await tab('Entry');
  await pause(50);
  expect(field('Reading 1').value).toBe('27.4');
});

test('hidden views listen to nothing and read nothing; shown again they read anew; a closed pane leaves no listener', async () => {
  const { workbook, listeners, unmount } = open(demoSheets, 'Jobs', 'A2');
  const alone = listeners.size;
  const read = jest.spyOn(workbook, 'used');
  for (const name of ['Parts', 'Columns', 'Cuts', 'Readings', 'Duty', 'Quotes']) await tab(name);
  await waitFor(() => expect(read).toHaveBeenCalled());
  await tab('Sheet');
  await pause(400);
  expect(listeners.size).toBe(alone);
  read.mockClear();
  await act(() => workbook.select({ sheet: 'Rack', address: 'A2' }));
  await pause(400);
  const bySheet = read.mock.calls.length;
  await tab('Columns');
  await waitFor(() => expect(read.mock.calls.length).toBeGreaterThan(bySheet));
  expect(bySheet).toBe(0);
  unmount();
  expect(listeners.size).toBe(0);
});

test('what is said once in two panels is the same in both, whichever was opened first', async () => {
  open(demoSheets, 'Jobs', 'A2');
  await tab('Cuts');
  type('Kerf (mm)', '3');
  await tab('Quotes');
  await tab('To buy');
  fireEvent.click(screen.getByLabelText(/plan/i, { selector: '[type=radio]' }));
  await pause(0);
  type('Kerf (mm)', '4');
  await tab('Cuts');
  expect(field('Kerf (mm)').value).toBe('4');
  type('Squaring (mm)', '20');
  await tab('Quotes');
  expect([field('Kerf (mm)').value, field('Squaring (mm)').value]).toEqual(['4', '20']);
  expect(JSON.parse(localStorage.getItem('benchrow.cuts')!)).toMatchObject({ kerf: '4', squaring: '20' });
});
