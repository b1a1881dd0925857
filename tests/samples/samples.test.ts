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

/** Verdicts of the bench record from row 12 on, worked out by hand from the readings: target and tolerance beside, the largest spread is 0.25 mm. */
const BENCH_VERDICTS = [
  ['IN SPEC', '27.36, 27.31, 27.38, 27.35 of 27.35 ± 0.12: mean 27.35'],
  ['IN SPEC', '27.4, 27.34, 27.37, 27.41 of 27.35 ± 0.12: mean 27.38'],
  ['TIGHT', '22.61, 22.64, 22.58, 22.63 of 22.8 ± 0.15: mean 22.615'],
  ['IN SPEC', '22.79, 22.83, 22.76, 22.82 of 22.8 ± 0.15: mean 22.8'],
  ['LOOSE', '19.66, 19.62, 19.7, 19.67 of 19.45 ± 0.12: mean 19.6625'],
  ['IN SPEC', '19.45, 19.49, 19.43, 19.47 of 19.45 ± 0.12: mean 19.46'],
  ['OVAL', '44.38, 44.02, 44.36, 44.05 of 44.2 ± 0.15: mean 44.2025, but 44.38 − 44.02 is 0.36'],
  ['#VALUE!', '44.23, 44.17, 44.2 and a blank'],
  ['LOOSE', '49.98, 50.05, 50.02, 49.95 of 49.2 ± 0.2: mean 50'],
  ['IN SPEC', '31.6, "31,62", 31.58, 31.61 of 31.6 ± 0.15: mean 31.6025'],
  ['IN SPEC', '31.45, 31.49, 31.41, 31.45 of 31.6 ± 0.15: mean 31.45, on the limit'],
  ['IN SPEC', '27.52, 27.55, 27.49, 27.52 of 27.4 ± 0.12: mean 27.52, on the limit'],
  ['', 'not crimped yet'],
  ['', 'not set up yet'],
  ['', 'blank'],
];

test('the job sheet judges crimps in spec, tight, loose, oval, incomplete and not filled in, and every error says what to do', async () => {
  const cells = await recalculate(new Uint8Array(readFileSync(join(folder, 'job-sheet.xlsx'))), builtFunctions());
  const record = cells.filter(({ sheet }) => sheet === 'Bench record');
  expect(record.filter(({ formula }) => formula?.includes('CRIMPDETAIL')).length).toBeGreaterThan(10);
  // One column of verdicts: an oval crimp shows OVAL in it and no other word beside it.
  const headings = record.filter(({ value }) => value === 'Verdict');
  expect(headings.map(({ address }) => address)).toEqual(['P11']);
  const shown = new Map(record.map(({ address, value }) => [address, plain(value)]));
  const readings = (row: number) => ['G', 'H', 'I', 'J'].map(letter => shown.get(`${letter}${row}`) ?? '');
  expect(readings(18)).toEqual([44.38, 44.02, 44.36, 44.05]);
  expect(BENCH_VERDICTS.map((_, index) => shown.get(`P${12 + index}`))).toEqual(BENCH_VERDICTS.map(([verdict]) => verdict));
  const errors = cells.filter(({ value }) => typeof value === 'object');
  for (const { value } of errors) expect((value as { sentence?: string }).sentence).toMatch(/.{20}/);
  expect(errors.map(({ value }) => (value as { sentence: string }).sentence).join('\n')).toMatch(
    /reading 4 is blank or zero[\s\S]*look at die, hose, ferrule/,
  );
});
