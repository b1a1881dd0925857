import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook } from 'exceljs';
import type { Page } from 'playwright-core';
import { readXlsx } from './readSaved';
import type { FakeCell } from '../workbook/fakeWorkbook';
import { demoSheets } from '../sheets/cutlist/demoWorkbook';
import { ARTIFACTS, openPlace, openSheet, picture, sidewaysAt320, tryOut, type TryOut } from './tryOut';

let opened: TryOut;
let page: Page;
const workers: string[] = [];

async function demoFile(): Promise<Buffer> {
  const book = new Workbook();
  const cell = (one: FakeCell) =>
    typeof one === 'object' && 'formula' in one ? { formula: one.formula.slice(1), result: String(one.value) } : one;
  for (const [name, rows] of Object.entries(demoSheets)) book.addWorksheet(name).addRows(rows.map(row => row.map(cell)));
  return Buffer.from(await book.xlsx.writeBuffer());
}

const pane = () => page.getByRole('complementary', { name: 'Task pane' });

/** The page that a Print button sends to the printer, as PDF and its number of pages. */
async function printed(button: string, name: string, cssSize: boolean): Promise<{ html: string; pages: number }> {
  await page.locator('iframe[title="Page to print"]').evaluateAll(frames => frames.forEach(frame => frame.remove()));
  await pane().getByRole('button', { name: button }).click();
  const frame = page.locator('iframe[title="Page to print"]');
  await frame.waitFor({ state: 'attached' });
  const html = (await frame.getAttribute('srcdoc'))!;
  const sheet = await opened.browser.newPage();
  await sheet.setContent(html);
  const pdf = await sheet.pdf(cssSize ? { preferCSSPageSize: true } : { format: 'A4' });
  await sheet.close();
  writeFileSync(join(ARTIFACTS, `${name}.pdf`), pdf);
  return { html, pages: pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length };
}

/** Values of a sheet whose first row has the headings. */
function rowsBelowHeadings(book: Workbook, sheet: string): unknown[][] {
  const rows = book.getWorksheet(sheet)!.getSheetValues().slice(2);
  return rows.map(row => (row as unknown[]).slice(1));
}

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 900 }, await demoFile());
  ({ page } = opened);
  page.on('worker', worker => workers.push(worker.url()));
  await openPlace(page, 'week/cut-list');
});

afterAll(() => opened?.close());

describe('tab Week on the try-out page', () => {
  it('plans the cuts in a worker and shows every reel', async () => {
    await pane().getByLabel(/^Kerf/).fill('3');
    await pane()
      .getByLabel(/^Squaring/)
      .fill('20');
    await pane()
      .getByLabel(/^Keep from/)
      .fill('500');
    const before = workers.length;
    await pane().getByRole('button', { name: 'Plan the cuts' }).click();
    await pane().getByRole('region', { name: 'Larch DN 12' }).waitFor();
    expect(workers.length).toBeGreaterThan(before);
    expect(await pane().getByText('Proven best: no plan costs the rack less.').count()).toBeGreaterThan(0);
    expect(
      await pane()
        .getByRole('img', { name: /to scale/ })
        .count(),
    ).toBeGreaterThan(1);
    expect(
      await pane()
        .getByText(/Buy 1 reel of 20000 mm/)
        .count(),
    ).toBe(1);
    await pane()
      .getByRole('img', { name: /to scale/ })
      .first()
      .scrollIntoViewIfNeeded();
    await picture(page, 'cuts-plan.png');
  });

  it('keeps everything within a pane 320 points wide', async () => {
    await pane().getByRole('region', { name: 'Larch DN 12' }).waitFor();
    await pane().getByText('Columns read').locator('visible=true').first().click();
    await picture(page, 'cuts-columns.png');
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
  });

  it('writes cut list, rack and pieces as new sheets, says so and goes there', async () => {
    await pane().getByRole('button', { name: 'Write cut list, rack and pieces' }).click();
    await pane().getByText('Written: Cut list, Rack after, Pieces. Pieces: 22 pieces added.').waitFor();
    const tabs = page.getByRole('tablist', { name: 'Sheet tabs' });
    expect((await tabs.innerText()).split('\n')).toEqual([...Object.keys(demoSheets), 'Cut list', 'Rack after', 'Pieces']);
    await pane().getByRole('button', { name: 'Cut list', exact: true }).click();
    await tabs.getByRole('tab', { name: 'Cut list', selected: true }).waitFor();
    await picture(page, 'cuts-list.png');
    await openSheet(page, 'Jobs');
  });

  it('makes bench cards that print two a page, with cautions, and a sheet with them', async () => {
    await openPlace(page, 'week/cards');
    const cards = await printed('Print cards', 'bench-cards', false);
    // Seven lines, two a page.
    expect(cards.html.match(/class="card"/g)).toHaveLength(7);
    expect(cards.pages).toBe(4);
    expect(cards.html).toMatch(/<b>STOP<\/b> cut length is blank/);
    await pane()
      .getByRole('tabpanel', { name: 'Cards' })
      .getByText(/^Jobs A1:H8: 6 rows taken; left out: 1 STOP$/)
      .waitFor();
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await pane().getByRole('button', { name: 'Write as a new sheet' }).click();
    await pane().getByRole('button', { name: 'Bench cards', exact: true }).click();
    await picture(page, 'cuts-cards.png');
    await openSheet(page, 'Jobs');
  });

  it('makes tags at the size of the labels', async () => {
    await openPlace(page, 'week/tags');
    await pane()
      .getByLabel(/^Maker/)
      .fill('Beet workshop (invented)');
    const tags = await printed('Print tags', 'tags', true);
    // The line that is not measured yet is a STOP: it gets no tag.
    expect(tags.html.match(/class="tag"/g)).toHaveLength(23);
    expect(tags.pages).toBe(2);
    await pane().getByText('STOP, so no tags: line 5.').waitFor();
    await picture(page, 'cuts-tags.png');
  });

  it('saves the new sheets with what they are printed with', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as .xlsx' }).click(),
    ]);
    const book = await readXlsx(await download.createReadStream());
    expect(book.worksheets.map(sheet => sheet.name)).toEqual([
      ...Object.keys(demoSheets),
      'Cut list',
      'Rack after',
      'Pieces',
      'Bench cards',
    ]);
    const list = book.getWorksheet('Cut list')!;
    expect(list.pageSetup).toMatchObject({ orientation: 'portrait' });
    const heading = Number(/^\d+/.exec(list.pageSetup.printTitlesRow!)![0]);
    expect(list.getCell(heading, 1).value).toBe('Reel');
    expect(String(list.getCell(heading + 1, 1).value)).toMatch(/^Larch DN 12: \d+ reels cut into/);
    // The result of a hose may take two rows; its first reel follows.
    expect([2, 3].flatMap(below => Object.values(list.getRow(heading + below).values))).toContain('☐');
    // The rack before, less 20 of squaring, the pieces and 3 of kerf behind each; ends from 500 on are kept.
    expect(rowsBelowHeadings(book, 'Rack after').map(row => row.slice(0, 5))).toEqual([
      ['Larch DN 12', 12000 - 20 - (3 * 1399 + 1169 + 4 * 618) - 8 * 3, 1, 'A2', 'L71'],
      ['Larch DN 10', 9800 - 20 - 3 * 689 - 3 * 3, 1, 'A4', 'L67'],
      ['Rowan DN 19', 4000 - 20 - 3303 - 3, 1, 'B1', 'R12'],
    ]);
    // As many as ordered, but for line 4, of which the rack has hose for one, and line 5, which is not measured.
    const lines = rowsBelowHeadings(book, 'Pieces').map(([, line]) => line);
    expect(lines).toEqual([...Array(4).fill('1'), ...Array(6).fill('2'), ...'3334', ...Array(5).fill('6'), ...'777']);
    const cards = book.getWorksheet('Bench cards')!;
    expect(cards.pageSetup.orientation).toBe('portrait');
    expect(cards.pageSetup.margins?.left).toBeCloseTo(28 / 72, 3);
    expect(String(cards.getCell('A1').value)).toBe('Line 1: Topper lift');
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
