/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import type { ComponentType } from 'react';
import { cleanup, act, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import type { Change } from '../../../src/workbook/workbook';
import type { ViewProps } from '../../../src/taskpane/controls/viewProps';
import { PurchaseView } from '../../../src/taskpane/quote/PurchaseView';
import { QuoteView } from '../../../src/taskpane/quote/QuoteView';
import { WhatIfView } from '../../../src/taskpane/quote/WhatIfView';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';
import { demoQuotes } from '../../sheets/quote/demoQuotes';

beforeEach(() => localStorage.clear());

async function open(View: ComponentType<ViewProps>, sheets: Record<string, FakeCell[][]> = demoQuotes(), address = 'A2') {
  const fake = fakeWorkbook(sheets, { sheet: 'Jobs', address });
  render(
    <FluentProvider theme={webLightTheme}>
      <View {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  // What the view looks for when it opens has been found.
  await act(async () => void (await new Promise(resolve => setTimeout(resolve, 20))));
  return fake;
}

/** Waits until the view has followed the selection. */
const settled = () => act(async () => void (await new Promise(resolve => setTimeout(resolve, 200))));
const fill = (label: string | RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }));
const added = (changes: readonly Change[]) => changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []));

describe('quote', () => {
  test('a blank margin is asked for, nothing is written', async () => {
    const { written } = await open(QuoteView);
    press('Write the quote as a new sheet');
    expect(await screen.findByText(/Margin is blank: enter a share/)).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByLabelText(/^Margin/));
    expect(written).toEqual([]);
  });

  test('one new sheet in one batch; lines left out and lines to look at are named', async () => {
    const { written, workbook } = await open(QuoteView);
    fill(/^Margin/, '40 %');
    press('Write the quote as a new sheet');
    await waitFor(() => expect(written).toHaveLength(1));
    expect(added(written[0]!)).toEqual(['Quote', 'Quote costs']);
    expect(written[0]!.every(change => change.kind === 'addSheet' || JSON.stringify(change).includes('"sheet":"Quote'))).toBe(
      true,
    );
    const stops = (await screen.findByText('STOP, not quoted: lines of Jobs')).parentElement!;
    expect(stops.textContent).toMatch(/no crimp data for Willow DN 25 .* do not assemble/);
    expect(stops.textContent).toMatch(/overall length is blank/);
    fireEvent.click(within(stops).getByText('Row 4'));
    expect(await workbook.selection()).toMatchObject({ sheet: 'Jobs', address: 'A4' });
  });

  test('rows that hold texts do not follow the job sheet: they are named once the quote is written', async () => {
    const sheets = demoQuotes();
    sheets.Jobs![1]![5] = '1,25 m';
    sheets.Jobs![4]![6] = '2';
    const { written } = await open(QuoteView, sheets);
    fill(/^Margin/, '40 %');
    press('Write the quote as a new sheet');
    await waitFor(() => expect(written).toHaveLength(1));
    expect(await screen.findByText('Row 2 does not follow the job sheet: its length is a text.')).toBeTruthy();
    expect(screen.getByText('Row 5 does not follow the job sheet: its quantity is a text.')).toBeTruthy();
  });

  test('lines of several customers and lines that are done are told before anything is written', async () => {
    const sheets = demoQuotes();
    const more = [
      ['Customer', 'Status'],
      ['Harvest', ''],
      ['', ''],
      ['', ''],
      ['Miller', 'done'],
    ];
    await open(QuoteView, { ...sheets, Jobs: sheets.Jobs!.map((row, at) => [...row, ...more[at]!]) });
    await settled();
    expect(await screen.findByText(/^These lines are for 2 customers: Harvest, Miller\. Select the lines of one/)).toBeTruthy();
    expect(screen.getByText(/2 rows taken; left out: 2 STOP\. 1 of them is done by the status column\./)).toBeTruthy();
  });

  test('the rating of each line is shown before anything is written, with what has not been checked', async () => {
    await open(QuoteView);
    await settled();
    fireEvent.click(await screen.findByRole('button', { name: 'Ratings of 2 lines, fluid not checked in 2' }));
    const ratings = await screen.findByRole('list', { name: 'Ratings' });
    expect(ratings.textContent).toContain('Row 2: Alder DN 12, 250 bar; temperature not stated: not derated; fluid not checked');
    expect(screen.getByText(/the weakest part, surges included/)).toBeTruthy();
  });

  test('the terms are kept for the next quote, the customer is not', async () => {
    await open(QuoteView);
    fill(/^Customer$/, 'Neighbour (invented)');
    fill(/^Call-out/, '35');
    cleanup();
    await open(QuoteView);
    expect(screen.getByLabelText(/^Call-out/)).toHaveProperty('value', '35');
    expect(screen.getByLabelText(/^Customer$/)).toHaveProperty('value', '');
  });

  test('a sheet for margins is made on request, and a class of it can be chosen', async () => {
    const sheets = demoQuotes();
    const { written } = await open(QuoteView, sheets);
    press('Make a sheet for margins by customer class');
    await waitFor(() => expect(written).toHaveLength(1));
    expect(added(written[0]!)).toEqual(['Margins']);
    expect(await screen.findByRole('button', { name: 'Margins' })).toBeTruthy();
  });

  test('classes of a sheet are offered with their margins', async () => {
    await open(QuoteView, {
      ...demoQuotes(),
      Margins: [
        ['Class', 'Margin'],
        ['Dealer', 0.3],
        ['Neighbour', ''],
      ],
    });
    expect(await screen.findByRole('option', { name: 'Dealer: 30 %' })).toBeTruthy();
    expect(screen.getByRole('option', { name: 'Neighbour: no margin' })).toBeTruthy();
  });

  test('a class that has got another margin since shows it once its sheet was left', async () => {
    const { workbook } = await open(QuoteView, {
      ...demoQuotes(),
      Margins: [
        ['Class', 'Margin'],
        ['Dealer', 0.3],
      ],
    });
    await screen.findByRole('option', { name: 'Dealer: 30 %' });
    await workbook.select({ sheet: 'Margins', address: 'B2' });
    await settled();
    await workbook.write([{ kind: 'values', at: { sheet: 'Margins', address: 'B2' }, values: [[1.3]] }]);
    await workbook.select({ sheet: 'Jobs', address: 'A2' });
    expect(await screen.findByRole('option', { name: 'Dealer: no margin' })).toBeTruthy();
  });

  test('a class that has lost its margin while the quote was being filled in is named, and nothing is written', async () => {
    const { workbook, written } = await open(QuoteView, {
      ...demoQuotes(),
      Margins: [
        ['Class', 'Margin'],
        ['Dealer', 0.3],
      ],
    });
    await screen.findByRole('option', { name: 'Dealer: 30 %' });
    fireEvent.change(screen.getByLabelText('Customer class'), { target: { value: 'Dealer' } });
    await workbook.write([{ kind: 'values', at: { sheet: 'Margins', address: 'B2' }, values: [['']] }]);
    press('Write the quote as a new sheet');
    expect(await screen.findByText(/class Dealer has no margin/)).toBeTruthy();
    expect(written).toHaveLength(1);
  });

  test('without parts data it says so', async () => {
    const { Jobs } = demoQuotes();
    const { written } = await open(QuoteView, { Jobs: Jobs! });
    fill(/^Margin/, '40 %');
    press('Write the quote as a new sheet');
    expect(await screen.findByText(/No parts data: no cell of this workbook holds =HOSE.CATALOGUE/)).toBeTruthy();
    expect(written).toEqual([]);
  });

  test('without a job table it says what to select', async () => {
    await open(QuoteView, { ...demoQuotes(), Jobs: [['nothing here']] }, 'A1');
    fill(/^Margin/, '40 %');
    press('Write the quote as a new sheet');
    expect((await screen.findAllByText(/Sheet Jobs has no table with a column for the hose/)).length).toBeGreaterThan(0);
  });
});

describe('what was read', () => {
  test('rows taken and left out are told before anything is written, with ticks and corrections', async () => {
    const fake = fakeWorkbook(demoQuotes(), { sheet: 'Jobs', address: 'A2' }, { hiddenRows: { Jobs: [4] } });
    render(
      <FluentProvider theme={webLightTheme}>
        <QuoteView {...viewProps(fake.workbook)} />
      </FluentProvider>,
    );
    expect(await screen.findByText('Jobs A1:G5: 1 row taken; left out: 2 STOP, 1 hidden or filtered out')).toBeTruthy();
    fireEvent.click(screen.getByRole('checkbox', { name: 'Take hidden rows, too' }));
    expect(await screen.findByText('Jobs A1:G5: 2 rows taken; left out: 2 STOP')).toBeTruthy();
    expect(screen.getByText('Columns read')).toBeTruthy();
  });
});

describe('to buy', () => {
  test('by length and scrap, in one new sheet; a line that cannot be read is named', async () => {
    const { written } = await open(PurchaseView);
    press('Write the purchase list as a new sheet');
    await waitFor(() => expect(written).toHaveLength(1));
    expect(added(written[0]!)).toEqual(['Purchase list']);
    const stops = (await screen.findByText('STOP, nothing bought for these lines')).parentElement!;
    expect(stops.textContent).toMatch(/overall length is blank/);
    expect(stops.textContent).toMatch(/no crimp data for Willow DN 25/);
  });

  test('a cut list that stands is offered, and chosen where nothing else was', async () => {
    const list: FakeCell[][] = [
      ['Cut list'],
      ['From sheet Jobs (1 lines) and rack Rack, 2026-10-04'],
      ['Kerf 3 mm.'],
      [],
      ['Done', 'Cut', 'Reel', 'Hose', 'Place', 'Lot', 'Cut length (mm)', 'Line', 'Label', 'Piece'],
      ...[1, 2, 3, 4].map(piece => ['☐', piece, 1, 'Alder DN 12', 'A1', '', 1174.5, 1, '', `${piece} of 4`]),
    ];
    const { written } = await open(PurchaseView, { ...demoQuotes(), 'Cut list': list });
    expect(await screen.findByRole('radio', { name: 'the cut list already written (Cut list)' })).toHaveProperty('checked', true);
    press('Write the purchase list as a new sheet');
    await waitFor(() => expect(written).toHaveLength(1));
    const texts = JSON.stringify(written[0]);
    expect(texts).toContain('sheet Cut list: cut from 1 piece of the rack, nothing to buy');
    expect(texts).toContain('not all of it stands in sheet Cut list');
  });

  test('a cut plan asks for the kerf', async () => {
    const { written } = await open(PurchaseView);
    fireEvent.click(screen.getByRole('radio', { name: 'a cut plan' }));
    press('Write the purchase list as a new sheet');
    expect(await screen.findByText(/^Kerf is blank/)).toBeTruthy();
    expect(written).toEqual([]);
  });
});

describe('what-if', () => {
  const H = ['Line', 'Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Quantity', 'Price each', 'Line total'];
  const quote = (validUntil: number): FakeCell[][] => [
    ['Quote', '', '', '', '', '', '', '', '', 'Working: not printed'],
    ['Customer', '', 'Neighbour', '', '', '', '', '', '', 'Customer class', ''],
    ['Valid until', '', validUntil, '', '', '', '', '', '', 'Margin', 0.4],
    ['', '', '', '', '', '', '', '', '', 'Prices rounded up to', 0.01],
    ['', '', '', '', '', '', '', '', '', 'Least price each', 0],
    [...H, '', 'Assembly', 'Cost each'],
    [1, 'Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12', 1250, 4, 50, 200, '', 'OK', 30],
  ];

  test('open quotes are compared in new sheets, ended ones only when asked for', async () => {
    const { written } = await open(WhatIfView, { ...demoQuotes(), Quote: quote(99_999), 'Quote 2': quote(40_000) });
    expect(await screen.findByRole('checkbox', { name: /^Quote, Neighbour, valid until/ })).toHaveProperty('checked', true);
    expect(screen.getByRole('checkbox', { name: /^Quote 2, Neighbour, ended/ })).toHaveProperty('checked', false);
    expect(screen.getByRole('button', { name: 'Write the comparison as new sheets' }).getAttribute('aria-disabled')).toBe('true');
    fill('All (%)', '5');
    fill('Birch (%)', 'much');
    expect(await screen.findByText('enter per cent, like 5')).toBeTruthy();
    fill('Birch (%)', '7');
    press('Write the comparison as new sheets');
    await waitFor(() => expect(written).toHaveLength(1));
    // All sheets are added before anything names them.
    expect(added(written[0]!)).toEqual(['What-if hoses', 'What-if fittings', 'What-if']);
    expect(written[0]!.slice(0, 3).every(change => change.kind === 'addSheet')).toBe(true);
    const touched = new Set(
      written[0]!.map(change => ('at' in change ? change.at.sheet : 'sheet' in change ? change.sheet : '')),
    );
    expect([...touched].sort()).toEqual(['What-if', 'What-if fittings', 'What-if hoses']);
  });

  test('without a quote it says so', async () => {
    await open(WhatIfView);
    expect(await screen.findByText(/There is no quote in this workbook yet/)).toBeTruthy();
  });
});
