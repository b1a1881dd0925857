import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { Workbook } from 'exceljs';
import type { Page } from 'playwright-core';
import { readXlsx } from './readSaved';
import type { OtherFile } from './serveDist';
import { openPlace, openSheet, picture, sidewaysAt320, tryOut, type TryOut } from './tryOut';

const CATALOGUE = readFileSync(join(__dirname, '../../samples/catalogue.xlsx'));
const PATH = '/catalogue/current.xlsx';

/** What the host has beside the add-in at this moment. */
const others = new Map<string, OtherFile>();
let opened: TryOut;
let page: Page;

const pane = () => page.getByRole('complementary', { name: 'Task pane' });
const button = (name: string) => pane().getByRole('button', { name, exact: true });
const says = (text: string | RegExp) => pane().getByText(text).filter({ visible: true }).first().waitFor();
/** How often the office is spoken of in what the pane shows. */
const mentions = () =>
  pane()
    .getByText(/office/)
    .filter({ visible: true })
    .count();
const handle = async () =>
  (await pane().getByRole('group', { name: 'Catalogue of this workbook' }).getByText(/^CAT-/).textContent())!;

const bytesOf = async (book: Workbook) => Buffer.from(await book.xlsx.writeBuffer());

/** The sample's catalogue as the office keeps it, the first hose at another price. */
async function office(price?: number): Promise<Buffer> {
  const book = await readXlsx(Readable.from([CATALOGUE]));
  const hoses = book.getWorksheet('Hoses')!;
  const column = (hoses.getRow(1).values as string[]).findIndex(heading => /^Price per length/.test(heading));
  if (price !== undefined) hoses.getRow(2).getCell(column).value = price;
  return bytesOf(book);
}

async function save(): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as .xlsx' }).click(),
  ]);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

beforeAll(async () => {
  others.set(PATH, { body: await office(), etag: '"monday"' });
  opened = await tryOut({ width: 960, height: 800 }, CATALOGUE, others);
  ({ page } = opened);
});

afterAll(() => opened?.close());

describe('the office’s catalogue beside the try-out page', () => {
  let before = '';
  let saved: Buffer;

  it('is not mentioned above the views where the workbook has the same', async () => {
    await openPlace(page, 'parts/load');
    await says('Up to date with the office’s catalogue.');
    before = await handle();
    await openPlace(page, 'parts/search');
    expect(await mentions()).toBe(0);
  });

  it('at another price is offered and taken with one press: another handle, the old values kept', async () => {
    others.set(PATH, { body: await office(99.5), etag: '"tuesday"' });
    await opened.begin(CATALOGUE);
    await says('The office has a newer catalogue:');
    await button('Take it').waitFor();
    await says(/1 price\..*Old values go to Hoses \d{4}-\d\d-\d\d.*Crimp data: check them against the makers’ current data/);
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await picture(pane(), 'office-offer.png');
    await button('Take it').click();
    await says(/Old values: Hoses/);
    await button('Close').click();
    await openPlace(page, 'parts/load');
    await says('Up to date with the office’s catalogue.');
    await page.waitForFunction(old => !document.body.textContent!.includes(old), before);
    expect(await handle()).not.toBe(before);
    saved = await save();
    const book = await readXlsx(Readable.from([saved]));
    const price = (sheet: string) => {
      const rows = book.getWorksheet(sheet)!;
      const column = (rows.getRow(1).values as string[]).findIndex(heading => /^Price per length/.test(heading));
      return rows.getRow(2).getCell(column).value;
    };
    const copy = book.worksheets.find(({ name }) => /^Hoses \d/.test(name))!;
    expect(price('Hoses')).toBe(99.5);
    expect(price(copy.name)).not.toBe(99.5);
  });

  it('that changes again is known as newer by the saved file, and can be refused for good', async () => {
    others.set(PATH, { body: await office(101), etag: '"wednesday"' });
    await page.evaluate(() => localStorage.clear());
    await opened.begin(saved);
    await says('The office has a newer catalogue:');
    await button('Look at the changes').click();
    await says(/Hoses: 1 changed/);
    await says(/^Crimp data decide what holds under pressure/);
    await button('Replace the catalogue').waitFor();
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await picture(pane(), 'office-changes.png');
    await pane().getByRole('button', { name: 'Not for this workbook' }).click();
    const declined = await save();
    await opened.begin(declined);
    await openPlace(page, 'parts/load');
    await says('The office’s catalogue is not for this workbook.');
  });

  it.each<[string, OtherFile | 'offline', RegExp]>([
    ['offline', 'offline', /^The office’s catalogue cannot be reached \(no connection\)\. Nothing changes/],
    [
      'a page in place of the file',
      { body: '<!doctype html><title>Not found</title>', type: 'text/html' },
      /^The office’s catalogue is not used: catalogue\/current\.xlsx is a web page, not a workbook\.$/,
    ],
    [
      'a page that calls itself a workbook',
      { body: '<!doctype html><title>Not found</title>' },
      /^The office’s catalogue is not used: catalogue\/current\.xlsx is a web page/,
    ],
    [
      'a damaged file',
      { body: CATALOGUE.subarray(0, 5000) },
      /^The office’s catalogue is not used: catalogue\/current\.xlsx is not an \.xlsx file, or it is damaged\.$/,
    ],
  ])('%s: the workbook works on, and Load alone says why', async (_, given, sentence) => {
    if (given === 'offline') await page.route(`**${PATH}`, route => route.abort());
    else others.set(PATH, given);
    await opened.begin(CATALOGUE);
    await openPlace(page, 'parts/load');
    await says(sentence);
    expect(await handle()).toBe(before);
    await openPlace(page, 'parts/search');
    expect(await mentions()).toBe(0);
    await page.unroute(`**${PATH}`);
  });

  it('is offered to a workbook without parts data', async () => {
    others.set(PATH, { body: await office(), etag: '"monday"' });
    const book = new Workbook();
    book.addWorksheet('Week').addRows([['Line', 'Hose'], ['Topper lift']]);
    await opened.begin(await bytesOf(book));
    await says('No parts data yet. The office’s catalogue:');
    await button('Look at it').click();
    await pane()
      .getByRole('button', { name: /^Write the catalogue/ })
      .click();
    await says(/^Written/);
    await openSheet(page, 'Hoses');
  });

  it('makes the page complain about nothing', () => expect(opened.complaints).toEqual([]));
});
