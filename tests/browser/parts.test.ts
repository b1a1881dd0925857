import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook, type CellFormulaValue, type Worksheet } from 'exceljs';
import type { Page } from 'playwright-core';
import { readXlsx } from './readSaved';
import { openPlace, openSheet, picture, sidewaysAt320, tryOut, type TryOut, XLSX } from './tryOut';

const SAMPLES = join(__dirname, '../../samples');
const CSV = 'text/csv';
const NARROW = 320;

let opened: TryOut;
let page: Page;
let saved: Buffer;

const sample = (name: string) => readFileSync(join(SAMPLES, 'catalogue', name), 'utf8');
const csv = (name: string, text: string) => ({ name, mimeType: CSV, buffer: Buffer.from(text) });
const pane = () => page.getByRole('complementary', { name: 'Task pane' });
const button = (name: string | RegExp) => pane().getByRole('button', { name });
const says = (text: string | RegExp) => pane().getByText(text).filter({ visible: true }).first().waitFor();
const chooseParts = (...files: ReturnType<typeof csv>[]) => pane().getByLabel('Files of parts data').setInputFiles(files);

/** The hoses as another house writes them: one heading in its own words, another without unit, one bore that is none. */
function foreignHoses(): string {
  const [head, ...rows] = sample('hoses.csv').split(/\r?\n/);
  const heading = head!.replace('Hose,Family', 'Schlauch,Family').replace('Bore (mm)', 'Bore');
  return [heading, rows[0]!.replace(/,6\.4,/, ',wide,'), ...rows.slice(1)].join('\r\n');
}

async function jobs(): Promise<Buffer> {
  const book = new Workbook();
  book.addWorksheet('Week').addRows([['Line', 'Hose', 'Pressure'], ['Topper lift']]);
  return Buffer.from(await book.xlsx.writeBuffer());
}

async function openWorkbook(workbook: Buffer): Promise<void> {
  await opened.begin(workbook);
  await openPlace(page, 'parts/load');
}

/** Drops a file on the pane, as from a folder. */
async function drop(name: string, text: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([title, content]) => {
      const data = new DataTransfer();
      data.items.add(new File([content!], title!, { type: 'text/csv' }));
      return data;
    },
    [name, text],
  );
  await pane()
    .getByText(/^Drop files here/)
    .dispatchEvent('drop', { dataTransfer: transfer });
}

async function save(): Promise<Workbook> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as .xlsx' }).click(),
  ]);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  saved = Buffer.concat(chunks);
  const { Readable } = await import('node:stream');
  return readXlsx(Readable.from([saved]));
}

/** Saves until the look-up has answered: it is calculated behind the page's back. */
async function saveAnswered(): Promise<{ book: Workbook; answer: unknown }> {
  for (let turn = 0; ; turn++) {
    const book = await save();
    const answer = shown(book.getWorksheet('Week'), 'B1');
    if (typeof answer === 'number' || turn === 20) return { book, answer };
    await page.waitForTimeout(200);
  }
}

const shown = (sheet: Worksheet | undefined, address: string) => {
  const value = sheet?.getCell(address).value;
  return value !== null && typeof value === 'object' && 'formula' in value ? (value as CellFormulaValue).result : value;
};

/** Pictures of the pane 320 points wide, and that nothing in it has to be scrolled sideways. */
async function pictures(name: string): Promise<void> {
  const looks = [
    ['light', { colorScheme: 'light', forcedColors: 'none' }],
    ['dark', { colorScheme: 'dark', forcedColors: 'none' }],
    ['contrast', { colorScheme: 'dark', forcedColors: 'active' }],
  ] as const;
  const dock = pane();
  await dock.evaluate((aside, width) => (aside.style.cssText = `width: ${width}px; min-width: 0; flex: none`), NARROW);
  for (const [look, media] of looks) {
    await page.emulateMedia(media);
    await picture(dock, `parts-${name}-${look}.png`);
  }
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });
  const overflow = await sidewaysAt320(page);
  await dock.evaluate(aside => aside.removeAttribute('style'));
  expect(overflow).toBeLessThanOrEqual(0);
}

beforeAll(async () => {
  opened = await tryOut({ width: 960, height: 800 }, await jobs());
  ({ page } = opened);
  await openPlace(page, 'parts/load');
});

afterAll(() => opened?.close());

describe('tab Parts on the try-out page', () => {
  it('reads a dropped .csv and chosen ones, asks for headings and a unit, and says where problems stand', async () => {
    await says(/no parts data yet/);
    await drop('hoses.csv', foreignHoses());
    await says(/^hoses.csv \(\d+ rows\)/);
    await chooseParts(csv('fittings.csv', sample('fittings.csv')), csv('crimps.csv', sample('crimps.csv')));
    await says('Still missing: Hose. Say which heading it is.');
    await pictures('mapping');
    await pane().getByLabel('Schlauch is').selectOption('Hose (required)');
    await says(/heading "Bore" has no unit/);
    await pane().getByLabel('Unit of Bore').selectOption('mm');
    await says(/hoses.csv, row 2, column E/);
    await pictures('problems');
  });

  it('writes the catalogue: sheets, the cell and its name', async () => {
    await button(/^Write the catalogue/).press('Enter');
    await says(/Written/);
    // The button is gone; the keyboard goes on in the view that it stood in.
    await page.waitForFunction(
      () => document.activeElement?.closest('[role=tabpanel]')?.querySelector('[aria-label="Load parts data"]'),
      null,
    );
    await pane()
      .getByRole('group', { name: 'Catalogue of this workbook' })
      .getByText(/^CAT-.*1 row left out/)
      .waitFor();
    await button('sheet Hoses, row 2, column E').click();
    await page.locator('.status .sentence', { hasText: /^E2: wide/ }).waitFor({ state: 'attached' });
  });

  it('finds a part as it is typed, and inserts its name and a look-up that answers', async () => {
    await openSheet(page, 'Week');
    await openPlace(page, 'parts/search');
    await pane().getByRole('searchbox').fill('larch dn 12 hose');
    await button('Larch DN 12').click();
    await pictures('card');
    await button('Insert name').click();
    await button('Write over').click();
    await says(/Wrote Larch DN 12 into Week!A1/);
    await button('Insert look-up').click();
    await says(/B1 holds "Hose"/);
    await button('Write over').click();
    await says('Wrote =HOSE.HOSEDATA(Catalogue,A1,"working pressure") into Week!B1.');
    const { book, answer } = await saveAnswered();
    expect(shown(book.getWorksheet('Week'), 'A1')).toBe('Larch DN 12');
    const [, ...rows] = sample('hoses.csv').split(/\r?\n/);
    const larch = rows.find(row => row.startsWith('Larch DN 12,'))!;
    expect(larch.split(',')).toContain(String(answer));
    expect(book.worksheets.map(({ name }) => name)).toEqual(['Week', 'Hoses', 'Fittings', 'Crimps', 'Catalogue']);
  });

  it('compares an .xlsx with what stands, keeps the old values on dated sheets, and the look-up follows', async () => {
    await openPlace(page, 'parts/load');
    const dearer = new Workbook();
    const bytes = readFileSync(join(SAMPLES, 'catalogue.xlsx'));
    await dearer.xlsx.load(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
    const hoses = dearer.getWorksheet('Hoses')!;
    const column = (hoses.getRow(1).values as string[]).findIndex(heading => heading?.startsWith('Working pressure'));
    const names = hoses.getColumn(1).values as string[];
    hoses.getCell(names.indexOf('Larch DN 12'), column).value = 123;
    await chooseParts({ name: 'parts.xlsx', mimeType: XLSX, buffer: Buffer.from(await dearer.xlsx.writeBuffer()) });
    await button(/^Hoses: 1 added, 1 changed/).click();
    await says(/^changed: Larch DN 12: Working pressure \d+ → 123$/);
    await pictures('compare');
    await button('Replace the catalogue').click();
    await says(/Old values: Hoses \d{4}-\d\d-\d\d/);
    const book = await save();
    expect(shown(book.getWorksheet('Week'), 'B1')).toBe(123);
    const old = book.worksheets.find(({ name }) => /^Hoses \d{4}/.test(name))!;
    expect(old.getCell('E2').value).toBe('wide');
    expect(book.getWorksheet('Machines')).toBeDefined();
  });

  it('after a reload the saved workbook gives the same catalogue, and the look-up answers', async () => {
    const handle = await pane().getByText(/^CAT-/).filter({ visible: true }).first().textContent();
    await openWorkbook(saved);
    await pane().getByText(handle!, { exact: true }).filter({ visible: true }).first().waitFor();
    const book = await save();
    expect(shown(book.getWorksheet('Week'), 'B1')).toBe(123);
  });

  it('refuses what is no parts file in a sentence and stays usable', async () => {
    await openPlace(page, 'parts/load');
    await chooseParts({ name: 'parts.xlsx', mimeType: XLSX, buffer: Buffer.from('PK\u0003\u0004 nothing') });
    await says('parts.xlsx is not an .xlsx file, or it is damaged');
    await drop('rates.csv', sample('rates.csv'));
    await says(/^rates.csv/);
    await says('Rates stays as it is.');
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
