/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { act, fireEvent, render, screen, waitFor } from '@testing-library/react';
import type { Change } from '../../../src/workbook/workbook';
import { ChecksView } from '../../../src/taskpane/parts/ChecksView';
import { demoQuotes } from '../../sheets/quote/demoQuotes';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';

beforeEach(() => localStorage.clear());

async function open(sheets: Record<string, FakeCell[][]> = demoQuotes()) {
  const fake = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <ChecksView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  await act(async () => void (await new Promise(resolve => setTimeout(resolve, 20))));
  return fake;
}

const fill = (label: string, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
const added = (changes: readonly Change[]) => changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []));

test('findings lead to their cells and are written as a new sheet', async () => {
  const { written, workbook } = await open();
  press('Check the catalogue');
  expect(await screen.findByText('5 findings in 4 hoses, 7 fittings.')).toBeTruthy();
  expect(screen.getByText(/no table has a column of dates/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Alder oddment' }));
  expect(await workbook.selection()).toMatchObject({ sheet: 'Fittings' });
  press('Write the findings as a new sheet');
  await waitFor(() => expect(written).toHaveLength(1));
  expect(added(written[0]!)).toEqual(['Catalogue checks']);
});

test('rows with one cause are told once, and their place leads to all of them', async () => {
  const sheets = demoQuotes();
  sheets.Crimps!.push(...['a', 'b', 'c'].map(end => ['Yew DN 12', `Alder cone ${end}`, '', 'D23', 310, 23.4, 0.15, '', '', '']));
  const { workbook } = await open(sheets);
  press('Check the catalogue');
  expect(await screen.findByText(/Crimps, 3 rows: Hose "Yew DN 12" is not in the table Hoses/)).toBeTruthy();
  fireEvent.click(screen.getAllByRole('button', { name: 'rows 7–9' })[0]!);
  await waitFor(async () => expect(await workbook.selection()).toMatchObject({ sheet: 'Crimps', row: 6, column: 0 }));
});

test('dates are picked where a table has them', async () => {
  const sheets = demoQuotes();
  sheets.Fittings!.forEach((row, index) => (row[13] = index === 0 ? 'Price date' : '2024-03-01'));
  await open(sheets);
  press('Check the catalogue');
  fireEvent.change(await screen.findByLabelText('Dates of the prices'), { target: { value: 'Fittings: Price date' } });
  fill('Old if before', '2025-01-01');
  expect(await screen.findByText('Old prices: 6')).toBeTruthy();
});
