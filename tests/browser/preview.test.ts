import type { Page } from 'playwright-core';
import { recalculate } from '../../src/preview/headless/recalculate';
import { builtFunctions } from '../preview/builtFunctions';
import { workshopFile } from '../preview/workshopFile';
import { goToCell, openFile, opensSomething, picture, settled, statusShows, tryOut, type TryOut, XLSX } from './tryOut';

/** Where the first cell is drawn: below the column letters, right of the row numbers. */
const FIRST_CELL = { x: 70, y: 30 };
const CELL_D5 = { x: 350, y: 108 };

/** As fast as people type: the help follows the typing with some delay. */
const TYPING = { delay: 90 };

let opened: TryOut;
let page: Page;

const workbook = (name: string, buffer: Uint8Array) => ({ name, mimeType: XLSX, buffer: Buffer.from(buffer) });

/** Opens a file by the page's own file chooser and waits until it is calculated. */
async function open(file: ReturnType<typeof workbook>): Promise<void> {
  await openFile(page, file.name, file.buffer);
}

/** Where the sheet is drawn: the largest canvas. */
async function sheetPlace(): Promise<{ x: number; y: number }> {
  const canvases = await page.locator('.spreadsheet canvas').all();
  const places = await Promise.all(canvases.map(canvas => canvas.boundingBox()));
  return places.reduce((a, b) => ((b?.height ?? 0) > (a?.height ?? 0) ? b : a))!;
}

/** Gives the sheet the keyboard by a click on its first cell. */
async function clickSheet(): Promise<void> {
  const { x, y } = await sheetPlace();
  await page.mouse.click(x + FIRST_CELL.x, y + FIRST_CELL.y);
  await shows(/^A1\b/);
}

const goTo = (address: string) => goToCell(page, address);
const shows = (text: string | RegExp) => statusShows(page, text, 10_000);

beforeAll(async () => {
  opened = await tryOut({ width: 1440, height: 860 });
  ({ page } = opened);
});

afterAll(() => opened?.close());

describe('the try-out page in a browser', () => {
  it('says that it is not Excel', async () => {
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Try-out sheet – not Excel');
  });

  it('opens a picked workbook; a changed overall length changes its cut length and what depends on it', async () => {
    await open(workbook('jobs.xlsx', await workshopFile()));
    await clickSheet();
    await goTo('D2');
    await shows('D2: 14.62, formula =HOSE.CUTLENGTH(A2,B2,C2)');
    await goTo('A2');
    await page.keyboard.type('20.5');
    await page.keyboard.press('Enter');
    await shows(/^A3\b/);
    await goTo('D2');
    await shows('D2: 18.62');
    await goTo('F2');
    await shows('F2: 37.24');
  });

  it('says what is wrong in a cell that shows an error, selected or pointed at', async () => {
    await goTo('D5');
    await shows(/D5 #VALUE!.*"twenty"/);
    expect(await page.locator('.status.wrong').isVisible()).toBe(true);
    const sheet = await sheetPlace();
    for (const step of [4, 2, 0]) await page.mouse.move(sheet.x + CELL_D5.x + step, sheet.y + CELL_D5.y + step);
    await page.getByRole('tooltip').filter({ hasText: '"twenty"' }).waitFor();
    await picture(page, 'try-out-error.png');
  });

  it('offers our functions while =HOSE. is typed, explains the arguments, and calculates', async () => {
    await goTo('G9');
    await page.keyboard.type('=HOSE.', TYPING);
    const { functions } = builtFunctions().metadata;
    for (const { name } of functions)
      await page
        .locator('li', { hasText: `HOSE.${name}` })
        .first()
        .waitFor();
    await page.keyboard.type('CUTLENGTH(', TYPING);
    await page.getByText('[allowance]').first().waitFor();
    await picture(page, 'try-out-help.png');
    await page.keyboard.type('16.5,.94,.94)', TYPING);
    await page.keyboard.press('Enter');
    await shows(/^G10\b/);
    await goTo('G9');
    await shows('G9: 14.62');
  });

  it('saves as .xlsx what the sheet shows', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as .xlsx' }).click(),
    ]);
    const chunks: Buffer[] = [];
    for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
    const cells = await recalculate(new Uint8Array(Buffer.concat(chunks)), builtFunctions());
    expect(cells.find(cell => cell.address === 'G9')).toMatchObject({
      formula: '=HOSE.CUTLENGTH(16.5,0.94,0.94)',
      cached: 14.62,
      value: 14.62,
    });
    expect(cells.find(cell => cell.address === 'F2')).toMatchObject({ cached: 37.24, value: 37.24 });
  });

  it('keeps the open workbook and says why where a file cannot be opened', async () => {
    await page.setInputFiles('input[type=file]', workbook('broken.xlsx', new TextEncoder().encode('overall;cut-off')));
    const problem = page.getByRole('alert').filter({ hasText: 'broken.xlsx is not an .xlsx workbook' });
    await problem.waitFor();
    await clickSheet();
    await goTo('D2');
    await shows('D2: 18.62');
  });

  it('keeps its buttons on a page 320 points wide', async () => {
    await page.setViewportSize({ width: 320, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    const box = (await page.getByRole('button', { name: 'Save as .xlsx' }).boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(320);
    await page.setViewportSize({ width: 1440, height: 860 });
  });

  it('shows the sheet on a page 320 points wide, and the pane over it when asked for', async () => {
    await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();
    const pane = page.getByRole('complementary', { name: 'Task pane' });
    await pane.getByRole('button', { name: 'Hide task pane' }).click();
    await page.setViewportSize({ width: 320, height: 800 });
    const sheet = page.locator('.sheet');
    expect((await sheet.boundingBox())!.width).toBe(320);
    await pane.getByRole('button', { name: 'Task pane' }).click();
    expect((await pane.boundingBox())!.width).toBe(320);
    // What is covered takes no keyboard: F6 goes on to the buttons, and from there to the pane.
    await page.keyboard.press('F6');
    await page.keyboard.press('F6');
    expect(await pane.locator(':focus').count()).toBe(1);
    await pane.getByRole('button', { name: 'Back to the sheet' }).click();
    expect(await sheet.evaluate(element => getComputedStyle(element).visibility)).toBe('visible');
    await page.setViewportSize({ width: 1440, height: 860 });
    await pane.getByRole('button', { name: 'Task pane' }).click();
  });

  it('offers an empty workbook among the samples: a formula of ours calculates in it, and it can be opened anew', async () => {
    const sample = page.getByLabel('Sample');
    for (let time = 0; time < 2; time++) {
      await sample.selectOption('Empty workbook');
      await opensSomething(page);
      await settled(page);
      await clickSheet();
      await shows('A1: blank');
      await page.keyboard.type('=HOSE.CUTLENGTH(1200,48.5,52)', TYPING);
      await page.keyboard.press('Enter');
      await shows(/^A2\b/);
      await goTo('A1');
      await shows('A1: 1099.5');
      await sample.selectOption('Job sheet');
      await opensSomething(page);
      await settled(page);
    }
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
