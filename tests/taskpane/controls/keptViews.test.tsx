/** @jest-environment ./tests/quickJsdom.mjs */
import { act, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import { tabs } from '../../../src/taskpane/app/tabs';
import { benchSheets } from '../../sheets/crimps/benchSheets';
import { demoSheets } from '../../sheets/cutlist/demoWorkbook';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { columnField } from '../columnField';
import { openPlace } from '../openPlace';

beforeEach(() => localStorage.clear());

const isShown = (element: Element) => element.closest('[hidden]') === null;
const pause = (ms: number) => act(() => new Promise(resolve => setTimeout(resolve, ms)));

const field = (label: string) => screen.getAllByLabelText<HTMLInputElement>(label).find(isShown)!;
const type = (label: string, value: string) => fireEvent.change(field(label), { target: { value } });

function open(sheets: typeof demoSheets, sheet: string, address: string) {
  const fake = fakeWorkbook(sheets, { sheet, address });
  return { ...fake, ...render(<TaskPane workbook={fake.workbook} functions={[]} />) };
}

test('a plan stays while other tabs of the pane, and other views of the tab, are looked at', async () => {
  open(demoSheets, 'Jobs', 'A2');
  await openPlace('week/cut-list');
  await screen.findByText('Rack', { selector: 'option' });
  type('Kerf (mm)', '3');
  type('Keep from (mm)', '500');
  fireEvent.click(screen.getByText('Plan the cuts'));
  const before = await screen.findByText('Larch DN 12', { selector: 'h2' });
  await openPlace('parts');
  expect(isShown(before)).toBe(false);
  await openPlace('week');
  expect(isShown(before)).toBe(true);
  await openPlace('week/tags');
  await openPlace('week/cut-list');
  expect(screen.getByText('Larch DN 12', { selector: 'h2' })).toBe(before);
  expect(isShown(before)).toBe(true);
});

test('half-typed readings stay while another tab is looked at', async () => {
  open(benchSheets, 'Record', 'A6');
  await openPlace('bench/entry');
  await screen.findByLabelText('Reading 1');
  type('Reading 1', '27.4');
  await openPlace('bench/machine');
  await openPlace('qa/analysis');
  await openPlace('bench/entry');
  await pause(50);
  expect(field('Reading 1').value).toBe('27.4');
});

test('hidden views listen to nothing and read nothing; shown again they read anew; a closed pane leaves no listener', async () => {
  const { workbook, listeners, unmount } = open(demoSheets, 'Jobs', 'A2');
  const read = jest.spyOn(workbook, 'used');
  // The cut list reads no sheet while the names of the sheets stay: what it listens to, and the strip.
  await openPlace('week/cut-list');
  const alone = listeners.size;
  for (const { id, views } of tabs) for (const view of views) await openPlace(`${id}/${view.id}`);
  await waitFor(() => expect(read).toHaveBeenCalled());
  await openPlace('week/cut-list');
  await pause(400);
  expect(listeners.size).toBe(alone);
  read.mockClear();
  await act(() => workbook.select({ sheet: 'Rack', address: 'A2' }));
  await pause(400);
  const bySheet = read.mock.calls.length;
  await openPlace('week/columns');
  await waitFor(() => expect(read.mock.calls.length).toBeGreaterThan(bySheet));
  expect(bySheet).toBe(0);
  unmount();
  expect(listeners.size).toBe(0);
});

test('what is said once in two views is the same in both, whichever was opened first', async () => {
  open(demoSheets, 'Jobs', 'A2');
  await openPlace('week/cut-list');
  type('Kerf (mm)', '3');
  await openPlace('quote/to-buy');
  fireEvent.click(screen.getByLabelText(/plan/i, { selector: '[type=radio]' }));
  await pause(0);
  type('Kerf (mm)', '4');
  await openPlace('week/cut-list');
  expect(field('Kerf (mm)').value).toBe('4');
  type('Squaring (mm)', '20');
  await openPlace('quote/to-buy');
  expect([field('Kerf (mm)').value, field('Squaring (mm)').value]).toEqual(['4', '20']);
  expect(JSON.parse(localStorage.getItem('benchrow.cuts')!)).toMatchObject({ kerf: '4', squaring: '20' });
});

test('the view under two tabs is one view: what was corrected in one is so in the other', async () => {
  open(demoSheets, 'Jobs', 'A2');
  await openPlace('quote/columns');
  const field = await waitFor(() => columnField(/^[A-Z]+: Hose$/));
  await openPlace('week/columns');
  expect(screen.getByLabelText(/^[A-Z]+: Hose$/)).toBe(field);
  expect(isShown(field)).toBe(true);
});
