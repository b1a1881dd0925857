import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { KeyboardWalk } from './keyboardWalk';
import { openSheet, settled, tryOut, type TryOut } from './tryOut';

/*
 * The main flows of the pane by keyboard alone, from the sheet and back: every stop has a name and shows that it has the focus (WCAG 2.2, 2.4.7),
 * the keyboard is never nowhere, nothing holds it (2.1.2), and live regions say what was planned, written and refused (4.1.3).
 */

const SAMPLES = join(__dirname, '../../samples');

let opened: TryOut;
let page: Page;
let walk: KeyboardWalk;

/** A sheet is chosen and clicked, as people do before they go to the pane. */
async function inSheet(name: string, at = { x: 90, y: 200 }): Promise<void> {
  await openSheet(page, name);
  await page.locator('.spreadsheet canvas').first().click({ position: at, force: true });
  await settled(page);
  walk = new KeyboardWalk(page);
}

const type = (text: string) => page.keyboard.type(text);
const isFine = () => expect({ unseen: walk.unseen, lost: walk.lost }).toEqual({ unseen: [], lost: [] });

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 900 }, readFileSync(join(SAMPLES, 'catalogue.xlsx')));
  ({ page } = opened);
  await page.emulateMedia({ reducedMotion: 'reduce' });
});

afterAll(() => opened?.close());

it('finds a part and inserts its name, after asking', async () => {
  await inSheet('Read first');
  await walk.open('Parts', 'Search');
  await walk.to(/^Search parts/);
  await type('larch dn 12 hose');
  await walk.to('Larch DN 12');
  await page.keyboard.press('Enter');
  await walk.to('Insert name');
  await walk.enter(/Write over\?/);
  await walk.to('Write over');
  await walk.enter(/Wrote Larch DN 12 into Read first!/);
  isFine();
});

it('adds columns to a table, and hears how many rows need a look', async () => {
  await inSheet('Jobs', { x: 90, y: 330 });
  await walk.open('Quote', 'Columns');
  await walk.to(/^For .* \(\d+\)$/);
  await walk.enter(/Wrote .* in column/);
  await walk.hears(/needs? a look|Nothing to look at/);
  isFine();
});

it('plans the cuts of a week and writes the cut list', async () => {
  await inSheet('Week', { x: 90, y: 200 });
  await walk.open('Week', 'Cut list');
  await walk.to(/^Kerf/);
  await type('3');
  await walk.to(/^Squaring/);
  await type('25');
  await walk.to('Plan the cuts');
  // A field of the plan is blank still: the keyboard is led to it.
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement?.getAttribute('aria-invalid') === 'true');
  expect((await walk.here()).name).toMatch(/^Keep from/);
  await type('500');
  await walk.to('Plan the cuts');
  await walk.enter(/planned|reels?|pieces/i);
  await walk.to('Write cut list, rack and pieces');
  await walk.enter(/Written: Cut list/);
  isFine();
});

it('enters the readings of a piece, and hears the verdict', async () => {
  await inSheet('Pieces', { x: 90, y: 120 });
  await walk.intoPane();
  await walk.to('Bench', 'ArrowRight', 6);
  await page.keyboard.press('Enter');
  // At the bench a caliper types at once: the view begins in the first reading.
  await page.waitForFunction(() => document.activeElement instanceof HTMLInputElement);
  expect((await walk.here()).name).toBe('Reading 1');
  await walk.to('Piece or tag', 'Shift+Tab');
  await type('W41-01-1');
  await walk.enter(/Piece W41-01-1/);
  await walk.to('Reading 1');
  await walk.listen();
  for (const reading of ['27.35', '27.36', '27.34', '27.35']) {
    await type(reading);
    await page.keyboard.press('Enter');
    await page.waitForTimeout(100);
  }
  await walk.hears(/IN SPEC/);
  // The next crimp is ready for its first reading.
  expect((await walk.here()).name).toBe('Reading 1');
  await walk.listen();
  await type('wide');
  await page.keyboard.press('Enter');
  await walk.hears(/wide/);
  isFine();
});

it('reads the analysis of a sheet and writes its results', async () => {
  await inSheet('Pieces', { x: 90, y: 120 });
  await walk.open('QA', 'Analysis');
  await walk.to('Write results as a new sheet');
  await walk.enter(/Written: /);
  isFine();
});

it('writes a record and takes it back', async () => {
  await inSheet('Pieces', { x: 90, y: 120 });
  await walk.open('QA', 'Records');
  await walk.to('Add to Inspection records');
  await walk.enter(/rows added/);
  await walk.to('Undo');
  await walk.enter(/Taken back/);
  isFine();
});

it('writes a quote, led to the field that was blank', async () => {
  await inSheet('Jobs', { x: 90, y: 330 });
  await walk.open('Quote', 'Quote');
  await walk.to('Write the quote as a new sheet');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement?.getAttribute('aria-invalid') === 'true');
  expect((await walk.here()).name).toMatch(/^Margin/);
  await type('40 %');
  await walk.to('Write the quote as a new sheet');
  await walk.enter(/Written: Quote/);
  isFine();
});

it('goes with a button that leads to another view, and out of the pane again', async () => {
  await inSheet('Read first');
  await walk.open('QA', 'Recall');
  await walk.to('Lot number');
  await type('64/24');
  await walk.to('Find');
  await walk.enter(/piece/i);
  await walk.intoPane();
  await walk.to(/^Scan a tag/);
  expect((await walk.press('Tab')).isInPane).toBe(false);
  await walk.intoPane();
  expect((await walk.press('F6')).isInPane).toBe(false);
  isFine();
});

it('is asked about unsaved changes, and comes back to where it was', async () => {
  const sample = page.getByLabel('Sample');
  await sample.focus();
  await sample.selectOption('Empty workbook');
  await page.locator('dialog.unsaved').waitFor();
  const passed = new Set<string>();
  for (let press = 0; press < 4; press++) passed.add((await walk.press('Tab')).name);
  expect([...passed].filter(Boolean).sort()).toEqual(['Go on without saving', 'Save as .xlsx, then go on', 'Stay here']);
  await page.keyboard.press('Escape');
  await page.locator('dialog.unsaved').waitFor({ state: 'detached' });
  expect(await sample.evaluate(select => select === document.activeElement)).toBe(true);
});

it('walks through a tour, and the keyboard is somewhere once it is closed', async () => {
  await page.getByRole('button', { name: 'Take the tour' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: 'Tour' }).waitFor();
  await walk.to('Close');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.querySelector('.tour') === null && document.activeElement !== document.body);
});

it('complained about nothing', () => expect(opened.complaints).toEqual([]));
