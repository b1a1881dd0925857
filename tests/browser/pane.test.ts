import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { tabs } from '../../src/taskpane/app/tabs';
import { openPlace, openSheet, picture, sidewaysAt320, tryOut, type TryOut } from './tryOut';

const SAMPLE = join(__dirname, '../../samples/catalogue.xlsx');
const PLACES = tabs.flatMap(({ id, views }) => views.map(view => `${id}/${view.id}`));

let opened: TryOut;
let page: Page;

const pane = () => page.getByRole('complementary', { name: 'Task pane' });
const strip = () => pane().getByRole('region', { name: 'Selected cell' });

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 860 }, readFileSync(SAMPLE));
  ({ page } = opened);
  await openSheet(page, 'Jobs');
});

afterAll(() => opened?.close());

/** How many lines the tabs of a row take. */
const lines = (row: string) =>
  pane()
    .getByRole('tablist', { name: row })
    .getByRole('tab')
    .evaluateAll(all => new Set(all.map(tab => Math.round(tab.getBoundingClientRect().top))).size);

describe('the pane on the try-out page', () => {
  it('has its five tabs in one row at 320 points, and no view that is wider', async () => {
    await pane().evaluate(aside => (aside.style.cssText = 'width: 320px; min-width: 0; flex: none'));
    expect(await lines('Tabs')).toBe(1);
    for (const place of PLACES) {
      await openPlace(page, place);
      expect([place, await sidewaysAt320(page)]).toEqual([place, 0]);
    }
  });

  it('the tabs are walked with the arrow keys, and the strip unfolds with the keyboard', async () => {
    await openPlace(page, 'parts/search');
    await page.locator('#tab-parts').focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    expect(await page.locator('#tab-quote').getAttribute('aria-selected')).toBe('true');
    await strip().getByRole('button').first().press('Enter');
    expect(await strip().getByRole('button').first().getAttribute('aria-expanded')).toBe('true');
  });

  it('keeps the view and the strip in sight, whatever is unfolded, in light and dark', async () => {
    await openPlace(page, 'quote/duty');
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await picture(pane(), `pane-strip-${colorScheme}.png`);
    }
    await page.emulateMedia({ colorScheme: 'light' });
    const dock = (await pane().boundingBox())!;
    const box = (await strip().boundingBox())!;
    expect(Math.round(box.y + box.height)).toBe(Math.round(dock.y + dock.height));
    const view = (await page.locator('[data-frame=view]').boundingBox())!;
    expect(view.height).toBeGreaterThan(dock.height / 4);
    // Two rows of tabs and the strip would leave nothing of a pane that is very low: there all of it scrolls.
    await page.setViewportSize({ width: 1280, height: 380 });
    expect((await page.locator('[data-frame=view]').boundingBox())!.height).toBeGreaterThan(380);
    await page.setViewportSize({ width: 1280, height: 860 });
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
