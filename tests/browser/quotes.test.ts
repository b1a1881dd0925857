import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { costParts, sampleLines, upToCents } from '../sheets/quote/independentCosts';
import { readXlsx } from './readSaved';
import { openPlace, openSheet, picture, settled, sidewaysAt320, tryOut, type TryOut } from './tryOut';

const SAMPLE = join(__dirname, '../../samples/catalogue.xlsx');

let opened: TryOut;
let page: Page;

const idle = () => settled(page);
const pane = () => page.getByRole('complementary', { name: 'Task pane' });
const press = (name: string) => pane().getByRole('button', { name, exact: true }).click();
const jobs = () => openSheet(page, 'Jobs');
const written = (sheet: string) => pane().getByRole('button', { name: sheet, exact: true }).waitFor();

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 900 }, readFileSync(SAMPLE));
  ({ page } = opened);
  await openPlace(page, 'quote/quote');
});

afterAll(() => opened?.close());

describe('tab Quote on the try-out page', () => {
  it('writes a quote from the job lines and names the lines that should not be made', async () => {
    await jobs();
    await pane().getByLabel('Customer', { exact: true }).fill('Neighbour (invented)');
    await pane()
      .getByLabel(/^Margin/)
      .fill('40 %');
    await press('Write the quote as a new sheet');
    await written('Quote');
    expect(await pane().getByText('STOP, not quoted: lines of Jobs').count()).toBe(1);
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await press('Quote');
    await idle();
    await picture(page, 'quotes-quote.png');
  });

  it('writes what to buy', async () => {
    await jobs();
    await openPlace(page, 'quote/to-buy');
    await press('Write the purchase list as a new sheet');
    await written('Purchase list');
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await press('Purchase list');
    await idle();
    await picture(page, 'quotes-buy.png');
  });

  it('checks the catalogue, and a finding leads to its cell', async () => {
    await openPlace(page, 'parts/checks');
    await press('Check the catalogue');
    await pane()
      .getByText(/findings? in 48 hoses|Nothing to correct/)
      .waitFor();
    expect(
      await pane()
        .getByText(/no table has a column of dates/)
        .count(),
    ).toBe(1);
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await picture(page, 'quotes-checks.png');
  });

  it('compares the quote with a rise of prices', async () => {
    await openPlace(page, 'quote/what-if');
    await pane()
      .getByRole('checkbox', { name: /^Quote, Neighbour/ })
      .waitFor();
    await pane().getByLabel('All (%)').fill('5');
    await press('Write the comparison as new sheets');
    await written('What-if');
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await press('What-if');
    await idle();
    await picture(page, 'quotes-whatif.png');
  });

  it('saves the quote with right numbers, print area and headings on every page', async () => {
    await idle();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as .xlsx' }).click(),
    ]);
    const book = await readXlsx(await download.createReadStream());
    const quote = book.getWorksheet('Quote')!;
    const shown = (cell: string) => {
      const { value } = quote.getCell(cell);
      return typeof value === 'object' && value && 'result' in value ? value.result : value;
    };
    const headings = (quote.getRow(12).values as unknown[]).map(cell =>
      typeof cell === 'object' && cell && 'result' in cell ? cell.result : cell,
    );
    const letter = (heading: string) => quote.getColumn(headings.indexOf(heading)).letter;
    const prices = sampleLines.map((_, row) => shown(`${letter('Price each')}${13 + row}`));
    const wanted = sampleLines.map((line, index) => {
      // Too short, and a coupling of another family: what must not be made has no price.
      if (index === 6 || index === 8) return 'no price';
      const { hose, fittings, labour } = costParts(line);
      return upToCents((hose + fittings + labour) / 0.6);
    });
    expect(prices).toEqual(wanted);
    const after = book.getWorksheet('What-if')!;
    expect(after.pageSetup.orientation).toBe('landscape');
    expect(quote.pageSetup).toMatchObject({ orientation: 'landscape', printTitlesRow: '12:12', fitToWidth: 1 });
    // Costs and margin have a sheet of their own.
    expect(headings.filter(heading => /cost|, each|margin/i.test(String(heading)))).toEqual([]);
    expect(book.getWorksheet('Quote costs')!.getCell('A1').value).toMatch(/^Cost and margin/);
    expect(quote.pageSetup.printArea).toMatch(new RegExp(`^A1:${letter('Note')}\\d+$`));
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
