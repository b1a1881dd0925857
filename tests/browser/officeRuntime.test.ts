import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { builtFile } from '../builtFile';
import { openInFakeExcel } from './fakeOffice';
import { launch } from './launch';
import { serveDist } from './serveDist';
import { sidewaysAt320 } from './tryOut';

/** Microsoft's own scripts, as the package @microsoft/office-js brings them. */
const officeJs = join(__dirname, '../../node_modules/@microsoft/office-js/dist');
const CDN = 'https://appsforoffice.microsoft.com/lib/1/hosted/';

let browser: Browser;
let server: Awaited<ReturnType<typeof serveDist>>;

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), serveDist()]);
});

afterAll(async () => {
  await browser.close();
  await server.close();
});

/** A page that gets Microsoft's files from the package where it asks the CDN for them; nothing else leaves this machine. */
async function openPage(
  cdn: 'from the package' | 'unreachable',
  bypassCSP = false,
): Promise<{ page: Page; complaints: string[] }> {
  const page = await browser.newPage({ viewport: { width: 320, height: 640 }, bypassCSP });
  const complaints: string[] = [];
  page.on('pageerror', error => complaints.push(String(error)));
  await page.route(/^https:/, route => {
    const url = route.request().url().split('?')[0]!;
    if (cdn === 'from the package' && url.startsWith(CDN)) return route.fulfill({ path: join(officeJs, url.slice(CDN.length)) });
    return route.abort();
  });
  return { page, complaints };
}

test('the real custom functions runtime takes our functions, and our errors are its own', async () => {
  const { page, complaints } = await openPage('from the package', true);
  // The help page takes no scripts; it only lends this test an address.
  await page.goto(`${server.url}help.html`);
  // The script looks at its own file name, so it is loaded by address.
  await page.addScriptTag({ url: `${CDN}custom-functions-runtime.js` });
  await page.addScriptTag({ url: `${server.url}functions.js` });
  const found = await page.evaluate(() => {
    const runtime = (globalThis as any).CustomFunctions;
    const mappings = runtime._association.mappings as Record<string, (...cells: unknown[]) => any>;
    const [[cut], [bad]] = mappings.CUTLENGTH!([[1200], ['x']], [[48.5], ['x']], [[52]], null);
    return {
      ids: Object.keys(mappings).sort(),
      cut,
      isItsOwn: bad instanceof runtime.Error,
      code: bad.code,
      known: Object.values(runtime.ErrorCode).includes(bad.code),
      message: bad.message,
    };
  });
  const { functions } = JSON.parse(readFileSync(builtFile('functions.json'), 'utf8'));
  expect(found).toEqual({
    ids: functions.map(({ id }: { id: string }) => id).sort(),
    cut: 1099.5,
    isItsOwn: true,
    code: '#VALUE!',
    known: true,
    message: 'overall length is "x": enter a length, like 12.5, 3/8 or 1 1/2',
  });
  expect(complaints).toEqual([]);
});

test('the pane with the real office.js, outside Excel, says plainly that it is not in Excel', async () => {
  const { page, complaints } = await openPage('from the package');
  await page.goto(`${server.url}taskpane.html`);
  await page.getByText('This page is not open in Excel').waitFor();
  expect(await page.evaluate(() => typeof (globalThis as any).Office.onReady)).toBe('function');
  expect(complaints).toEqual([]);
});

test('the pane without office.js says that it did not load, and what to do', async () => {
  const { page } = await openPage('unreachable');
  await page.goto(`${server.url}taskpane.html`);
  await page.getByText('Office.js did not load').waitFor();
  await page.getByText(/OFFICE_JS=local/).waitFor();
});

test('in an empty workbook of Excel the pane asks whose work it is, opens the sample whole, and is there again the next time', async () => {
  const page = await browser.newPage({ viewport: { width: 320, height: 640 } });
  const complaints: string[] = [];
  page.on('pageerror', error => complaints.push(String(error)));
  await openInFakeExcel(page, server.url, { Sheet1: [] });
  await page.getByRole('heading', { name: 'Which work is yours?' }).waitFor();
  await page.getByRole('button', { name: /^Shop office/ }).click();
  await page.getByRole('button', { name: 'Open the sample as a new workbook' }).click();
  await page.getByText(/Open Benchrow there, too/).waitFor();
  const [made, ...more] = await page.evaluate(() => (globalThis as any).createdWorkbooks as string[]);
  expect(Buffer.from(made!, 'base64').equals(readFileSync(builtFile('samples/workshop.xlsx')))).toBe(true);
  expect(more).toEqual([]);
  const file = await page.getByRole('link').getAttribute('href');
  expect((await fetch(file!)).status).toBe(200);
  expect(await sidewaysAt320(page)).toBe(0);
  await page.reload();
  await page.getByRole('button', { name: 'Go on with my own sheet' }).click();
  await page.getByRole('tab', { name: 'Cut list', selected: true }).waitFor();
  expect(complaints).toEqual([]);
});

test('in a filled workbook one line offers the way, and an Excel that cannot open the sample is never asked to', async () => {
  const page = await browser.newPage({ viewport: { width: 320, height: 640 } });
  await openInFakeExcel(page, server.url, {
    Jobs: [
      ['Hose', 'Overall length (mm)', 'Quantity'],
      ['Alder DN 10', 900, 4],
    ],
  });
  await page.getByRole('group', { name: 'Your work' }).getByRole('button', { name: 'Bench' }).click();
  await page.getByRole('tab', { name: 'Entry', selected: true }).waitFor();
  const blank = await (await browser.newContext({ viewport: { width: 320, height: 640 } })).newPage();
  await openInFakeExcel(blank, server.url, { Sheet1: [] }, []);
  await blank.getByRole('button', { name: /^Bench/ }).click();
  await blank.getByText(/This Excel cannot open it from here/).waitFor();
  expect(await blank.getByRole('button', { name: 'Open the sample as a new workbook' }).count()).toBe(0);
});
