import { strToU8, zipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { readXlsx } from '../../src/preview/xlsx/readXlsx';
import { workshopFile } from '../preview/workshopFile';
import { chooserOpenedBy, picture, settled, statusShows, tryOut, type TryOut, XLSX } from './tryOut';

let opened: TryOut;
let page: Page;

const title = () => page.locator('.top .title').textContent();
const problem = () => page.getByRole('alert').locator('span');
const idle = () => settled(page);
const focused = () => page.evaluate(() => document.activeElement?.textContent?.trim() ?? '');
const region = () =>
  page.evaluate(() => ['.top', '.sheet', '.dock'].find(part => document.querySelector(part)?.contains(document.activeElement)));

/** Drops a file on the page, as a person drags it there. */
async function drop(name: string, bytes: Uint8Array): Promise<void> {
  const dataTransfer = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(content)], fileName));
      return transfer;
    },
    [name, [...bytes]] as const,
  );
  await page.dispatchEvent('.sheet', 'dragover', { dataTransfer });
  await page.dispatchEvent('.sheet', 'drop', { dataTransfer });
}

/** A compound file (MS-CFB 2.2) with a stream of that name. */
function compoundFile(stream: string): Uint8Array {
  const bytes = new Uint8Array(1024);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  bytes.set(Buffer.from(stream, 'utf16le'), 512);
  return bytes;
}

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 760 });
  ({ page } = opened);
});

afterAll(() => opened?.close());

test('a file that is dropped on the page is opened, and what of it does not show is said', async () => {
  const file = await workshopFile(workbook => {
    const jobs = workbook.getWorksheet('Jobs')!;
    jobs.getCell('A1').note = 'invented';
    jobs.addConditionalFormatting({
      ref: 'D2:D9',
      rules: [{ type: 'cellIs', operator: 'equal', formulae: ['18'], priority: 1, style: { font: { bold: true } } } as never],
    });
  });
  await drop('dropped.xlsx', file);
  await page.locator('.top .title', { hasText: 'dropped.xlsx' }).waitFor();
  await idle();
  expect(await page.locator('.status .note').textContent()).toBe(
    'Not shown here, and lost in a file saved from here: the notes or comments of a sheet. Keep the original.',
  );
  await picture(page, 'try-out-notes.png');
});

test.each<[string, () => Uint8Array | Promise<Uint8Array>, string]>([
  [
    'jobs.csv',
    () => strToU8('overall;cut-off'),
    'jobs.csv is a text file. Open it in your spreadsheet program and save it as .xlsx',
  ],
  ['empty.xlsx', () => new Uint8Array(), 'empty.xlsx is empty.'],
  ['cut.xlsx', async () => (await workshopFile()).slice(0, 3000), 'cut.xlsx could not be read: it is damaged'],
  ['secret.xlsx', () => compoundFile('EncryptedPackage'), 'secret.xlsx is protected by a password.'],
  ['old.xls', () => compoundFile('Workbook'), 'old.xls is an old .xls workbook. Save it as .xlsx'],
  ['letter.docx', () => zipSync({ 'word/document.xml': strToU8('<w/>') }), 'letter.docx'],
])('%s: a sentence says what is wrong, and what was open stays open', async (name, bytes, sentence) => {
  await drop(name, await bytes());
  await problem().filter({ hasText: sentence }).waitFor();
  await idle();
  expect(await title()).toBe('dropped.xlsx');
  await page.getByRole('button', { name: 'Close', exact: true }).focus();
  await page.keyboard.press('Enter');
  expect(await page.getByRole('alert').count()).toBe(0);
});

test('what the browser cannot read, such as a folder, is said in words of ours', async () => {
  await page.evaluate(() => {
    const folder = new File([], 'week 41');
    folder.arrayBuffer = () =>
      Promise.reject(new DOMException('A requested file or directory could not be found.', 'NotFoundError'));
    const drop = new Event('drop', { bubbles: true, cancelable: true });
    Object.assign(drop, { dataTransfer: { files: [folder] } });
    document.querySelector('.sheet')!.dispatchEvent(drop);
  });
  await problem().filter({ hasText: 'week 41 could not be read: is it a folder' }).waitFor();
  await page.getByRole('button', { name: 'Close', exact: true }).click();
});

test('text that is dropped opens nothing', async () => {
  const dataTransfer = await page.evaluateHandle(() => {
    const transfer = new DataTransfer();
    transfer.setData('text/plain', '27.5');
    return transfer;
  });
  await page.dispatchEvent('.dock', 'drop', { dataTransfer });
  expect([await title(), await page.getByRole('alert').count()]).toEqual(['dropped.xlsx', 0]);
});

test('with the keyboard alone: from the sheet to the pane and the buttons and back, open, change, save', async () => {
  // Somebody who clicks into the sheet works there from then on.
  await page
    .locator('.spreadsheet canvas')
    .first()
    .click({ position: { x: 120, y: 200 }, force: true });
  expect(await region()).toBe('.sheet');
  const seen = [];
  for (let time = 0; time < 3; time++) {
    await page.keyboard.press('F6');
    seen.push(await region());
  }
  expect(seen).toEqual(['.dock', '.top', '.sheet']);
  await page.keyboard.press('Shift+F6');
  expect(await region()).toBe('.top');

  for (let time = 0; (await focused()) !== 'Open .xlsx …' && time < 5; time++) await page.keyboard.press('Tab');
  const chooser = await chooserOpenedBy(page, () => page.keyboard.press('Enter'));
  await chooser.setFiles({ name: 'keys.xlsx', mimeType: XLSX, buffer: Buffer.from(await workshopFile()) });
  await page.locator('.top .title', { hasText: 'keys.xlsx' }).waitFor();
  await idle();

  for (let time = 0; (await region()) !== '.sheet' && time < 3; time++) await page.keyboard.press('F6');
  await page.keyboard.press('Control+Home');
  await statusShows(page, /^A1\b/);
  await page.keyboard.press('ArrowDown');
  await statusShows(page, /^A2\b/);
  await page.keyboard.type('20.5');
  await page.keyboard.press('Enter');
  await statusShows(page, /^A3\b/);

  await page.keyboard.press('Shift+F6');
  for (let time = 0; (await focused()) !== 'Save as .xlsx' && time < 6; time++) await page.keyboard.press('Tab');
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  const { cells } = await readXlsx(new Uint8Array(Buffer.concat(chunks)));
  const cached = (address: string) => cells.find(cell => cell.address === address)!.cached;
  expect([cached('A2'), cached('D2')]).toEqual([20.5, 18.62]);
});

test('the page complained about nothing', () => expect(opened.complaints).toEqual([]));
