import { FRESH_PAPER } from '../../../src/sheets/quote/paperFields';
import { FRESH_QUOTE } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { writePaper } from '../../../src/sheets/quote/writePaper';
import { writeQuote } from '../../../src/sheets/quote/writeQuote';
import { addressOf } from '../../../src/workbook/a1';
import { openSample } from './openSample';
import { BAR, rateFittingsInPsi } from './psiFittings';

jest.setTimeout(60_000);

let book: Awaited<ReturnType<typeof openSample>>;
beforeEach(async () => {
  book = await openSample();
  await rateFittingsInPsi(book.port);
  await book.calculate();
  await book.port.select({ sheet: 'Jobs', address: 'A10' });
});
afterEach(() => book.dispose());

async function quote() {
  const { settings } = readQuoteSettings({ ...FRESH_QUOTE, margin: '40 %' }, [], undefined);
  const { sheet, read } = await writeQuote(book.port, settings!, undefined, '2026-10-05');
  await book.calculate();
  return { sheet, lines: read.lines.length };
}

async function pressures(sheet: string, lines: number) {
  const { values } = await book.content(sheet);
  const head = values.findIndex(row => row.includes('Price each'));
  const at = values[head]!.indexOf('Working pressure (bar)');
  return { head, at, shown: values.slice(head + 1, head + 1 + lines).map(row => row[at]) };
}

const paper = (sheet: string) =>
  writePaper(book.port, sheet, { ...FRESH_PAPER, ownName: 'Beet harvest workshop (invented)', number: '2026-008' }, '2026-10-05');

test('a quote and its paper show converted ratings in whole bar, rounded down', async () => {
  const { sheet, lines } = await quote();
  const { shown } = await pressures(sheet, lines);
  expect(shown).toContain(207);
  expect(shown.filter(pressure => typeof pressure !== 'number' || pressure > BAR || !Number.isInteger(pressure))).toEqual([]);
  expect((await pressures(await paper(sheet), lines)).shown).toEqual(shown);
});

test('the paper of a quote that shows all decimals of a rating has it rounded down', async () => {
  const { sheet, lines } = await quote();
  const { head, at } = await pressures(sheet, lines);
  const address = addressOf({ row: head + 1, column: at, rows: 1, columns: 1 });
  await book.write([{ kind: 'values', at: { sheet, address }, values: [[BAR]] }]);
  expect((await pressures(await paper(sheet), lines)).shown[0]).toBe(207);
});
