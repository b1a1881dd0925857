/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen } from '@testing-library/react';
import type { ComponentType } from 'react';
import type { ViewProps } from '../../../src/taskpane/controls/viewProps';
import { AnalysisView } from '../../../src/taskpane/qa/AnalysisView';
import { PurchaseView } from '../../../src/taskpane/quote/PurchaseView';
import { QuoteView } from '../../../src/taskpane/quote/QuoteView';
import { CardsView } from '../../../src/taskpane/week/CardsView';
import { OrderView } from '../../../src/taskpane/week/OrderView';
import { TagsView } from '../../../src/taskpane/week/TagsView';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';

beforeEach(() => localStorage.clear());

const JOBS = [
  ['Hose', 'Coupling A', 'Coupling B', 'Cut length (mm)', 'Qty'],
  ['Larch DN 12', 'cone', 'cone', 900, 4],
  ['Larch DN 12', 'cone', '', 700, 2],
];

const shown = (View: ComponentType<ViewProps>) => {
  const { workbook } = fakeWorkbook({ Jobs: JOBS }, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <View {...viewProps(workbook)} />
    </FluentProvider>,
  );
};
const ONE_COUPLING = 'Lines with one coupling: the other end stays plain hose';

test.each<[string, ComponentType<ViewProps>]>([
  ['To buy', PurchaseView],
  ['Order', OrderView],
  ['Cards', CardsView],
  ['Tags', TagsView],
])('%s asks about lines with one coupling, and takes them', async (_, View) => {
  shown(View);
  await screen.findByText(/1 row taken; left out: 1 STOP/);
  fireEvent.click(screen.getByLabelText(ONE_COUPLING));
  expect(await screen.findByText(/2 rows taken/)).toBeTruthy();
});

test('Quote asks about them, too, and says that no function gives their price', async () => {
  shown(QuoteView);
  await screen.findByText(/1 row taken; left out: 1 STOP/);
  fireEvent.click(screen.getByLabelText(ONE_COUPLING));
  expect(await screen.findByText(/one coupling only: price it by hand/)).toBeTruthy();
  expect(screen.getByText(/1 row taken; left out: 1 STOP/)).toBeTruthy();
});

test('rows that were appended without our formulas are filled from where they are read', async () => {
  const rows = [
    ['Hose', 'Overall (mm)', 'Cut length (mm)', 'Qty'],
    ['Larch DN 12', 900, { formula: '=HOSE.CUTLENGTH(B2,40,40)', value: 820 }, 4],
    ['Larch DN 12', 700, '', 2],
  ];
  const { workbook, written } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <CardsView {...viewProps(workbook)} />
    </FluentProvider>,
  );
  expect(await screen.findByText('1 row has no formulas')).toBeTruthy();
  fireEvent.click(screen.getByText('Fill them'));
  expect(await screen.findByText(/Filled Cut length \(mm\) in rows 3 of sheet Jobs\./)).toBeTruthy();
  const formulas = written[0]!.filter(change => change.kind === 'formulas');
  expect(formulas).toEqual([
    { kind: 'formulas', at: { sheet: 'Jobs', address: 'C3' }, formulas: [['=HOSE.CUTLENGTH(B3,40,40)']] },
  ]);
});

test('readings: verdicts that rows lack are filled; what was typed there meanwhile is not overwritten', async () => {
  const verdict = (row: number) => ({ formula: `=HOSE.CRIMPCHECK(C${row}:D${row},A${row},B${row})`, value: 'IN SPEC' });
  const rows = [
    ['Target (mm)', 'Tolerance (mm)', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Verdict'],
    [25, 0.2, 25.1, 25.05, verdict(2)],
    [25, 0.2, 25.12, 25.08, ''],
  ];
  const { workbook, written } = fakeWorkbook({ Crimps: rows }, { sheet: 'Crimps', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <AnalysisView {...viewProps(workbook)} />
    </FluentProvider>,
  );
  expect(await screen.findByText('1 row has no formulas')).toBeTruthy();
  await workbook.write([{ kind: 'values', at: { sheet: 'Crimps', address: 'E3' }, values: [['seen']] }]);
  fireEvent.click(screen.getByText('Fill them'));
  expect(await screen.findByText(/has changed\. Read it again\. Nothing was written\./)).toBeTruthy();
  expect(written).toHaveLength(1);
});
