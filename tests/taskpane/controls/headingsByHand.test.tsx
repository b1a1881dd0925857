/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import type { ComponentType } from 'react';
import { EntryView } from '../../../src/taskpane/bench/EntryView';
import type { ViewProps } from '../../../src/taskpane/controls/viewProps';
import { AnalysisView } from '../../../src/taskpane/qa/AnalysisView';
import { GaugesView } from '../../../src/taskpane/qa/GaugesView';
import { RecallView } from '../../../src/taskpane/qa/RecallView';
import { RecordsView } from '../../../src/taskpane/qa/RecordsView';
import { PurchaseView } from '../../../src/taskpane/quote/PurchaseView';
import { QuoteView } from '../../../src/taskpane/quote/QuoteView';
import { CardsView } from '../../../src/taskpane/week/CardsView';
import { CutPlanView } from '../../../src/taskpane/week/CutPlanView';
import { OrderView } from '../../../src/taskpane/week/OrderView';
import { TagsView } from '../../../src/taskpane/week/TagsView';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { columnField } from '../columnField';
import { viewProps } from '../viewProps';

beforeEach(() => localStorage.clear());

type Rows = readonly (readonly FakeCell[])[];

const JOBS: Rows = [
  ['Zakázka', 'Sklizeň řepy', '', ''],
  ['', '', '', ''],
  ['Hadice', 'Poznámka', 'Délka (mm)', 'Kusů'],
  ['Olše 12', 'spěchá', 850, 4],
  ['Olše 12', '', 1200, 2],
];
const SAID_OF_JOBS = { 'A: Hadice': 'hose', 'C: Délka (mm)': 'cutLength', 'D: Kusů': 'quantity' };
const TWO_ROWS = /2 rows taken/;

const READINGS: Rows = [
  ['Hadice', 'Koncovka', 'Předpis (mm)', 'Úchylka (mm)', 'Průměr I', 'Průměr II'],
  ['Olše 12', 'rovná', 25.4, 0.2, 25.41, 25.38],
  ['Olše 12', 'koleno', 25.4, 0.2, 25.7, 25.72],
];
const SAID_OF_READINGS = {
  'A: Hadice': 'hose',
  'B: Koncovka': 'fitting',
  'C: Předpis (mm)': 'target',
  'D: Úchylka (mm)': 'tolerance',
  'E: Průměr I': 'reading',
  'F: Průměr II': 'reading',
};

function open(View: ComponentType<ViewProps>, sheets: Readonly<Record<string, Rows>>, sheet: string) {
  const { workbook } = fakeWorkbook(sheets, { sheet, address: 'A1' });
  render(
    <FluentProvider theme={webLightTheme}>
      <View {...viewProps(workbook)} />
    </FluentProvider>,
  );
  return workbook;
}

/** Says of each heading what it means, one after the other. */
async function say(said: Readonly<Record<string, string>>) {
  for (const [label, role] of Object.entries(said)) {
    // At once: a moment later a list that was read anew may have taken its place.
    await waitFor(() => fireEvent.change(columnField(label), { target: { value: role } }));
  }
}

describe('job lines under headings in another language', () => {
  test.each<[string, ComponentType<ViewProps>]>([
    ['Cards', CardsView],
    ['Tags', TagsView],
    ['Order', OrderView],
    ['Quote', QuoteView],
    ['To buy', PurchaseView],
  ])('%s', async (_, View) => {
    open(View, { Zakázky: JOBS }, 'Zakázky');
    const headings = await screen.findByRole('region', { name: 'Headings of Zakázky' });
    expect(headings.textContent).toContain('Still needed: Hose; Overall length or Cut length.');
    await say(SAID_OF_JOBS);
    expect((await screen.findAllByText(TWO_ROWS)).length).toBeGreaterThan(0);
    expect(screen.queryByRole('region', { name: 'Headings of Zakázky' })).toBeNull();
  });

  test('Cut list, with a rack in that language, too', async () => {
    const rack: Rows = [
      ['Hadice', 'Zbývá (m)', 'Regál'],
      ['Olše 12', 30, 'A1'],
    ];
    open(CutPlanView, { Zakázky: JOBS, Sklad: rack }, 'Zakázky');
    for (const [label, value] of [
      [/^Kerf/, '3'],
      [/^Squaring/, '0'],
      [/^Keep from/, '300'],
    ] as const) {
      fireEvent.change(screen.getByLabelText(label), { target: { value } });
    }
    fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
    await screen.findByText('Sklad');
    fireEvent.change(screen.getByLabelText('Or choose the sheet with your stock'), { target: { value: 'Sklad' } });
    await say({ 'A: Hadice': 'hose', 'B: Zbývá (m)': 'length' });
    expect(await screen.findByDisplayValue('Sklad')).toBeTruthy();
    await waitFor(() => expect(screen.queryByText('No rack yet')).toBeNull());
    fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
    await say(SAID_OF_JOBS);
    expect((await screen.findAllByText(TWO_ROWS)).length).toBeGreaterThan(0);
  });

  test('with several rows that may be headings, one is chosen', async () => {
    const rows: Rows = [['Stroj', 'Hodiny', 'Řádků', 'Šířka', 'Rok'], ['Sklízeč', 120, 6, 45, 2019], [], [], ...JOBS.slice(2)];
    open(CardsView, { Zakázky: rows }, 'Zakázky');
    fireEvent.change(await screen.findByLabelText('Heading row'), { target: { value: '5' } });
    await say(SAID_OF_JOBS);
    expect(await screen.findByText(TWO_ROWS)).toBeTruthy();
  });
});

describe('readings under headings in another language', () => {
  test('Analysis', async () => {
    open(AnalysisView, { Lisování: READINGS }, 'Lisování');
    await say(SAID_OF_READINGS);
    expect(await screen.findByText('2 crimps read from sheet Lisování.')).toBeTruthy();
  });

  test('Entry', async () => {
    const unfilled = READINGS.map((row, index) => (index === 0 ? row : [...row.slice(0, 4), '', '']));
    open(EntryView, { Lisování: unfilled }, 'Lisování');
    await say(SAID_OF_READINGS);
    expect(await screen.findByText('Sheet Lisování: 2 of 2 crimps wait for readings.')).toBeTruthy();
  });

  test('Records, of readings and of job lines', async () => {
    open(RecordsView, { Zakázky: JOBS }, 'Zakázky');
    fireEvent.click(await screen.findByLabelText('job lines'));
    await say(SAID_OF_JOBS);
    expect(await screen.findByText(TWO_ROWS)).toBeTruthy();
  });
});

test('gauges under headings in another language', async () => {
  const gauges: Rows = [
    ['Měřidlo', 'Ověřeno', 'Dnů'],
    ['Posuvka 1', '2026-01-10', 36500],
  ];
  open(GaugesView, { Gauges: gauges }, 'Gauges');
  await say({ 'A: Měřidlo': 'gauge', 'B: Ověřeno': 'checked', 'C: Dnů': 'every' });
  expect(await screen.findByText('1 gauges, none overdue.')).toBeTruthy();
});

test('pieces under headings in another language', async () => {
  const pieces: Rows = [
    ['Kus', 'Hadice', 'Délka (mm)'],
    ['Z1-1', 'Olše 12', 850],
  ];
  open(RecallView, { Pieces: pieces }, 'Pieces');
  await say({ 'A: Kus': 'piece', 'B: Hadice': 'hose' });
  expect(await screen.findByText(/1 row taken/)).toBeTruthy();
});

test('on a sheet of a kind that is known the list is folded: another sheet was meant', async () => {
  const machines: Rows = [
    ['Machine', 'Dial', 'Step', 'Note'],
    ['Crimper 1', 300, 0.1, ''],
  ];
  open(CardsView, { Machines: machines }, 'Machines');
  const headings = await screen.findByRole('region', { name: 'Headings of Machines' });
  expect(headings.querySelector('details')!.open).toBe(false);
});
