import { CUT_CAUTION } from '../../../src/sheets/print/cautions';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { Decimal } from '../../../src/core/units/decimal';
import type { Change } from '../../../src/workbook/workbook';
import type { CutSettings } from '../../../src/sheets/cutlist/cutSettings';
import { cutListSheet } from '../../../src/sheets/cutlist/cutListSheet';
import { freeSheetName } from '../../../src/sheets/print/freeSheetName';
import { hoseJobs } from '../../../src/sheets/cutlist/hoseJob';
import { planHose } from '../../../src/sheets/cutlist/planHose';
import { readRack } from '../../../src/sheets/rack/rack';
import { rackIn, type RackRow } from '../../../src/sheets/rack/rackRow';
import { rackAfterSheet } from '../../../src/sheets/cutlist/rackAfterSheet';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const d = (value: number) => new Decimal(value);
const settings: CutSettings = {
  unit: 'mm',
  step: d(1),
  kerf: d(3),
  squaring: d(20),
  keep: d(500),
  ageLimitMonths: undefined,
  isOldestFirst: false,
};
const lines = [
  { row: 6, line: '1', label: 'Topper lift', hose: 'Larch', quantity: 2, wanted: d(1168.5), cutLength: d(1169) },
  { row: 7, line: '2', label: '=HYPERLINK("x")', hose: 'Larch', quantity: 3, wanted: d(700), cutLength: d(700) },
];
const rack: RackRow[] = [
  { row: 2, hose: 'Larch', length: d(2400), quantity: 1, place: 'A1', lot: 'L7', made: '2025-01-01' },
  { row: 3, hose: 'Larch', length: d(5000), quantity: 2, place: 'A2', lot: '', made: '' },
  { row: 4, hose: 'Alder', length: d(7000), quantity: 1, place: 'B1', lot: '', made: '' },
];

const valuesOf = (changes: readonly Change[]) => changes.flatMap(change => (change.kind === 'values' ? [change] : []));

async function planned() {
  const [job] = hoseJobs(lines, rack, settings, '2026-10-05');
  return (await planHose(job!, settings, undefined, solveCutPlan)).reels;
}

test('the cut list has one row a cut, in cutting order, with what is left on the reel after each', async () => {
  const reels = await planned();
  const [, table] = valuesOf(cutListSheet('Cut list', reels, settings, 'Jobs, 2 lines', ['Larch: proven best.']));
  const [headings, ...rows] = table!.values;
  expect(headings!.slice(0, 3)).toEqual(['Done', 'Cut', 'Reel']);
  expect(rows).toHaveLength(5);
  expect(rows.map(row => row[1])).toEqual([1, 2, 3, 4, 5]);
  let left = 0;
  rows.forEach((row, index) => {
    const isFirst = index === 0 || rows[index - 1]![2] !== row[2];
    if (isFirst) left = reels[Number(row[2]) - 1]!.rack.length.toNumber() - 20;
    left -= Number(row[6]) + 3;
    expect(row[10]).toBe(Math.max(0, left));
  });
});

test('hose beyond the age limit is marked at the first cut of its reel, and a piece of a line that is cut in part keeps its whole', async () => {
  const limited = { ...settings, ageLimitMonths: 12 };
  const [job] = hoseJobs(lines, rack.slice(0, 1), limited, '2026-10-05');
  const { reels } = await planHose(job!, limited, undefined, solveCutPlan);
  const [, table] = valuesOf(cutListSheet('Cut list', reels, limited, '', []));
  const rows = table!.values.slice(1);
  expect(rows.map(row => String(row[11]).startsWith('OLDER THAN THE LIMIT: '))).toEqual([true, false]);
  expect(rows.map(row => row[9])).toEqual(['1 of 2', '2 of 2']);
  const [short] = hoseJobs([{ ...lines[1]!, quantity: 5 }], rack.slice(0, 1), settings, '2026-10-05');
  const part = await planHose(short!, settings, undefined, solveCutPlan);
  const [, cut] = valuesOf(cutListSheet('Cut list', part.reels, settings, '', []));
  expect(cut!.values.slice(1).map(row => row[9])).toEqual(['1 of 5', '2 of 5', '3 of 5']);
});

test('what is said above the list goes on further rows where it is longer than the page is wide', async () => {
  const said = `Larch: ${'line 12 Topper lift: 3 × 4200 mm; '.repeat(12)}end.`;
  const [head, table] = valuesOf(cutListSheet('Cut list', await planned(), settings, 'Jobs', [said]));
  const rows = head!.values.slice(3).map(([text]) => String(text));
  expect(Math.max(...rows.map(text => text.length))).toBeLessThanOrEqual(150);
  expect(rows.join(' ')).toBe(`${said} ${CUT_CAUTION}`);
  expect(table!.at.address).toMatch(new RegExp(`^A${head!.values.length + 2}:`));
});

test('all changes touch the new sheet only, the sheet is added first, and blocks have their shape', async () => {
  const reels = await planned();
  for (const changes of [cutListSheet('New', reels, settings, '', []), rackAfterSheet('New', rack, reels, settings, [])]) {
    expect(changes[0]).toEqual({ kind: 'addSheet', sheet: 'New' });
    for (const change of changes) {
      const sheet = 'at' in change ? change.at.sheet : change.kind === 'name' ? change.refersTo.sheet : change.sheet;
      expect(sheet).toBe('New');
      expect(change.kind).not.toBe('formulas');
    }
  }
});

test('the cut list prints its headings on every page, all columns on one', async () => {
  const changes = cutListSheet('Cut list', await planned(), settings, '', ['Larch: proven best.']);
  const page = changes.find(change => change.kind === 'page');
  expect(page).toMatchObject({ page: { orientation: 'landscape', printArea: 'A1:L13', titleRows: '8:8', fitWidth: true } });
});

test('the rack afterwards can be read as a rack again: whole pieces, ends worth keeping, other hoses untouched', async () => {
  const reels = await planned();
  const [table] = valuesOf(rackAfterSheet('Rack after', rack, reels, settings, []));
  const { workbook } = fakeWorkbook({ After: table!.values }, { sheet: 'After', address: 'A1' });
  const read = (await readRack(workbook, 'After'))!;
  expect([read.report.leftOut, read.questions]).toEqual([[], []]);
  const again = rackIn(read.rows, 'mm');
  const before = rack.reduce((sum, row) => sum.plus(row.length.times(row.quantity)), d(0));
  const after = again.reduce((sum, row) => sum.plus(row.length.times(row.quantity)), d(0));
  const gone = reels.reduce((sum, reel) => sum.plus(reel.rack.length).minus(reel.isKept ? reel.left : 0), d(0));
  expect(after.toString()).toBe(before.minus(gone).toString());
  expect(again.find(row => row.hose === 'Alder')).toMatchObject({ quantity: 1, place: 'B1' });
});

test('numbers of reels stay with the rack, and are named on the cut list', async () => {
  const numbered = rack.map((row, index) => ({ ...row, reel: `R${index + 1}` }));
  const [job] = hoseJobs(lines, numbered, settings, '2026-10-05');
  const { reels } = await planHose(job!, settings, undefined, solveCutPlan);
  const [table] = valuesOf(rackAfterSheet('Rack after', numbered, reels, settings, []));
  expect(table!.values[0]).toEqual(['Hose', 'Length (mm)', 'Quantity', 'Place', 'Reel', 'Lot', 'Made', 'Note']);
  const [, list] = valuesOf(cutListSheet('Cut list', reels, settings, '', []));
  expect(list!.values.slice(1).map(row => row[4])).toContain('A1, reel R1');
});

test('rows of the rack that were left out are named beside the table, totals not', async () => {
  const leftOut = [
    { row: 9, reason: 'problem', sentence: 'length is "some": enter a length' },
    { row: 10, reason: 'hidden' },
    { row: 11, reason: 'total' },
  ] as const;
  const blocks = valuesOf(rackAfterSheet('Rack after', rack, await planned(), settings, leftOut));
  expect(blocks[1]!.values).toEqual([
    ['Row 9 of the rack is missing here: length is "some": enter a length'],
    ['Row 10 of the rack is missing here: hidden or filtered out'],
  ]);
});

test.each([
  [['Jobs'], 'Cut list'],
  [['Jobs', 'CUT LIST'], 'Cut list 2026-10-05'],
  [['Cut list', 'Cut list 2026-10-05'], 'Cut list 2026-10-05 (2)'],
  [['Cut list', 'Cut list 2026-10-05', 'Cut list 2026-10-05 (2)'], 'Cut list 2026-10-05 (3)'],
])('beside %j a new sheet is called %s', (taken, name) => {
  expect(freeSheetName('Cut list', taken, '2026-10-05')).toBe(name);
});

test('a sheet name never has more than 31 characters', () => {
  const long = 'A sheet with a very long name, 31';
  expect(freeSheetName(long.slice(0, 31), [long.slice(0, 31)], '2026-10-05')).toHaveLength(31);
});
