import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook } from 'exceljs';
import type { Page } from 'playwright-core';
import { plainFileValue } from '../../src/preview/xlsx/fileValue';
import { readXlsx } from './readSaved';
import { openPlace, picture, sidewaysAt320, tryOut, type TryOut } from './tryOut';

const CATALOGUE = join(__dirname, '../../samples/catalogue.xlsx');
const SHEET = 'Own jobs';
const CONE = 'Larch 24° cone S straight DN 12';

let opened: TryOut;
let page: Page;

const pane = () => page.getByRole('complementary', { name: 'Task pane' });
const section = (name: string) => pane().getByRole('region', { name });
const add = () => pane().getByRole('button', { name: /^Add \d+ columns?$/ });

/** The workshop's catalogue with a job sheet of someone's own: other words, a title block above, a wrong word for the machine. */
async function jobFile(): Promise<Buffer> {
  const book = new Workbook();
  await book.xlsx.load(readFileSync(CATALOGUE) as never);
  const sheet = book.addWorksheet(SHEET);
  sheet.addRows([
    ['Field workshop, week 40'],
    [],
    ['No', 'Material', 'Left', 'Right', 'OAL (mm)', 'Qty', 'Done at', 'Dial set', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
    [1, 'Larch DN 12', CONE, CONE, 1200, 2, 'Machine at the gate', 414, 27.35, 27.36, 27.34, 27.35],
    [2, 'Larch DN 12', CONE, CONE, 980, 2, 'Machine at the gate', 414, 27.5, 27.51, 27.5, 27.49],
  ]);
  // The first sheet opens: the jobs must be it.
  book.worksheets.forEach(
    (each, index) => ((each as unknown as { orderNo: number }).orderNo = each.name === SHEET ? 0 : index + 1),
  );
  return Buffer.from(await book.xlsx.writeBuffer());
}

/** The rows of the jobs as a saved file holds them: computed values, formulas. */
async function saved() {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as .xlsx' }).click(),
  ]);
  const sheet = (await readXlsx(await download.createReadStream())).getWorksheet(SHEET)!;
  return [3, 4, 5].map(row =>
    Array.from({ length: 12 }, (_, i) => plainFileValue(sheet.getRow(row).getCell(13 + i).value as never) ?? ''),
  );
}

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 900 }, await jobFile());
  ({ page } = opened);
  await openPlace(page, 'week/columns');
});

afterAll(() => opened?.close());

describe('view Week › Columns on the try-out page, beside a catalogue', () => {
  it('finds the table under its title block and tells hose and couplings by what stands in their columns', async () => {
    await pane().getByText(`Table A3:L5 of sheet ${SHEET}, 2 rows.`).waitFor();
    await pane().getByText('Columns read', { exact: true }).click();
    const shown = (heading: string) => pane().getByLabel(heading, { exact: true }).inputValue();
    expect(await Promise.all(['B: Material', 'C: Left', 'D: Right', 'L: R4 (mm)'].map(shown))).toEqual([
      'hose',
      'fittingA',
      'fittingB',
      'reading',
    ]);
  });

  it('a column is corrected and columns are chosen by keyboard alone', async () => {
    const doneAt = pane().getByLabel('G: Done at', { exact: true });
    await doneAt.focus();
    await page.keyboard.type('Crimper');
    await page.waitForTimeout(400);
    expect(await doneAt.inputValue()).toBe('crimper');
    for (const name of ['Cut length', 'Dial A', 'Verdict', 'Next dial', 'Price each']) {
      const box = section('Columns to add').getByRole('checkbox', { name, exact: true });
      if (name === 'Price each') {
        expect(await box.isDisabled()).toBe(true);
        await pane().getByLabel('Margin', { exact: true }).fill('40 %');
      }
      await box.focus();
      await page.keyboard.press('Space');
      expect(await box.isChecked()).toBe(true);
    }
    await section('Columns to add').getByText('A rejected crimp stays rejected', { exact: false }).waitFor();
  });

  it('keeps everything within 320 points, in light, dark and high contrast', async () => {
    const main = pane().locator('[data-frame=pane]');
    await main.evaluate(element => void (element.style.width = '320px'));
    await page.waitForTimeout(300);
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    for (const [name, media] of [
      ['light', { colorScheme: 'light', forcedColors: 'none' }],
      ['dark', { colorScheme: 'dark', forcedColors: 'none' }],
      ['contrast', { colorScheme: 'light', forcedColors: 'active' }],
    ] as const) {
      await page.emulateMedia(media);
      for (const part of ['Columns to add', 'Machine and price']) {
        await section(part).scrollIntoViewIfNeeded();
        await picture(page, `columns-${part.split(' ')[0]!.toLowerCase()}-${name}.png`);
      }
    }
    await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });
    await main.evaluate(element => void (element.style.width = ''));
  });

  it('writes them right of the table, where their values appear', async () => {
    await add().press('Enter');
    await pane()
      .getByText(/Wrote Cut length \(mm\) in column M, .* rows 4 to 5 of sheet Own jobs/)
      .waitFor();
    await pane().getByText(`Table A3:Q5 of sheet ${SHEET}, 2 rows.`).waitFor();
    // The second crimp is LOOSE: one row to look at, and a way to it.
    await pane().getByText('1 of 2 rows needs a look').waitFor();
    await pane().getByRole('list', { name: 'Rows to look at' }).getByText('Verdict: LOOSE').waitFor();
    // What was corrected and entered stays for the next columns.
    expect(await pane().getByLabel('G: Done at', { exact: true }).inputValue()).toBe('crimper');
    expect(await pane().getByLabel('Margin', { exact: true }).inputValue()).toBe('40 %');
    const [headings, first, second] = await saved();
    expect(headings!.slice(0, 6)).toEqual(['Cut length (mm)', 'Dial A', 'Verdict', 'Next dial', 'Price each', '']);
    // 405 is the newest dial that the gate's machine recorded; (27.5 − 27.35) ÷ 0.016 a digit is 9.
    expect(first!.slice(1, 4)).toEqual([405, 'IN SPEC', 414]);
    expect(second!.slice(1, 4)).toEqual([405, 'LOOSE', 423]);
    expect(Number(first![0]) - Number(second![0])).toBe(220);
    expect(Number(first![4])).toBeGreaterThan(Number(second![4]));
    await picture(page, 'columns-written.png');
  });

  it('one undo takes all of them away again', async () => {
    await page
      .locator('.spreadsheet canvas')
      .first()
      .click({ position: { x: 120, y: 200 }, force: true });
    await page.keyboard.press('Control+z');
    await pane().getByText(`Table A3:L5 of sheet ${SHEET}, 2 rows.`).waitFor();
    expect((await saved()).flat().every(cell => cell === '')).toBe(true);
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
