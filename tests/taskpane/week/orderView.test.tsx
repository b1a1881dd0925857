/** @jest-environment ./tests/quickJsdom.mjs */
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { OrderView } from '../../../src/taskpane/week/OrderView';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { office, written } from '../../sheets/pieces/shopOffice';
import { viewProps } from '../viewProps';

beforeEach(() => localStorage.clear());

const JOBS = [
  ['Line', 'Hose', 'Coupling A', 'Coupling B', 'Qty', 'Overall (mm)', 'Cut length (mm)', 'Die', 'Dial', 'Status'],
  [1, 'Larch DN 12', 'cone', 'cone', 4, 1250, 1168, 'D26', 300, ''],
  [2, 'Larch DN 8', 'cone L', 'cone L', 2, 900, 818, 'D18', 210, ''],
  [3, 'Larch DN 12', 'cone', 'cone', 3, 640, 570, 'D26', 300, ''],
  [4, 'Larch DN 12', 'cone', 'cone', 3, 640, 570, 'D26', 300, 'done'],
];

function open() {
  const fake = fakeWorkbook({ Jobs: JOBS }, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <OrderView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  return fake;
}

test('the result first, the order with ways to its rows, what to fetch, what was left out', async () => {
  const { workbook } = open();
  expect(
    await screen.findByText(
      '2 dies: 1 die change and 1 dial change; in the order of the sheet 2 die changes and 2 dial changes. Fewer are not possible with these dials.',
    ),
  ).toBeTruthy();
  const steps = screen.getByRole('list', { name: 'Order of work' });
  expect(steps.textContent).toContain('Die D26, dial 300Line 1, both ends, 4 offLarch DN 12Line 3, both ends, 3 off');
  expect(screen.getByRole('region', { name: 'Pick list' }).textContent).toContain('Coupling cone: 14 (line 1, 3)');
  expect(screen.getByText(/1 done/)).toBeTruthy();
  fireEvent.click(screen.getByText('Line 3, both ends, 3 off'));
  expect((await workbook.selection()).address).toBe('A4');
});

test('the die in the machine comes first; the order is written and taken back', async () => {
  const { written } = open();
  await screen.findByRole('list', { name: 'Order of work' });
  fireEvent.change(screen.getByLabelText(/Die in the machine/), { target: { value: 'd18' } });
  await screen.findByText(/^2 dies: 1 die change and/);
  await expect(screen.findByText('Die D18, dial 210')).resolves.toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Write order' }));
  expect(await screen.findByText('Written: Order of work.')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  await screen.findByText('Taken back.');
  expect(written.at(-1)).toEqual([{ kind: 'removeSheet', sheet: 'Order of work' }]);
});

test('what was read of the rack that the reels are from is said, and its hidden rows are taken with a tick', async () => {
  const rack = [
    ['Hose', 'Length (m)', 'Place'],
    ['Larch DN 12', 40, 'A1'],
    ['Larch DN 8', 30, 'A2'],
  ];
  const fake = fakeWorkbook({ Jobs: JOBS, Rack: rack }, { sheet: 'Jobs', address: 'A2' }, { hiddenRows: { Rack: [2] } });
  render(
    <FluentProvider theme={webLightTheme}>
      <OrderView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  await screen.findByText(/^Rack A1:C3: 1 row taken; left out: 1 hidden/);
  fireEvent.click(screen.getByLabelText('Take hidden rows, too'));
  expect(await screen.findByText(/^Rack A1:C3: 2 rows taken/)).toBeTruthy();
});

test.each([
  ['in inches where nobody has chosen yet', undefined, /Hose Birch 3\/8: 60 in/],
  ['in millimetres where somebody chose them', 'mm', /Hose Birch 3\/8: 1524 mm/],
])('with a rack in feet the hose to fetch is %s', async (_, chosen, expected) => {
  if (chosen) localStorage.setItem('benchrow.cuts', JSON.stringify({ unit: chosen, step: '1' }));
  const jobs = [
    ['Hose', 'Cut length (in)', 'Qty'],
    ['Birch 3/8', 30, 2],
  ];
  const rack = [
    ['Hose', 'Feet left', 'Bin'],
    ['Birch 3/8', 40, 'A1'],
  ];
  const fake = fakeWorkbook({ Jobs: jobs, Rack: rack }, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <OrderView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  await waitFor(() => expect(screen.getByRole('region', { name: 'Pick list' }).textContent).toMatch(expected));
});

describe('once the cut list is written', () => {
  const rack = [
    ['Hose', 'Length (m)', 'Place', 'Reel', 'Made'],
    ['Larch DN 12', 1.687, 'C1', 'R5', '2026-03'],
    ['Larch DN 12', 30, 'C2', 'R6', '2011-03'],
    ['Larch DN 12', 20, 'C3', 'R7', '2026-05'],
    ['Larch DN 8', 30, 'A2', 'R9', '2026-05'],
  ];
  const pieces = (...statuses: readonly string[]) => [
    ['Piece', 'Line', 'Hose', 'Lot', 'Reel', 'Cut length (mm)', 'Status'],
    ...statuses.map((status, index) => [`1-${index + 1}`, 1, 'Larch DN 12', 'L5', 'R5', 1168, status]),
  ];
  const withPieces = (Pieces: ReturnType<typeof pieces>) =>
    render(
      <FluentProvider theme={webLightTheme}>
        <OrderView
          {...viewProps(fakeWorkbook({ Jobs: JOBS.slice(0, 3), Rack: rack, Pieces }, { sheet: 'Jobs', address: 'A2' }).workbook)}
        />
      </FluentProvider>,
    );
  const picked = async () => (await screen.findByRole('region', { name: 'Pick list' })).textContent;

  test('hose comes from the reels of the cut list, not from what the rack has after it', async () => {
    withPieces(pieces('planned', 'planned', 'planned', 'planned'));
    const text = await picked();
    expect(text).toContain('Hose Larch DN 12: 4672 mm');
    expect(text).toContain('reel R5, lot L5: cut 4 × 1168 mm');
    expect(text).not.toContain('1687 mm');
    expect(text).not.toContain('C3');
  });

  test('what is cut needs no hose, what is crimped no couplings; a piece that waits comes from the rack', async () => {
    withPieces(pieces('planned', 'cut', 'crimped', ''));
    const text = await picked();
    expect(text).toContain('Hose Larch DN 12: 2336 mm');
    expect(text).toContain('cut 1 × 1168 mm');
    expect(text).toContain('C3, reel R7: 20000 mm');
    expect(text).toContain('Coupling cone: 6');
  });

  test('nobody is sent to reels beyond the age limit', async () => {
    localStorage.setItem('benchrow.cuts', JSON.stringify({ unit: 'mm', step: '1', ageLimit: '6' }));
    withPieces(pieces());
    const text = await picked();
    expect(text).toContain('C3, reel R7: 20000 mm');
    expect(text).not.toContain('C2');
    expect(text).not.toContain('none in the rack');
  });
});

test('a reel that the cut list uses up is still fetched from where it lies', async () => {
  const jobs = [
    ['Line', 'Hose', 'Cut length (mm)', 'Qty', 'Status'],
    ['1', 'Hazel DN 12', 1450, 2, ''],
  ];
  const rack = [
    ['Hose', 'Length (mm)', 'Place', 'Reel', 'Lot'],
    ['Hazel DN 12', 3000, 'A1', 'R1', 'L1'],
    ['Hazel DN 12', 30000, 'A2', 'R2', 'L1'],
  ];
  const workbook = office({ Jobs: jobs, Rack: rack });
  const { writing } = await written(workbook, 'Jobs');
  // 3,000 mm less 20 for squaring are two of 1,450 and their kerfs; R1 is gone from the rack that is left.
  const left = (await workbook.used(writing.rackAfter))!.values.map(row => row[3]);
  expect(left).toEqual(['Reel', 'R2']);
  await workbook.select({ sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <OrderView {...viewProps(workbook)} />
    </FluentProvider>,
  );
  expect((await screen.findByRole('region', { name: 'Pick list' })).textContent).toContain(
    'A1, reel R1, lot L1: cut 2 × 1450 mm',
  );
});
