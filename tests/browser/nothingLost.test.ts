import type { Page } from 'playwright-core';
import { workshopFile } from '../preview/workshopFile';
import { keptByBrowser, openFile, openPage, picture, settled, statusShows, tryOut, type TryOut, typeInA2 } from './tryOut';

let opened: TryOut;
let page: Page;

const dialog = () => page.getByRole('dialog', { name: 'Unsaved changes' });
const title = () => page.locator('.top .title').textContent();
const left = () => page.getByRole('region', { name: 'Unsaved workbook' });

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 760 });
  ({ page } = opened);
  await openFile(page, 'jobs.xlsx', await workshopFile());
});

afterAll(() => opened?.close());

test('nothing is asked where nothing was changed: what is calculated is no change', async () => {
  await page.getByLabel('Sample').selectOption('Empty workbook');
  await page.locator('.top .title', { hasText: 'Empty workbook' }).waitFor();
  await settled(page);
  expect(await dialog().count()).toBe(0);
  await openFile(page, 'jobs.xlsx', await workshopFile());
  expect(await dialog().count()).toBe(0);
});

test('another workbook is opened over unsaved changes only after asking', async () => {
  await typeInA2(page, '20.5');
  await page.getByLabel('Sample').selectOption('Empty workbook');
  await dialog().waitFor();
  await picture(page, 'try-out-unsaved.png');
  await page.getByRole('button', { name: 'Stay here' }).click();
  expect([await title(), await dialog().count()]).toEqual(['jobs.xlsx', 0]);
  await page.getByLabel('Sample').selectOption('Empty workbook');
  await dialog().waitFor();
  await page.keyboard.press('Escape');
  expect([await title(), await dialog().count()]).toEqual(['jobs.xlsx', 0]);
});

test('the browser asks before the page is left', async () => {
  const asked = page.waitForEvent('dialog');
  const leaving = page.evaluate(() => location.reload());
  const question = await asked;
  expect(question.type()).toBe('beforeunload');
  await question.dismiss();
  await leaving;
  expect(await title()).toBe('jobs.xlsx');
});

test('after a crash what was open is offered again, and brought back with its changes', async () => {
  await keptByBrowser(page);
  // A page that is gone without having been asked.
  const context = page.context();
  await page.close();
  page = await context.newPage();
  await openPage(page, opened.url);
  await left()
    .getByText(/^jobs\.xlsx was open here with changes that were not saved/)
    .waitFor();
  await picture(page, 'try-out-left-behind.png');
  await left().getByRole('button', { name: 'Bring it back' }).click();
  await page.locator('.top .title', { hasText: 'jobs.xlsx' }).waitFor();
  await settled(page);
  // The offer goes once what was brought back is kept for this page.
  await left().waitFor({ state: 'detached' });
  await page.locator('.sheet #__editor___INTERNAL_EDITOR__DOCS_NORMAL').focus();
  await page.keyboard.press('Control+Home');
  await statusShows(page, /^A1\b/);
  await page.keyboard.press('ArrowDown');
  await statusShows(page, /A2: 20\.5/);
});

test('what was brought back is in no file still: saving ends that, and nothing is offered any more', async () => {
  await page.getByLabel('Sample').selectOption('Empty workbook');
  await dialog().waitFor();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as .xlsx, then go on' }).click();
  await download;
  await page.locator('.top .title', { hasText: 'Empty workbook' }).waitFor();
  await settled(page);
  await openPage(page, opened.url);
  expect(await left().count()).toBe(0);
});
