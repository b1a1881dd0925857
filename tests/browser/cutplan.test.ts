import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook } from 'exceljs';
import type { Browser, Page } from 'playwright-core';
import { launch } from './launch';
import { serveDist } from './serveDist';
import { openFile, openPage, openPlace } from './tryOut';

const officeJs = join(__dirname, '../../node_modules/@microsoft/office-js/dist');
const CDN = 'https://appsforoffice.microsoft.com/lib/1/hosted/';

let browser: Browser;
let server: Awaited<ReturnType<typeof serveDist>>;

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), serveDist()]);
});

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

interface ShopCase {
  readonly pieces: readonly { len: number; qty: number }[];
  readonly stock: readonly { len: number; qty: number }[];
}

/** A job sheet and a rack on which the solver works for seconds: the same shop case for two hoses. */
async function longJob(): Promise<Buffer> {
  const file = join(__dirname, '../cases/cutting/shop/shop-mid-1.json');
  const { pieces, stock } = JSON.parse(readFileSync(file, 'utf8')) as ShopCase;
  const hoses = ['Larch DN 12', 'Alder DN 16'];
  const book = new Workbook();
  book
    .addWorksheet('Jobs')
    .addRows([
      ['Line', 'Hose', 'Quantity', 'Cut length (mm)'],
      ...hoses.flatMap(hose => pieces.map(({ len, qty }, index) => [`${hose} ${index + 1}`, hose, qty, len])),
    ]);
  book
    .addWorksheet('Rack')
    .addRows([
      ['Hose', 'Length (mm)', 'Quantity', 'Place'],
      ...hoses.flatMap(hose => stock.map(({ len, qty }, index) => [hose, len, qty, `A${index}`])),
    ]);
  return Buffer.from(await book.xlsx.writeBuffer());
}

test('progress tells best and bound, and stopping keeps the best so far of every hose', async () => {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, bypassCSP: true });
  const complaints: string[] = [];
  const workers: string[] = [];
  page.on('pageerror', error => complaints.push(error.message));
  page.on('worker', worker => workers.push(worker.url()));
  await openPage(page, server.url);
  await openFile(page, 'long.xlsx', await longJob());
  const pane = page.getByRole('complementary', { name: 'Task pane' });
  await openPlace(page, 'week/cut-list');
  await pane.getByLabel(/^Kerf/).fill('3');
  await pane.getByLabel(/^Squaring/).fill('25');
  await pane.getByLabel(/^Keep from/).fill('500');
  await pane.getByRole('button', { name: 'Plan the cuts' }).click();
  await pane.getByText(/^Best so far takes [\d.]+ m; no plan can take less than [\d.]+ m\.$/).waitFor();
  expect(workers.some(url => url.endsWith('cutplan-worker.js'))).toBe(true);
  await pane.getByRole('button', { name: 'Stop and keep the best so far' }).click();
  for (const hose of ['Larch DN 12', 'Alder DN 16']) {
    const region = pane.getByRole('region', { name: hose });
    await region.waitFor();
    await region.getByText(/^At most [\d.]+ % over the best possible\./).waitFor();
    expect(await region.getByRole('img', { name: /to scale/ }).count()).toBeGreaterThan(5);
  }
  expect(complaints).toEqual([]);
  await page.close();
});

/** CUTPLAN of the built script in the real runtime of custom functions, with or without workers. */
async function cutPlanIn(page: Page, hasWorkers: boolean): Promise<{ table: unknown; workers: number }> {
  let workers = 0;
  page.on('worker', () => workers++);
  await page.route(`${CDN}**`, route =>
    route.fulfill({ path: join(officeJs, route.request().url().split('?')[0]!.slice(CDN.length)) }),
  );
  if (!hasWorkers) await page.addInitScript(() => delete (globalThis as any).Worker);
  await page.goto(`${server.url}help.html`);
  await page.addScriptTag({ url: `${CDN}custom-functions-runtime.js` });
  await page.addScriptTag({ url: `${server.url}functions.js` });
  const table = await page.evaluate(() => {
    const { CUTPLAN } = (globalThis as any).CustomFunctions._association.mappings;
    return CUTPLAN([[1250], [840]], [[3], [2]], [[6000]], [['']], [[3]], null, null, null, null, null, {});
  });
  return { table, workers };
}

test.each([
  ['in a worker where there are any', true],
  ['on its own where there are none', false],
])('the built CUTPLAN plans %s', async (_, hasWorkers) => {
  // The runtime comes from Microsoft's host: the help page's own policy is tested in contentSecurity.test.ts.
  const page = await browser.newPage({ bypassCSP: true });
  const { table, workers } = await cutPlanIn(page, hasWorkers);
  expect(table).toEqual([
    ['Stock', 'Times', 'Cuts', 'Used', 'Left'],
    [6000, 1, '3 x 1250 + 2 x 840', 5445, 555],
    ['Total', 1, 'proven best', 5445, 555],
  ]);
  expect(workers).toBe(hasWorkers ? 1 : 0);
  await page.close();
});
