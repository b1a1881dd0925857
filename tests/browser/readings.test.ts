import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { readXlsx } from './readSaved';
import { openPlace, openSheet, picture, sidewaysAt320, tryOut, type TryOut } from './tryOut';

const BOOK = join(__dirname, '../../samples/measurement-book.xlsx');

let opened: TryOut;
let page: Page;

const pane = () => page.getByRole('complementary', { name: 'Task pane' });
const crimps = () => pane().getByRole('region', { name: 'All crimps' });
const week = (name: string) => openSheet(page, name);

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 900 }, readFileSync(BOOK));
  ({ page } = opened);
  await openPlace(page, 'qa/analysis');
});

afterAll(() => opened?.close());

describe('view Analysis on the measurement book in the try-out page', () => {
  it.each([
    ['Week 38', /Machine and settings are in order/],
    ['Week 39', /Only Larch DN 16 with 24° cone is off, 0\.17 mm large: change its dial from 425/],
    ['Week 40', /All combinations crimp 0\.10 mm large: recalibrate/],
    ['Week 41', /The whole machine crimps 0\.10 mm small: recalibrate/],
    ['Week 41', /Alder DN 19 with 60° cone is 0\.1[789] mm large on its own/],
    ['Week 42', /Not enough crimps yet: measure one more combination/],
  ])('names what was planted in %s', async (sheet, finding) => {
    await week(sheet);
    await pane()
      .getByText(new RegExp(`crimps read from sheet ${sheet}`))
      .waitFor();
    await crimps().getByText(finding).waitFor();
  });

  it('draws every crimp in a picture that a pane of 320 points holds, in light, dark and high contrast', async () => {
    await week('Week 41');
    await pane().getByText('crimps read from sheet Week 41').waitFor();
    const plot = crimps().getByRole('img', { name: /Deviations of 30 crimps of 5 combinations/ });
    await plot.locator('svg').waitFor();
    expect(await plot.locator('svg title').count()).toBe(30);
    const narrow = (width: string) =>
      pane()
        .locator('[data-frame=pane]')
        .evaluate((main, wide) => void (main.style.width = wide), width);
    await narrow('320px');
    await page.waitForTimeout(300);
    const overflow = await sidewaysAt320(page);
    const width = await plot.locator('svg').evaluate(svg => svg.getBoundingClientRect().width);
    expect(overflow).toBeLessThanOrEqual(0);
    expect(width).toBeLessThanOrEqual(320);
    for (const [name, media] of [
      ['light', { colorScheme: 'light', forcedColors: 'none' }],
      ['dark', { colorScheme: 'dark', forcedColors: 'none' }],
      ['contrast', { colorScheme: 'light', forcedColors: 'active' }],
    ] as const) {
      await page.emulateMedia(media);
      await plot.scrollIntoViewIfNeeded();
      await picture(page, `readings-${name}.png`);
      const [ink, back] = await plot.evaluate(frame => {
        const style = getComputedStyle(frame.querySelector('svg text')!);
        let element: Element | null = frame;
        while (element && /rgba?\(0, 0, 0, 0\)|transparent/.test(getComputedStyle(element).backgroundColor))
          element = element.parentElement;
        return [style.fill, element ? getComputedStyle(element).backgroundColor : 'rgb(255, 255, 255)'];
      });
      const light = (color: string) => (color.match(/\d+/g) ?? []).slice(0, 3).reduce((sum, part) => sum + Number(part), 0) / 3;
      expect([name, Math.abs(light(ink!) - light(back!)) > 120]).toEqual([name, true]);
    }
    await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });
    await narrow('');
  });

  it('works out the next dial and the turns from what is entered, and writes a sheet of values', async () => {
    await pane().getByRole('button', { name: 'Limits and machine' }).click();
    await pane().getByLabel(/^Step/).fill('0.016');
    await pane()
      .getByLabel(/^Change per turn/)
      .fill('0.44');
    await crimps()
      .getByText(/set its dial from \d+ to \d+, crimp one trial piece and measure/)
      .waitFor();
    await crimps()
      .getByText(/Turn the calibration screw 0\.2\d turns looser/)
      .waitFor();
    await pane().getByText('Values only: the try-out sheet has no charts of its own; in Excel they are added.').waitFor();
    await pane().getByRole('button', { name: 'Write results as a new sheet' }).click();
    await pane().getByRole('button', { name: 'Readings', exact: true }).click();
    await picture(page, 'readings-sheet.png');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as .xlsx' }).click(),
    ]);
    const book = await readXlsx(await download.createReadStream());
    const written = book.getWorksheet('Readings')!;
    expect(written.getCell('A1').value).toBe('Readings: machine, die or setting');
    const texts: string[] = [];
    written.eachRow(row => row.eachCell(cell => void texts.push(String(cell.value))));
    expect(texts.filter(text => text === 'OWN SETTING')).toHaveLength(1);
    expect(texts.some(text => text.startsWith('The whole machine crimps 0.10 mm small'))).toBe(true);
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
