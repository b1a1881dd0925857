import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CellFormulaValue, Worksheet } from 'exceljs';
import type { Page } from 'playwright-core';
import { readXlsx } from './readSaved';
import { openPlace, openSheet, picture, settled, sidewaysAt320, tryOut, type TryOut } from './tryOut';

const CATALOGUE = join(__dirname, '../../samples/catalogue.xlsx');

let opened: TryOut;
let page: Page;

const idle = () => settled(page);
const pane = () => page.getByRole('complementary', { name: 'Task pane' });
const fill = (label: RegExp | string, value: string) => pane().getByLabel(label).fill(value);

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 900 }, readFileSync(CATALOGUE));
  ({ page } = opened);
  await openSheet(page, 'Jobs');
  await openPlace(page, 'quote/duty');
  await pane()
    .getByText(/^Parts data: CAT-/)
    .waitFor();
});

afterAll(() => opened?.close());

/** The form of a lift line, filled in from top to bottom. */
async function fillForm() {
  await pane()
    .getByRole('textbox', { name: 'Fluid', exact: true })
    .or(pane().getByRole('combobox', { name: 'Fluid', exact: true }))
    .fill('mineral oil');
  await fill(/^Working pressure/, '180');
  await fill(/^Fluid, hottest/, '80');
  await fill(/^Fluid, coldest/, '-10');
  for (const part of ['Flow and viscosity', 'Surge, vacuum, air', 'Route and bends', 'Ends and quantity']) {
    await pane().getByRole('region', { name: part }).locator('summary').click();
  }
  await pane().getByLabel('Viscosity', { exact: true }).selectOption('46');
  await fill(/^Flow \(L\/min\)/, '60');
  await fill(/^Fastest velocity/, '5.5');
  await fill(/^Highest surge/, '210');
  await fill(/^Air, coldest/, '-20');
  await fill(/^Air, hottest/, '40');
  await fill('Length (mm) of part 1', '300');
  await pane().getByRole('button', { name: 'Add bend' }).click();
  await fill('Radius (mm) of part 2', '220');
  await pane().getByRole('button', { name: 'Add straight' }).click();
  await fill('Length (mm) of part 3', '250');
  await fill(/^Slack/, '6');
  await pane()
    .getByLabel(/^End form A/)
    .selectOption('24° cone L');
  await pane()
    .getByLabel(/^End form B/)
    .selectOption('24° cone L');
  await fill(/^Angle A/, '90');
  await fill(/^Assemblies/, '4');
}

const shown = (sheet: Worksheet, address: string) => {
  const { value } = sheet.getCell(address);
  return value && typeof value === 'object' && 'formula' in value ? (value as CellFormulaValue).result : value;
};

describe('view Duty on the try-out page', () => {
  it('finds the hoses of the sample catalogue that suit, by keyboard', async () => {
    await fillForm();
    await pane().getByRole('button', { name: 'Find hoses' }).press('Enter');
    await pane()
      .getByText(/^\d+ of 48 hoses suit, cheapest first\.$/)
      .waitFor();
    await pane()
      .getByRole('img', { name: /bend to the left, 90°, radius 220 mm/ })
      .scrollIntoViewIfNeeded();
    await picture(page, 'duty-route.png');
  });

  it('draws a bend that is too tight for a hose that was ruled out, and says so', async () => {
    await pane()
      .getByRole('button', { name: /^Ruled out: \d+/ })
      .click();
    await pane().getByText('Show where it bends too tight').first().click();
    const picture = pane().getByRole('img', { name: /too tight, the hose needs/ });
    expect(await picture.locator('text').allTextContents()).toContain('2tight');
    await pane().getByText('Hide the route').click();
  });

  it('keeps everything within a pane 320 points wide', async () => {
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
  });

  it('inserts a row whose formulas look everything up, and that costs what the pane says', async () => {
    const cost = (await pane()
      .getByText(/^Cost: /)
      .first()
      .textContent())!;
    await pane().getByRole('button', { name: 'Insert as a row of my table' }).first().click();
    await pane()
      .getByText(/Wrote row 19 of sheet Jobs/)
      .waitFor();
    await idle();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as .xlsx' }).click(),
    ]);
    const sheet = (await readXlsx(await download.createReadStream())).getWorksheet('Jobs')!;
    const row = Object.fromEntries(
      ['A', 'B', 'C', 'D', 'E', 'G', 'H', 'J', 'K', 'T'].map(key => [key, shown(sheet, `${key}19`)]),
    );
    // Straights 300 + 250, arc (220 + 25.4/2)·π/2 = 365.5, with 6 % slack 970.4, rounded up; cut-offs 60 and 30.
    expect(row).toMatchObject({
      A: 'Larch DN 16',
      B: 'Larch 24° cone L 90° DN 16',
      C: 'Larch 24° cone L straight DN 16',
      D: 971,
      E: 4,
      G: 881,
      H: 250,
      J: 'OK',
      K: 'D30',
    });
    expect(cost).toContain(`${(row.T as number).toFixed(2)} each`);
    expect(shown(sheet, 'A18')).toBe('Larch DN 16');
    expect(shown(sheet, 'A20')).toBeNull();
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
