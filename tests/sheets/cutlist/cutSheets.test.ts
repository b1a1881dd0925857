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
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

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

test('the cut list has a row for equal cuts of a line, in cutting order, with what is left on the reel after them', async () => {
  const reels = await planned();
  const [, table] = valuesOf(cutListSheet('Cut list', reels, settings, 'Jobs, 2 lines', ['Larch: proven best.']));
  const [headings, ...rows] = table!.values;
  expect(headings!.slice(0, 7)).toEqual(['Done', 'Reel', 'Hose', 'Place', 'Lot', 'Quantity', 'Cut length (mm)']);
  expect(rows.map(row => [row[5], row[6]])).toEqual(expect.arrayContaining([[2, 1169]]));
  expect(rows.reduce((sum, row) => sum + Number(row[5]), 0)).toBe(5);
  let left = 0;
  rows.forEach((row, index) => {
    const isFirst = index === 0 || rows[index - 1]![1] !== row[1];
    if (isFirst) left = reels[Number(row[1]) - 1]!.rack.length.toNumber() - 20;
    left -= Number(row[5]) * (Number(row[6]) + 3);
    expect(row[10]).toBe(Math.max(0, left));
  });
});

test('hose beyond the age limit is marked at the first cut of its reel, and a piece of a line that is cut in part keeps its whole', async () => {
  const limited = { ...settings, ageLimitMonths: 12 };
  const [job] = hoseJobs(lines, rack.slice(0, 1), limited, '2026-10-05');
  const { reels } = await planHose(job!, limited, undefined, solveCutPlan);
  const [, table] = valuesOf(cutListSheet('Cut list', reels, limited, '', []));
  const rows = table!.values.slice(1);
  expect(rows.map(row => String(row[11]).startsWith('OLDER THAN THE LIMIT: '))).toEqual([true]);
  expect(rows.map(row => row[9])).toEqual(['1 … 2 of 2']);
  const [short] = hoseJobs([{ ...lines[1]!, quantity: 5 }], rack.slice(0, 1), settings, '2026-10-05');
  const part = await planHose(short!, settings, undefined, solveCutPlan);
  const [, cut] = valuesOf(cutListSheet('Cut list', part.reels, settings, '', []));
  expect(cut!.values.slice(1).map(row => row[9])).toEqual(['1 … 3 of 5']);
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
  for (const changes of [cutListSheet('New', reels, settings, '', []), rackAfterSheet('New', await rackOf(), reels, 'mm')]) {
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
  expect(page).toMatchObject({ page: { orientation: 'portrait', printArea: 'A1:L10', titleRows: '8:8', fitWidth: true } });
});

test('a page for each hose, where it is wanted, and the scale fits A4 and Letter', async () => {
  const reels = await planned();
  const other = reels.map(reel => ({ ...reel, rack: { ...reel.rack, hose: 'Alder' } }));
  const changes = cutListSheet('Cut list', [...reels, ...other], { ...settings, pagePerHose: true }, '', []);
  const [, table] = valuesOf(changes);
  const page = changes.find(change => change.kind === 'page');
  const first = table!.values.findIndex(row => row[2] === 'Alder');
  const heading = Number(/^A(\d+):/.exec(table!.at.address)![1]);
  expect(page?.kind === 'page' && page.page.breaksBefore).toEqual([heading + first]);
  // Letter is 612 points wide, A4 595 (ISO 216): the narrower one, less its margins.
  const widths = changes.flatMap(change =>
    change.kind === 'style' && change.style.columnWidth ? [change.style.columnWidth] : [],
  );
  const total = widths.reduce((sum, width) => sum + width, 0);
  expect((total * (page?.kind === 'page' ? page.page.scale! : 0)) / 100).toBeLessThanOrEqual(595 - 2 * 28);
});

/** The rack as a sheet of the shop's own: other columns and another unit, a title, a row nobody can read, a total. */
const OWN: readonly (readonly FakeCell[])[] = [
  ['Our hoses', '', '', '', '', ''],
  ['Shelf', 'Supplier', 'Hose type', 'Reel no.', 'Batch', 'Length (m)'],
  ['A1', 'Beet & Co', 'Larch', 'R1', 'L7', 2.4],
  ['A2', 'Beet & Co', 'Larch', 'R2', '', 5],
  ['A2', 'Beet & Co', 'Larch', 'R3', '', 5],
  ['A3', 'Others', 'Larch', 'R4', '', 'some'],
  ['B1', 'Others', 'Alder', 'R5', '', 7],
  ['Total', '', '', '', '', 19.4],
];

async function rackOf(rows = OWN) {
  const { workbook } = fakeWorkbook({ Rack: rows }, { sheet: 'Rack', address: 'A3' });
  return (await readRack(workbook, 'Rack'))!;
}

async function plannedOn(own: Awaited<ReturnType<typeof rackOf>>) {
  const [job] = hoseJobs(lines, rackIn(own.rows, 'mm'), settings, '2026-10-05');
  return (await planHose(job!, settings, undefined, solveCutPlan)).reels;
}

test('the rack afterwards keeps its own columns, its unit and the row nobody could read, and is read as a rack again', async () => {
  const own = await rackOf();
  const reels = await plannedOn(own);
  const [table] = valuesOf(rackAfterSheet('Rack after', own, reels, 'mm'));
  expect(table!.values[0]!.slice(0, 6)).toEqual(OWN[0]);
  expect(table!.values[1]).toEqual([...OWN[1]!, 'Note of the cut list']);
  expect(table!.values).toContainEqual([
    'A3',
    'Others',
    'Larch',
    'R4',
    '',
    'some',
    expect.stringMatching(/^left as it is: length is "some"/),
  ]);
  expect(table!.values).toContainEqual(['B1', 'Others', 'Alder', 'R5', '', 7, '']);
  expect(table!.values.some(row => row[0] === 'Total')).toBe(false);
  const { workbook } = fakeWorkbook({ After: table!.values }, { sheet: 'After', address: 'A3' });
  const read = (await readRack(workbook, 'After'))!;
  expect(read.problems).toHaveLength(1);
  const [before, after] = [own, read].map(each =>
    rackIn(each.rows, 'mm').reduce((sum, row) => sum.plus(row.length.times(row.quantity)), d(0)),
  );
  const gone = reels.reduce((sum, reel) => sum.plus(reel.rack.length).minus(reel.isKept ? reel.left : 0), d(0));
  expect(after!.toString()).toBe(before!.minus(gone).toString());
  // Ends keep all that the rack says of their reel.
  for (const reel of reels.filter(({ isKept }) => isKept)) {
    const end = read.rows.find(row => row.reel === reel.rack.reel);
    expect(end).toMatchObject({ place: reel.rack.place, lot: reel.rack.lot });
    expect(end!.length.value.times(1000).toString()).toBe(reel.left.toString());
  }
});

test('of several equal reels in a row the others stay, fewer', async () => {
  const rows = [
    ['Hose', 'Length (mm)', 'Quantity', 'Lot'],
    ['Larch', 5000, 3, 'L7'],
  ];
  const own = await rackOf(rows);
  const reels = await plannedOn(own);
  const [table] = valuesOf(rackAfterSheet('Rack after', own, reels, 'mm'));
  expect(table!.values[1]).toEqual(['Larch', 5000, 3 - reels.length, 'L7', 'others of these were cut']);
});

test('numbers of reels are named on the cut list', async () => {
  const reels = await plannedOn(await rackOf());
  const [, list] = valuesOf(cutListSheet('Cut list', reels, settings, '', []));
  expect(list!.values.slice(1).map(row => row[3])).toContain('A1, reel R1');
});

test('what the plan comes to stands on top; pieces are named by their numbers', async () => {
  const reels = await planned();
  const numberOf = new Map<object, string>(reels.flatMap(({ cuts }) => cuts).map((cut, index) => [cut, `H3-${index + 1}`]));
  const [head, table] = valuesOf(cutListSheet('Cut list', reels, settings, 'Jobs', [], ['5 pieces planned.'], numberOf));
  expect(head!.values[2]).toEqual(['5 pieces planned.']);
  expect(table!.values.slice(1).every(row => /^H3-\d/.test(String(row[9])))).toBe(true);
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
