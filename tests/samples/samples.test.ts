import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { samples } from '../../samples/sources/samples';
import { recalculate, type RecalculatedCell } from '../../src/preview/headless/recalculate';
import { builtFunctions } from '../preview/builtFunctions';

const folder = join(__dirname, '../../samples');
const files = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter(entry => entry.isFile())
  .map(entry => join(relative(folder, entry.parentPath), entry.name).replaceAll('\\', '/'))
  .filter(name => !/^(sources|pictures)\//.test(name));
const workbooks = files.filter(name => name.endsWith('.xlsx'));

/** Formulas of ours that a workbook holds at the least, so that comparing them cannot pass by comparing nothing. */
const FEWEST_FORMULAS: Readonly<Record<string, number>> = {
  'catalogue.xlsx': 30,
  'job-sheet.xlsx': 100,
  'measurement-book.xlsx': 120,
  'workshop.xlsx': 250,
};

test('every sample file has its source, and every source its file', () => {
  expect([...files].sort()).toEqual(Object.keys(samples).sort());
});

test.each(files)('%s is what its sources make: run npm run samples after a change', async name => {
  const made = await samples[name]!();
  expect(Buffer.from(made).equals(readFileSync(join(folder, name)))).toBe(true);
});

describe.each(workbooks)('%s', name => {
  const bytes = new Uint8Array(readFileSync(join(folder, name)));

  test('shows the numbers that the built functions give when everything is calculated again', async () => {
    const cells = await recalculate(bytes, builtFunctions());
    const ours = cells.filter(({ formula }) => formula?.includes('HOSE.'));
    expect(ours.length).toBeGreaterThanOrEqual(FEWEST_FORMULAS[name]!);
    const wrong = cells.filter(cell => plain(cell.value) !== plain(cell.cached));
    expect(wrong).toEqual([]);
  });
});

/** A value without the sentence behind an error: files keep the error's code only. */
function plain(value: RecalculatedCell['value'] | null | undefined): string | number | boolean {
  if (value === null || value === undefined) return '';
  return typeof value === 'object' ? value.error : value;
}

test('the job sheet has rows that are in spec, tight, loose, oval, incomplete and not filled in, and every error says what to do', async () => {
  const cells = await recalculate(new Uint8Array(readFileSync(join(folder, 'job-sheet.xlsx'))), builtFunctions());
  const record = cells.filter(({ sheet, formula }) => sheet === 'Bench record' && formula?.includes('HOSE.'));
  expect(record.filter(({ formula }) => formula!.includes('CRIMPDETAIL')).length).toBeGreaterThan(10);
  // One column of verdicts: an oval crimp shows OVAL in it and no other word beside it.
  const headings = cells.filter(({ sheet, value }) => sheet === 'Bench record' && value === 'Verdict');
  expect(headings.map(({ address }) => address)).toEqual(['P11']);
  const verdicts = cells.filter(({ sheet, address }) => sheet === 'Bench record' && /^P(?:1[2-9]|2\d)$/.test(address));
  expect(new Set(verdicts.map(({ value }) => plain(value)))).toEqual(
    new Set(['IN SPEC', 'TIGHT', 'LOOSE', 'OVAL', '#VALUE!', '']),
  );
  const errors = cells.filter(({ value }) => typeof value === 'object');
  for (const { value } of errors) expect((value as { sentence?: string }).sentence).toMatch(/.{20}/);
  expect(errors.map(({ value }) => (value as { sentence: string }).sentence).join('\n')).toMatch(
    /reading 4 is blank or zero[\s\S]*look at die, hose, ferrule/,
  );
});
