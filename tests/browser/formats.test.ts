import { Workbook } from 'exceljs';
import type { Page } from 'playwright-core';
import { fileFormats } from '../../src/preview/xlsx/fileFormats';
import { readXlsx } from './readSaved';
import { picture, tryOut, type TryOut } from './tryOut';

let opened: TryOut;
let page: Page;

/** Where rows and columns are drawn: 46 points of row numbers, 20 of column letters, then cells of 64 by 20. */
const [LEFT, TOP, WIDTH, HEIGHT] = [46, 20, 64, 20];
const VERDICTS = ['IN SPEC', 'TIGHT', 'IN SPEC', 'LOOSE', 'TIGHT'];
const TIGHT = { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFFCE0B8' } } };
const LOOSE = { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFD3E3F5' } } };

async function crimps(): Promise<Uint8Array> {
  const workbook = new Workbook();
  const sheet = workbook.addWorksheet('Crimps');
  sheet.addRow(['Piece', 'Verdict']);
  VERDICTS.forEach((verdict, index) =>
    sheet.addRow([index + 1, { formula: `IF(A${index + 2}>0,"${verdict}","")`, result: verdict }]),
  );
  const rules = [
    { type: 'cellIs', operator: 'equal', formulae: ['"TIGHT"'], priority: 1, style: TIGHT },
    { type: 'expression', formulae: ['B2="LOOSE"'], priority: 2, style: LOOSE },
  ];
  sheet.addConditionalFormatting({ ref: 'B2:B9', rules: rules as never });
  sheet.autoFilter = 'A1:B6';
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

/** The largest canvas, on which the sheet is drawn. */
async function sheetPlace(): Promise<{ x: number; y: number }> {
  const places = await Promise.all((await page.locator('.spreadsheet canvas').all()).map(canvas => canvas.boundingBox()));
  return places.reduce((a, b) => ((b?.height ?? 0) > (a?.height ?? 0) ? b : a))!;
}

/** Colour near the upper right corner of a cell, where nothing is written, as `r,g,b`: as it is seen, whatever is drawn on what. */
async function ground(row: number, column: number): Promise<string> {
  const { x, y } = await sheetPlace();
  const clip = { x: x + LEFT + (column + 1) * WIDTH - 4, y: y + TOP + row * HEIGHT + 3, width: 2, height: 2 };
  const picture = (await page.screenshot({ clip })).toString('base64');
  return page.evaluate(async data => {
    const image = Object.assign(new Image(), { src: `data:image/png;base64,${data}` });
    await image.decode();
    const context = document.createElement('canvas').getContext('2d')!;
    context.drawImage(image, 0, 0);
    return [...context.getImageData(0, 0, 1, 1).data.slice(0, 3)].join();
  }, picture);
}

/** Waits for a colour; what a rule with a formula draws comes a little later. */
async function hasGround(row: number, column: number, colour: string): Promise<void> {
  for (let time = 0; time < 50 && (await ground(row, column)) !== colour; time++) await page.waitForTimeout(100);
  expect(await ground(row, column)).toBe(colour);
}

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 760 }, await crimps());
  ({ page } = opened);
});

afterAll(() => opened?.close());

test('conditional formats are drawn over words that formulas give, and nothing is said of them', async () => {
  await hasGround(1, 2, '255,255,255');
  await hasGround(2, 1, '252,224,184');
  await hasGround(4, 1, '211,227,245');
  expect(await page.locator('.status .note').count()).toBe(0);
  await picture(page, 'try-out-formats.png');
});

test('the filter of a file hides rows, and the saved file has them hidden', async () => {
  const { x, y } = await sheetPlace();
  await page.mouse.click(x + LEFT + 2 * WIDTH - 9, y + TOP + 10);
  const word = page.getByText('TIGHT', { exact: true });
  await word.waitFor();
  // The box stands left of its word.
  const place = (await word.boundingBox())!;
  await page.mouse.click(place.x - 20, place.y + place.height / 2);
  await picture(page, 'try-out-filter.png');
  await page.getByRole('button', { name: 'Confirm' }).click();
  await page.waitForTimeout(500);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as .xlsx' }).click(),
  ]);
  const sheet = (await readXlsx(await download.createReadStream())).worksheets[0]!;
  expect([2, 3, 4, 5, 6].map(row => sheet.getRow(row).hidden)).toEqual([false, true, false, false, true]);
  expect(sheet.autoFilter).toBe('A1:B6');
  expect(fileFormats(sheet).map(({ ref, rules }) => [ref, rules[0]!.type])).toEqual([
    ['B2:B9', 'cellIs'],
    ['B2:B9', 'expression'],
  ]);
});

test('the page complained about nothing', () => expect(opened.complaints).toEqual([]));
