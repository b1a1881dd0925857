/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { act, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { FRESH_QUOTE } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { writeQuote } from '../../../src/sheets/quote/writeQuote';
import { PaperPanel } from '../../../src/taskpane/quote/PaperPanel';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { asStanding, demoQuotes } from '../../sheets/quote/demoQuotes';

beforeEach(() => localStorage.clear());

const { settings } = readQuoteSettings({ ...FRESH_QUOTE, margin: '40 %', isLinked: false }, [], '0.00');

async function open(hasQuote: boolean, newest?: string) {
  const first = fakeWorkbook(demoQuotes(), { sheet: 'Jobs', address: 'A2' });
  await writeQuote(first.workbook, settings!, undefined, '2026-10-05');
  const sheets = { ...demoQuotes(), ...(hasQuote && asStanding(first.written[0]!)) };
  const fake = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <PaperPanel workbook={fake.workbook} newest={newest} />
    </FluentProvider>,
  );
  await act(async () => void (await new Promise(resolve => setTimeout(resolve, 20))));
  return fake;
}

const WRITE = 'Write the quote for the customer';
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }));
const fill = (label: string, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

test('a workbook without a quote is asked for nothing', async () => {
  await open(false);
  expect(screen.queryByRole('button')).toBeNull();
});

test('a quote that was just written is offered at once, before it can be read', async () => {
  await open(false, 'Quote');
  expect(screen.getByRole('button', { name: WRITE })).toBeTruthy();
});

test('what is missing is said and read out, and nothing is written', async () => {
  const { written } = await open(true);
  await screen.findByRole('button', { name: WRITE });
  press(WRITE);
  const words = await screen.findByText(/Your name is blank/);
  expect(words.closest('[role=status]')).not.toBeNull();
  expect(written).toEqual([]);
});

test('the paper is one new sheet; the number counts up, own name and columns are kept', async () => {
  const { written } = await open(true);
  await screen.findByRole('button', { name: WRITE });
  fill('Your name', 'Beet harvest workshop (invented)');
  fill('Quote number', '2026-001');
  press('Columns of the paper');
  fireEvent.click(await screen.findByLabelText('Length tolerance'));
  press(WRITE);
  await waitFor(() => expect(written).toHaveLength(1));
  expect(written[0]!.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []))).toEqual(['Quote 2026-001']);
  // Drawings where the catalogue knows the angles of both couplings, with words for who cannot see them.
  const pictures = written[0]!.flatMap(change => (change.kind === 'picture' ? [change] : []));
  expect(pictures.map(({ alt }) => alt)).toEqual(expect.arrayContaining(['Line 1: assembly with its overall length']));
  for (const { svg } of pictures) expect(svg).not.toMatch(/undefined|NaN/);
  expect(JSON.stringify(written[0])).not.toContain('Tolerance');
  await waitFor(() => expect(screen.getByLabelText('Quote number')).toHaveProperty('value', '2026-002'));
  const list = (await screen.findByText('Quotes that were sent')).parentElement!;
  expect(within(list).getByText('Quote 2026-001')).toBeTruthy();
  const kept = JSON.parse(localStorage.getItem('benchrow.quotePaper')!) as object;
  expect(kept).toMatchObject({ ownName: 'Beet harvest workshop (invented)', leftOut: ['use', 'tolerance'] });
});
