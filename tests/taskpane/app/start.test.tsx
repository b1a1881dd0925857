/** @jest-environment ./tests/quickJsdom.mjs */
import { act, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { StartView } from '../../../src/taskpane/app/start/StartView';
import { people } from '../../../src/taskpane/app/start/people';
import { tabs } from '../../../src/taskpane/app/tabs';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const KEY = 'benchrow.start';
const question = () => screen.findByRole('heading', { name: 'Which work is yours?' });
const selected = () => screen.getAllByRole('tab', { selected: true }).map(({ textContent }) => textContent);

function open(rows: readonly (readonly FakeCell[])[], host: 'excel' | 'try-out' = 'excel') {
  const fake = fakeWorkbook({ Sheet1: rows }, { sheet: 'Sheet1', address: 'A1' });
  const workbook = { ...fake.workbook, host };
  return { workbook, ...render(<TaskPane workbook={workbook} functions={[]} />) };
}

const quiet = () => act(() => new Promise(resolve => setTimeout(resolve, 50)));

beforeEach(() => localStorage.clear());

test('everybody’s work begins at a place that the pane has', () => {
  const places = tabs.flatMap(({ id, views }) => views.map(view => `${id}/${view.id}`));
  expect(people.map(({ place }) => place).filter(place => !places.includes(place))).toEqual([]);
});

test('an empty workbook in Excel: the work is asked once, kept on this computer, and leads to the own sheet', async () => {
  const first = open([]);
  await question();
  fireEvent.click(screen.getByRole('button', { name: /^QA/ }));
  expect(screen.getByText(/open the sheet with the readings/)).toBeTruthy();
  expect(await first.workbook.recall('start')).toBeUndefined();
  fireEvent.click(screen.getByRole('button', { name: 'Go on with my own sheet' }));
  expect(selected()).toEqual(['QA', 'Analysis']);
  expect(screen.queryByText(/open the sheet with the readings/)).toBeNull();
  first.unmount();
  open([]);
  expect(await screen.findByRole('heading', { name: 'QA' })).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Choose other work' }));
  await question();
  expect(screen.getByRole('button', { name: /^Estimator/ })).toBeTruthy();
});

test('a tab puts the question away, and so does the first cell that is filled', async () => {
  const { unmount } = open([]);
  await question();
  fireEvent.click(screen.getByRole('tab', { name: 'Week' }));
  expect(screen.queryByRole('heading', { name: 'Which work is yours?' })).toBeNull();
  expect(selected()[0]).toBe('Week');
  unmount();
  const { workbook } = open([]);
  await question();
  await act(async () => {
    await workbook.write([{ kind: 'values', at: { sheet: 'Sheet1', address: 'A1' }, values: [['Hose']] }]);
    await workbook.select({ sheet: 'Sheet1', address: 'A2' });
  });
  await waitFor(() => expect(screen.queryByRole('heading', { name: 'Which work is yours?' })).toBeNull());
});

test('a filled workbook has one line above the views; the work chosen there opens from then on', async () => {
  const first = open([['Hose']]);
  const line = await screen.findByRole('group', { name: 'Your work' });
  expect(selected()).toEqual(['Parts', 'Search']);
  fireEvent.click(within(line).getByRole('button', { name: 'Shop office' }));
  expect(selected()).toEqual(['Week', 'Cut list']);
  expect(screen.queryByRole('group', { name: 'Your work' })).toBeNull();
  first.unmount();
  open([['Hose']]);
  expect(selected()).toEqual(['Week', 'Cut list']);
  await quiet();
  expect(screen.queryByRole('group', { name: 'Your work' })).toBeNull();
});

test('the line is put away for good', async () => {
  const first = open([['Hose']]);
  fireEvent.click(await screen.findByRole('button', { name: 'Put this line away' }));
  first.unmount();
  open([['Hose']]);
  await quiet();
  expect(screen.queryByRole('group', { name: 'Your work' })).toBeNull();
});

test.each(['{', '{"person": 7}', '{"person": "somebody else"}'])('a storage that holds %s asks anew', async stored => {
  localStorage.setItem(KEY, stored);
  open([]);
  await question();
});

test('the try-out page asks nothing: it has its own samples and tour', async () => {
  open([], 'try-out');
  await quiet();
  expect(screen.queryByRole('heading', { name: 'Which work is yours?' })).toBeNull();
});

describe('the sample', () => {
  const address = 'https://office.example/benchrow/samples/workshop.xlsx';
  const show = (canOpen: boolean, openIt: () => Promise<void>) =>
    render(
      <StartView
        person={people[0]}
        sample={{ address: () => address, canOpen: () => canOpen, open: openIt }}
        onChoose={() => undefined}
        onOwnSheet={() => undefined}
      />,
    );
  const button = () => screen.queryByRole('button', { name: 'Open the sample as a new workbook' });

  test('is opened, and the file is offered where nothing comes', async () => {
    let opened = 0;
    show(true, async () => void (opened += 1));
    expect(screen.queryByRole('link')).toBeNull();
    fireEvent.click(button()!);
    expect(await screen.findByText(/opens as a new workbook\. Open Benchrow there/)).toBeTruthy();
    expect(screen.getByRole('link').getAttribute('href')).toBe(address);
    expect(opened).toBe(1);
  });

  test('that was refused says why, and what to do instead', async () => {
    show(true, () => Promise.reject(new Error('Excel refused it.')));
    fireEvent.click(button()!);
    expect(await screen.findByText(/was not opened: Excel refused it\. Download it in your browser/)).toBeTruthy();
  });

  test('is a file to download where this Excel cannot open it', () => {
    show(false, async () => undefined);
    expect(button()).toBeNull();
    expect(screen.getByText(/cannot open it from here/)).toBeTruthy();
    expect(screen.getByRole('link').textContent).toBe(address);
  });
});
