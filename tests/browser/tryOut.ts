import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, FileChooser, Locator, Page } from 'playwright-core';
import { OFFICE_FILE } from '../../src/host/catalogueFile/officeFile';
import { launch, letPrint } from './launch';
import { serveDist, type OtherFile } from './serveDist';

/** Where pictures and prints of the tests go. */
export const ARTIFACTS = join(process.cwd(), 'artifacts');

/** Leaves a picture for people to look at, where the run is to (`PICTURES=1 npm test`): each takes as long as many a check. */
export async function picture(of: Page | Locator, name: string): Promise<void> {
  if (process.env.PICTURES) await of.screenshot({ path: join(ARTIFACTS, name) });
}

const PATIENCE = 60_000;
/** Media type of .xlsx files. */
export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Resolves when the page says that it has nothing to do. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('.busy')!.textContent === '', null, { timeout: PATIENCE });
}

/** Waits until the page opens what it was told to open; changes that are in no file are left behind. */
export async function opensSomething(page: Page): Promise<void> {
  const isAsking = () => page.locator('dialog.unsaved').isVisible();
  await page.waitForFunction(
    () => document.querySelector('.busy')!.textContent !== '' || document.querySelector('dialog.unsaved') !== null,
  );
  if (await isAsking()) {
    await page.getByRole('button', { name: 'Go on without saving' }).click();
    await page.waitForFunction(() => document.querySelector('.busy')!.textContent !== '');
  }
}

/** Opens a workbook by the page's own file chooser and waits until it is calculated. */
export async function openFile(page: Page, name: string, buffer: Uint8Array): Promise<void> {
  await page.setInputFiles('input[type=file]', { name, mimeType: XLSX, buffer: Buffer.from(buffer) });
  await opensSomething(page);
  await settled(page);
}

/**
 * The file chooser that an action opens. The browser has heard that it is waited for before the action begins: told both at once, a busy
 * page may take the key first, and its chooser is closed unseen.
 */
export async function chooserOpenedBy(page: Page, action: () => Promise<void>): Promise<FileChooser> {
  const chooser = page.waitForEvent('filechooser');
  // Answered by the page itself, after everything that it was told before.
  await page.evaluate(() => undefined);
  await Promise.all([chooser, action()]);
  return chooser;
}

/** Goes to the try-out page and waits until its first workbook is calculated. */
export async function openPage(page: Page, url: string): Promise<void> {
  await page.goto(`${url}preview.html`);
  await page.locator('.spreadsheet canvas').first().waitFor({ timeout: PATIENCE });
  await settled(page);
}

/** Goes to a sheet by its tab below the sheet; tabs of the pane may have the same name. */
export const openSheet = (page: Page, name: string): Promise<void> =>
  page.getByRole('tablist', { name: 'Sheet tabs' }).getByText(name, { exact: true }).click();

/** Waits until the status line tells of the selected cell what it should. */
export async function statusShows(page: Page, text: string | RegExp, timeout = 60_000): Promise<void> {
  const sentence = page.locator('.status .sentence');
  const found = sentence.filter({ hasText: text });
  await found.waitFor({ state: 'attached', timeout }).catch(async () => {
    throw new Error(`the status line says "${await sentence.textContent()}", not ${text}`);
  });
}

/** Goes to a cell of columns A to Z with the arrow keys. */
export async function goToCell(page: Page, address: string): Promise<void> {
  const at = (cell: string) => ({ column: cell.charCodeAt(0), row: Number(/\d+/.exec(cell)![0]) });
  const [from, to] = [at((await page.locator('.status .sentence').textContent())!), at(address)];
  const press = async (key: string, times: number) => {
    for (let time = 0; time < times; time++) await page.keyboard.press(key);
  };
  await press(to.row > from.row ? 'ArrowDown' : 'ArrowUp', Math.abs(to.row - from.row));
  await press(to.column > from.column ? 'ArrowRight' : 'ArrowLeft', Math.abs(to.column - from.column));
  await statusShows(page, new RegExp(`^${address}\\b`), 10_000);
}

/** Opens a view of the pane by its place, like `quote/duty`, with the tabs that lead to it. */
export async function openPlace(page: Page, place: string): Promise<void> {
  const [tab, view] = place.split('/');
  await page.locator(`#tab-${tab}`).click();
  const own = page.locator(`#tab-${tab}-${view}`);
  // A view that is shown already may have put the keyboard where it is wanted.
  if ((await own.getAttribute('aria-selected')) !== 'true') await own.click();
}

/** Points by which the pane, its view or its strip would have to be scrolled sideways at a width of 320 points; 0 where it fits. */
export function sidewaysAt320(page: Page): Promise<number> {
  return page.evaluate(() => {
    const pane = document.querySelector<HTMLElement>('[data-frame=pane]')!;
    const before = pane.style.width;
    pane.style.width = '320px';
    const frames = [pane, ...pane.querySelectorAll('[data-frame]')];
    const wide = Math.max(...frames.map(frame => frame.scrollWidth - frame.clientWidth));
    pane.style.width = before;
    return wide;
  });
}

/** The try-out page in a browser, and what it complained about. */
export interface TryOut {
  readonly browser: Browser;
  readonly page: Page;
  /** Uncaught errors, errors of the console, answers that failed. */
  readonly complaints: string[];
  readonly url: string;
  /** Opens the page anew, as one does the next morning, with a workbook in it. */
  begin(workbook: Uint8Array): Promise<void>;
  close(): Promise<void>;
}

/** Where the page's first workbook stands. */
const FIRST = '/samples/workshop.xlsx';

/**
 * Serves dist/, starts a browser and opens the try-out page in it.
 * @param workbook what the page begins with in the place of its first sample: a second opening costs seconds of every test file
 * @param others further files that the host has
 */
export async function tryOut(
  viewport: { width: number; height: number },
  workbook?: Uint8Array,
  others = new Map<string, OtherFile>(),
): Promise<TryOut> {
  mkdirSync(ARTIFACTS, { recursive: true });
  const beginsWith = (bytes: Uint8Array) => void others.set(FIRST, { body: bytes });
  if (workbook) beginsWith(workbook);
  const [server, browser] = await Promise.all([serveDist(others), launch()]);
  const context = await browser.newContext({ viewport });
  await letPrint(context);
  // A busy machine may be slow; what hangs is ended.
  context.setDefaultTimeout(PATIENCE);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', error => complaints.push(error.message));
  // Whoever has no catalogue for the office has no such file: the page asks, and goes on without.
  const isOffices = (address: string) => address.endsWith(OFFICE_FILE);
  page.on('console', message => {
    if (message.type() === 'error' && !isOffices(message.location().url)) complaints.push(message.text());
  });
  page.on('response', answer => {
    if (answer.status() >= 400 && !isOffices(answer.url())) complaints.push(`${answer.status()} ${answer.url()}`);
  });
  await openPage(page, server.url);
  return {
    ...{ browser, page, complaints, url: server.url },
    begin(next) {
      beginsWith(next);
      return openPage(page, server.url);
    },
    async close() {
      await browser.close();
      await server.close();
    },
  };
}

/** Waits until the browser keeps a workbook whose changes stand in no file. */
export async function keptByBrowser(page: Page): Promise<void> {
  const isKept = async () => {
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((done, failed) => {
        request.onsuccess = () => done(request.result);
        request.onerror = () => failed(request.error);
      });
    const database = await asked(indexedDB.open('benchrow'));
    const count = await asked(database.transaction('workbooks').objectStore('workbooks').count());
    database.close();
    return count > 0;
  };
  while (!(await page.evaluate(isKept))) await page.waitForTimeout(200);
}

/** Types into a cell of the first column; the one above it is gone through, so that the sheet is known to follow. */
export async function typeInA2(page: Page, text: string): Promise<void> {
  await page.locator('.sheet #__editor___INTERNAL_EDITOR__DOCS_NORMAL').focus();
  await page.keyboard.press('Control+Home');
  await statusShows(page, /^A1\b/);
  await page.keyboard.press('ArrowDown');
  await statusShows(page, /^A2\b/);
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await statusShows(page, /^A3\b/);
}
