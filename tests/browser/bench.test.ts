import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook } from 'exceljs';
import Papa from 'papaparse';
import type { Page } from 'playwright-core';
import { readXlsx } from './readSaved';
import { ARTIFACTS, openPlace, openSheet, picture, settled, sidewaysAt320, tryOut, type TryOut } from './tryOut';

const SAMPLES = join(__dirname, '../../samples');
const MACHINE = 'Machine at the gate';

let opened: TryOut;
let page: Page;

/** The first job line of the sample catalogue, with its set-up as the .csv files have it. */
interface Setup {
  readonly hose: string;
  readonly fitting: string;
  readonly die: string;
  readonly dial: number;
  readonly target: number;
  readonly step: number;
}

function csv(name: string): Record<string, string>[] {
  const text = readFileSync(join(SAMPLES, 'catalogue', name), 'utf8').replace(/^\ufeff/, '');
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}

function setupOf(hose: string, fitting: string): Setup {
  const crimp = csv('crimps.csv').find(row => row.Hose === hose && row.Fitting === fitting)!;
  const machine = csv('machines.csv').find(row => row.Machine === MACHINE && row['Step (mm)'])!;
  const [dial, target, step] = [crimp.Dial, crimp['Crimp diameter (mm)'], machine['Step (mm)']].map(Number) as [
    number,
    number,
    number,
  ];
  return { hose, fitting, die: crimp.Die!, dial, target, step };
}

/** The sample catalogue with a sheet of rows that wait for readings. */
async function benchFile(): Promise<{ bytes: Buffer; setup: Setup }> {
  const book = new Workbook();
  await book.xlsx.readFile(join(SAMPLES, 'catalogue.xlsx'));
  const jobs = book.getWorksheet('Jobs')!;
  const setup = setupOf(String(jobs.getCell('A10').value), String(jobs.getCell('B10').value));
  const sheet = book.addWorksheet('Bench');
  const parts = [setup.hose, setup.fitting];
  sheet.addRow([
    'Line',
    'Order',
    'Hose',
    'Coupling',
    'End',
    'Machine',
    'Reading 1 (mm)',
    'Reading 2 (mm)',
    'Reading 3 (mm)',
    'Reading 4 (mm)',
  ]);
  for (const end of ['A', 'B']) sheet.addRow([1, 'B-41', ...parts, end, MACHINE]);
  return { bytes: Buffer.from(await book.xlsx.writeBuffer()), setup };
}

const idle = () => settled(page);
const pane = () => page.getByRole('complementary', { name: 'Task pane' });

/** Types a value and Enter for each reading, as a digital caliper does. */
async function caliper(...values: readonly number[]): Promise<void> {
  for (const value of values) {
    await page.keyboard.type(value.toFixed(2));
    await page.keyboard.press('Enter');
  }
}

async function saved(): Promise<Workbook> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as .xlsx' }).click(),
  ]);
  return readXlsx(await download.createReadStream());
}

const valueOf = (cell: unknown): unknown =>
  typeof cell === 'object' && cell !== null && 'result' in cell ? (cell as { result: unknown }).result : cell;

let setup: Setup;

beforeAll(async () => {
  const file = await benchFile();
  setup = file.setup;
  opened = await tryOut({ width: 1280, height: 1000 }, file.bytes);
  ({ page } = opened);
  await openSheet(page, 'Bench');
  await openPlace(page, 'qa/analysis');
});

afterAll(() => opened?.close());

describe('at the bench on the try-out page', () => {
  it('takes four readings by keyboard, says the verdict and the next dial, and writes the row', async () => {
    await openPlace(page, 'bench/entry');
    await pane().getByText('Line 1, end A', { exact: true }).waitFor();
    // Ten digits too large; the tolerance of the sample is less than that.
    const wrong = setup.target + 10 * setup.step;
    await caliper(wrong, wrong, wrong, wrong);
    const card = pane().getByRole('status', { name: 'Last crimp' });
    await pane()
      .getByText(/written to row 2/)
      .waitFor();
    const next = setup.dial + 10;
    expect(await card.textContent()).toContain(`LOOSE`);
    expect(await card.textContent()).toContain(
      `Next dial ${next} (was ${setup.dial}, 10 up). It is for the next crimp; this crimp stays rejected.`,
    );
    expect(await pane().getByText('Line 1, end B', { exact: true }).count()).toBe(1);
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await picture(page, 'bench-entry.png');
  });

  it('records the dial after showing old and new', async () => {
    const next = setup.dial + 10;
    await pane()
      .getByRole('button', { name: `Record dial ${next} in Machines …` })
      .click();
    const record = pane().getByRole('button', { name: `Record dial ${next}`, exact: true });
    await record.waitFor();
    expect(await pane().getByText(`Now ${setup.dial} (Catalogue), new ${next}`).count()).toBe(1);
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
    await record.click();
    await pane()
      .getByText(/CRIMPSETUP uses it\./)
      .waitFor();
    await idle();
  });

  it('adds the crimp as data, and prints a record of it', async () => {
    await openPlace(page, 'qa/records');
    await pane().getByLabel('Operator').fill('M. Beet (invented)');
    await pane().getByRole('button', { name: 'Print records' }).click();
    const frame = page.locator('iframe[title="Page to print"]');
    await frame.waitFor({ state: 'attached' });
    const sheet = await opened.browser.newPage();
    await sheet.setContent((await frame.getAttribute('srcdoc'))!);
    const pdf = await sheet.pdf({ preferCSSPageSize: true, format: 'A4' });
    await sheet.close();
    writeFileSync(join(ARTIFACTS, 'inspection-record.pdf'), pdf);
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    await pane().getByRole('button', { name: 'Add to Inspection records' }).click();
    await pane().getByText('2 rows added from row 2').waitFor();
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
  });

  it('leaves all of it in the saved workbook, with the set-up that followed the new dial', async () => {
    const book = await saved();
    const bench = book.getWorksheet('Bench')!;
    const wrong = Number((setup.target + 10 * setup.step).toFixed(2));
    expect([7, 8, 9, 10].map(column => bench.getRow(2).getCell(column).value)).toEqual([wrong, wrong, wrong, wrong]);
    const machines = book.getWorksheet('Machines')!;
    const rows = csv('machines.csv').length;
    expect([1, 3, 4, 5, 6].map(column => machines.getRow(rows + 2).getCell(column).value)).toEqual([
      MACHINE,
      setup.die,
      setup.hose,
      setup.fitting,
      setup.dial + 10,
    ]);
    const jobs = book.getWorksheet('Jobs')!;
    expect(['L10', 'P10'].map(cell => valueOf(jobs.getCell(cell).value))).toEqual([setup.dial + 10, 'MACHINE']);
    expect(book.getWorksheet('Inspection records')!.getRow(2).getCell(14).value).toBe('M. Beet (invented)');
  });

  it('complained about nothing', () => expect(opened.complaints).toEqual([]));
});
