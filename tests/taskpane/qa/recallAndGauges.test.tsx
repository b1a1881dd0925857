/** @jest-environment ./tests/quickJsdom.mjs */
import { fireEvent, render, screen } from '@testing-library/react';
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { GaugesView } from '../../../src/taskpane/qa/GaugesView';
import { RecallView } from '../../../src/taskpane/qa/RecallView';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';

const crimp = (reading: number) => [24.9, 0.12, reading, reading, reading, reading];
const PIECES: readonly (readonly FakeCell[])[] = [
  [
    'Piece',
    'Order',
    'Hose',
    'Lot',
    'Fitting A',
    'Gauge',
    'Date',
    'Status',
    'Target A (mm)',
    'Tolerance A (mm)',
    'Reading A1 (mm)',
    'Reading A2 (mm)',
    'Reading A3 (mm)',
    'Reading A4 (mm)',
    'Test pressure (bar)',
  ],
  ['P-1', 'B-1', 'Larch', 'L70', 'cone', 'Caliper 3', '2026-09-01', 'done', ...crimp(24.8), 900],
  ['P-2', 'B-2', 'Larch', '', 'cone', 'Gauge 7', '2026-09-02', 'done', ...crimp(24.9), 900],
];
const GAUGES: readonly (readonly FakeCell[])[] = [
  ['Gauge', 'Kind', 'Unit', 'Checked', 'Every (days)', 'Range to'],
  ['Caliper 3', 'caliper', 'mm', '2020-01-01', 365, 150],
  ['Gauge 7', 'pressure gauge', 'bar', '2020-01-01', 36500, 1000],
];

const RECORDS: readonly (readonly FakeCell[])[] = [
  ['Date', 'Order', 'Assembly', 'Piece', 'End', 'Hose lot', 'Caliper'],
  ['2026-10-01', 'B-1', 'P', '1', 'A', 'L70, L71', 'Caliper 3'],
  ['2026-10-01', 'B-2', 'P', '2', 'A', '', 'Caliper 3'],
];

function open(View: typeof RecallView, sheets: Record<string, readonly (readonly FakeCell[])[]>, address = 'A1') {
  const fake = fakeWorkbook(sheets, { sheet: Object.keys(sheets)[0]!, address });
  render(
    <FluentProvider theme={webLightTheme}>
      <View {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  return fake;
}
const fill = (label: RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const press = async (name: string) => {
  const button = screen.getByRole('button', { name });
  for (let wait = 0; wait < 40 && (button as HTMLButtonElement).disabled; wait += 1)
    await new Promise(done => setTimeout(done, 25));
  fireEvent.click(button);
};

describe('recall', () => {
  test('a lot: pieces, orders, what cannot be excluded, and a sheet of it', async () => {
    const { workbook } = open(RecallView, { Pieces: PIECES, Gauges: GAUGES });
    await screen.findByRole('region', { name: 'What was read of Pieces' });
    fill(/^Lot number/, 'l70');
    fireEvent.change(screen.getByLabelText('Lot of'), { target: { value: 'hose' } });
    await press('Find');
    expect(await screen.findByText('1 piece of 1 order, 0 rows of records. 1 piece cannot be excluded.')).toBeTruthy();
    expect(screen.getByRole('region', { name: 'Recalled' }).textContent).toContain('P-2, done, order B-2: no hose lot');
    await press('Write as a new sheet');
    await screen.findByText('Written: Recall.');
    expect((await workbook.used('Recall'))!.values[0]![0]).toBe('Recall: Lot l70');
  });

  test('a caliper that read 0.03 mm too high: the verdict that changes is named', async () => {
    open(RecallView, { Pieces: PIECES, Gauges: GAUGES });
    await screen.findByRole('region', { name: 'What was read of Pieces' });
    fireEvent.click(screen.getByRole('radio', { name: 'Gauge or die' }));
    fill(/^Gauge$/, 'Caliper 3');
    fill(/^It read too high by/, '0,03 mm');
    await press('Find');
    expect(await screen.findByText('P-1, end A: TIGHT (was IN SPEC), true mean 24.77 mm')).toBeTruthy();
  });

  test('a gauge of which nobody knows what it measures: its error needs a unit', async () => {
    open(RecallView, { Pieces: PIECES });
    await screen.findByRole('region', { name: 'What was read of Pieces' });
    fireEvent.click(screen.getByRole('radio', { name: 'Gauge or die' }));
    fill(/^Gauge$/, 'Caliper 3');
    fill(/^It read too high by/, '0,03');
    await press('Find');
    expect(await screen.findByText(/sheet Gauges does not say\. Enter the unit, too/)).toBeTruthy();
    fill(/^It read too high by/, '0,03 mm');
    await press('Find');
    expect(await screen.findByText('P-1, end A: TIGHT (was IN SPEC), true mean 24.77 mm')).toBeTruthy();
  });

  test('without a sheet Pieces it says what makes one', async () => {
    open(RecallView, { Jobs: [['a']] });
    expect(await screen.findByText(/There is no sheet Pieces/)).toBeTruthy();
    fill(/^Lot number/, 'L70');
    await press('Find');
    expect(await screen.findByText(/^Nothing was searched: there is neither/)).toBeTruthy();
  });

  test('without a sheet Pieces the records are searched, and what is missing is said', async () => {
    const { workbook } = open(RecallView, { Jobs: [['a']], 'Inspection records': RECORDS });
    expect((await screen.findByText(/There is no sheet Pieces/)).textContent).toMatch(
      /Only sheet Inspection records is searched: pieces without a record, and readings on other sheets, are not\./,
    );
    fill(/^Lot number/, 'L70');
    fireEvent.change(screen.getByLabelText('Lot of'), { target: { value: 'hose' } });
    await press('Find');
    expect(await screen.findByText('0 pieces of 1 order, 1 row of records. 1 row of records cannot be excluded.')).toBeTruthy();
    expect(screen.getByRole('region', { name: 'Recalled' }).textContent).toContain('Records: Row 3: P 2: no hose lot');
    await press('Write as a new sheet');
    await screen.findByText('Written: Recall.');
    const written = (await workbook.used('Recall'))!.values.map(row => String(row[0]));
    expect(written.find(text => text.startsWith('From sheet'))).toMatch(/^From sheet Inspection records, .*\. No sheet Pieces$/);
  });
});

describe('gauges', () => {
  test('overdue ones first, and a pressure gauge that reads a test pressure badly', async () => {
    open(GaugesView, { Pieces: PIECES, Gauges: GAUGES });
    expect(await screen.findByText('1 of 2 gauges must not be used for a record.')).toBeTruthy();
    expect(screen.getByText(/Gauge 7 reads at the top of its range 900 bar/)).toBeTruthy();
  });

  test('a sheet is added where there is none', async () => {
    const { workbook } = open(GaugesView, { Jobs: [['a']] });
    fireEvent.click(await screen.findByRole('button', { name: 'Add sheet Gauges' }));
    await screen.findByText(/Sheet Gauges added/);
    expect((await workbook.used('Gauges'))!.values[0]!.slice(0, 4)).toEqual(['Gauge', 'Kind', 'Unit', 'Checked']);
  });

  test('a study of the selected readings; too few say so', async () => {
    open(
      GaugesView,
      {
        Book: [
          [10, 10.02],
          [11, 11.02],
          [12, 11.98],
        ],
      },
      'A1:B3',
    );
    fill(/^Tolerance, full width/, '0.6');
    fill(/^Reference/, '10');
    fireEvent.click(screen.getByRole('button', { name: 'Study by one person' }));
    expect(await screen.findByText(/Repeatability 14.1 % of the tolerance/)).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Check on the reference' }));
    expect(await screen.findByText(/take ten or more/)).toBeTruthy();
  });

  test('a reference that cannot belong to the readings is doubted', async () => {
    const readings = Array.from({ length: 10 }, (_, index) => [25 + (index % 2) / 100]);
    open(GaugesView, { Book: readings }, 'A1:A10');
    fill(/^Tolerance, full width/, '0.6');
    fill(/^Reference/, '2,5');
    fireEvent.click(screen.getByRole('button', { name: 'Check on the reference' }));
    expect(await screen.findByText(/differ from the reference 2\.5 by more than 20 %/)).toBeTruthy();
  });

  test('a check or a study of nothing asks for the readings', async () => {
    open(
      GaugesView,
      {
        Book: [
          ['Part', 'Reading'],
          ['', ''],
          ['', ''],
        ],
      },
      'A2:B3',
    );
    fill(/^Tolerance, full width/, '0.6');
    fill(/^Reference/, '10');
    fireEvent.click(screen.getByRole('button', { name: 'Study by one person' }));
    expect(await screen.findByText(/^Select the readings of the study first/)).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Check on the reference' }));
    expect(await screen.findByText(/^Select the readings first/)).toBeTruthy();
  });
});
