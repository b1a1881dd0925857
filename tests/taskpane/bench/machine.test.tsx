/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { dayNumber } from '../../../src/core/units/sheetDate';
import { careTasks } from '../../../src/sheets/machines/machineCare';
import { readMachineChanges } from '../../../src/sheets/crimps/readMachineChanges';
import { MachineView } from '../../../src/taskpane/bench/MachineView';
import { today } from '../../../src/sheets/table/today';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';

beforeEach(() => localStorage.clear());

const care = (rows: readonly (readonly FakeCell[])[]) => [['Machine', 'Task', 'Every (days)', 'Last done'], ...rows];

async function contentOf(rows: readonly (readonly FakeCell[])[]) {
  return fakeWorkbook({ Care: rows }, { sheet: 'Care', address: 'A1' }).workbook.used('Care');
}

test('care is sorted by what is due, and says what is missing', async () => {
  const rows = care([
    ['Gate', 'Grease the shoes', 7, dayNumber('2026-03-01')!],
    ['Gate', 'Look at the hoses', 90, '2026-03-01'],
    ['Van', 'Change the oil', 365, ''],
    ['Van', 'Clean the dies', 'often', ''],
    ['Van', 'Check the guard', 14, '2026-02-23'],
  ]);
  const tasks = careTasks(await contentOf(rows), '2026-03-09')!;
  expect(tasks.map(({ task, dueIn, sentence }) => [task, dueIn, sentence])).toEqual([
    ['Clean the dies', undefined, 'No number of days: write how often it is done'],
    ['Grease the shoes', -1, 'Overdue by 1 day (last done 2026-03-01)'],
    ['Change the oil', 0, 'Never done yet: due now'],
    ['Check the guard', 0, 'Due today (last done 2026-02-23)'],
    ['Look at the hoses', 82, 'Due in 82 days (last done 2026-03-01)'],
  ]);
  expect(careTasks(await contentOf([['Task'], ['x']]), '2026-03-09')).toBeUndefined();
});

function open(sheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>>) {
  const fake = fakeWorkbook(sheets, { sheet: Object.keys(sheets)[0]!, address: 'A1' });
  render(
    <FluentProvider theme={webLightTheme}>
      <MachineView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  return fake;
}

const fill = (label: RegExp | string, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

test('a check is written as a row of Machine log, which is made with its headings; undo takes it back', async () => {
  const { workbook } = open({ Jobs: [['x']] });
  fireEvent.click(screen.getByRole('button', { name: 'Write to Machine log' }));
  expect(await screen.findByText(/^Expected diameter is blank/)).toBeTruthy();
  expect(screen.getByText(/Name the machine/)).toBeTruthy();
  fill('Machine', 'Gate');
  fill(/^Reference set-up/, 'ring 3');
  fill(/^Expected/, '25');
  for (const number of [1, 2, 3, 4]) fill(`Reading ${number} (mm)`, '25.11');
  fill(/^Change per turn/, '0.44');
  expect(screen.getByText(/0\.11 mm large: turn the calibration screw 0\.25 turns tighter/)).toBeTruthy();
  const answer = (name: string) => screen.getByRole('radio', { name }) as HTMLInputElement;
  expect([answer('Yes').checked, answer('No').checked]).toEqual([false, false]);
  fireEvent.click(screen.getByRole('button', { name: 'Write to Machine log' }));
  expect(await screen.findByText(/^Was the screw turned is not answered/)).toBeTruthy();
  expect(await workbook.sheets()).toEqual(['Jobs']);
  fireEvent.click(answer('Yes'));
  fireEvent.click(screen.getByRole('button', { name: 'Write to Machine log' }));
  expect(await screen.findByText(/Written to Machine log, row 2; the sheet is new/)).toBeTruthy();
  const row = (await workbook.used('Machine log'))!.values[1]!;
  expect(Math.floor(row[0] as number)).toBe(dayNumber(today()));
  expect(row.slice(1, 11)).toEqual(['Gate', 'Check', 'ring 3', 'mm', 25, '25.11  25.11  25.11  25.11', 25.11, 0.11, 0.44, 0.25]);
  // The next one is asked for again.
  expect([answer('Yes').checked, answer('No').checked]).toEqual([false, false]);
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  expect(await screen.findByText('Taken back.')).toBeTruthy();
  expect((await workbook.used('Machine log'))!.values.flat().join('')).toBe('');
});

test('advice that nobody followed is written without turns; another reading asks anew', async () => {
  const { workbook } = open({ Jobs: [['x']] });
  fill('Machine', 'Anvil right');
  fill(/^Reference set-up/, 'ring 3');
  fill(/^Expected/, '41.30');
  for (const number of [1, 2, 3, 4]) fill(`Reading ${number} (mm)`, '41.4');
  fill(/^Change per turn/, '0.44');
  fireEvent.click(screen.getByRole('radio', { name: 'Yes' }));
  fill('Reading 4 (mm)', '41.41');
  expect(screen.getByRole('radio', { name: 'Yes' })).toHaveProperty('checked', false);
  fill('Reading 4 (mm)', '41.4');
  fireEvent.click(screen.getByRole('radio', { name: 'No' }));
  fireEvent.click(screen.getByRole('button', { name: 'Write to Machine log' }));
  expect(await screen.findByText(/Written to Machine log, row 2/)).toBeTruthy();
  const [headings, row] = (await workbook.used('Machine log'))!.values;
  const cell = (heading: string) => row![headings!.indexOf(heading)];
  expect(cell('Turns, + is tighter')).toBe('');
  expect(cell('Note')).toBe(
    'The machine crimps 0.1 mm large: turn the calibration screw 0.23 turns tighter, then check again. The screw was not turned.',
  );
  expect(await readMachineChanges(workbook)).toEqual([]);
});

test('nothing is asked where the machine is left alone', async () => {
  open({ Jobs: [['x']] });
  fill(/^Expected/, '41.30');
  for (const number of [1, 2]) fill(`Reading ${number} (mm)`, '41.4');
  expect(await screen.findByRole('radiogroup', { name: 'Was the screw turned?' })).toBeTruthy();
  fill(/^Leave alone/, '0.1');
  expect(screen.queryByRole('radiogroup')).toBeNull();
});

test('the list of care ships empty: only its headings are made', async () => {
  const { workbook } = open({ Jobs: [['x']] });
  fireEvent.click(await screen.findByRole('button', { name: 'Make the sheet Machine care' }));
  expect(await screen.findByText(/has no tasks yet/)).toBeTruthy();
  expect((await workbook.used('Machine care'))!.values).toEqual([['Machine', 'Task', 'Every (days)', 'Last done']]);
});

test('a task that is done gets its date, and a line in the log with what was due', async () => {
  const { workbook } = open({ 'Machine care': care([['Gate', 'Grease the shoes', 7, '2020-01-01']]) });
  fireEvent.click(await screen.findByRole('button', { name: 'Done today: Grease the shoes' }));
  expect(await screen.findByText(/before 2020-01-01; written to Machine log, row 2/)).toBeTruthy();
  const [last] = await workbook.read([{ sheet: 'Machine care', address: 'D2' }]);
  expect(last!.values).toEqual([[dayNumber(today())]]);
  expect(await screen.findByText(/Due in 7 days/)).toBeTruthy();
  const bar = screen.getAllByRole('status').find(each => within(each).queryByRole('button', { name: 'Undo' }))!;
  fireEvent.click(within(bar).getByRole('button', { name: 'Undo' }));
  await waitFor(() => expect(screen.getByText(/Overdue by/)).toBeTruthy());
  expect((await workbook.read([{ sheet: 'Machine care', address: 'D2' }]))[0]!.values).toEqual([['2020-01-01']]);
});
