/** @jest-environment jsdom */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import type { Change } from '../../../src/host/workbook';
import { QuotesPanel } from '../../../src/taskpane/quotes/QuotesPanel';
import { fakeWorkbook, type FakeCell } from '../fakeWorkbook';
import { demoQuotes } from './demoQuotes';

beforeEach(() => localStorage.clear());

function open(sheets: Record<string, FakeCell[][]> = demoQuotes(), address = 'A2') {
  const fake = fakeWorkbook(sheets, { sheet: 'Jobs', address });
  render(
    <FluentProvider theme={webLightTheme}>
      <QuotesPanel workbook={fake.workbook} functions={[]} />
    </FluentProvider>,
  );
  return fake;
}

const fill = (label: string | RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }));
const added = (changes: readonly Change[]) => changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []));

describe('quote', () => {
  test('a blank margin is asked for, nothing is written', async () => {
    const { written } = open();
    press('Write the quote as a new sheet');
    expect(await screen.findByText(/margin is blank: enter a share/)).toBeTruthy();
    expect(written).toEqual([]);
  });

  test('one new sheet in one batch; lines left out and lines to look at are named', async () => {
    const { written, workbook } = open();
    fill(/^Margin/, '40 %');
    press('Write the quote as a new sheet');
    await waitFor(() => expect(written).toHaveLength(1));
    expect(added(written[0]!)).toEqual(['Quote']);
    expect(written[0]!.every(change => change.kind === 'addSheet' || JSON.stringify(change).includes('"sheet":"Quote"'))).toBe(
      true,
    );
    expect(await screen.findByText(/overall length is blank/)).toBeTruthy();
    expect(screen.getByText(/no crimp data for Willow DN 25 .* do not assemble/)).toBeTruthy();
    fireEvent.click(screen.getByText('Row 4'));
    expect(await workbook.selection()).toMatchObject({ sheet: 'Jobs', address: 'A4' });
  });

  test('a sheet for margins is made on request, and a class of it can be chosen', async () => {
    const sheets = demoQuotes();
    const { written } = open(sheets);
    press('Make a sheet for margins by customer class');
    await waitFor(() => expect(written).toHaveLength(1));
    expect(added(written[0]!)).toEqual(['Margins']);
  });

  test('classes of a sheet are offered with their margins', async () => {
    open({
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

  test('without parts data it says so', async () => {
    const { Jobs } = demoQuotes();
    const { written } = open({ Jobs: Jobs! });
    fill(/^Margin/, '40 %');
    press('Write the quote as a new sheet');
    expect(await screen.findByText(/No parts data: no cell of this workbook holds =HOSE.CATALOGUE/)).toBeTruthy();
    expect(written).toEqual([]);
  });

  test('without a job table it says what to select', async () => {
    open({ ...demoQuotes(), Jobs: [['nothing here']] }, 'A1');
    fill(/^Margin/, '40 %');
    press('Write the quote as a new sheet');
    expect(await screen.findByText(/Sheet Jobs has no table with the columns Hose, Fitting A/)).toBeTruthy();
  });
});
