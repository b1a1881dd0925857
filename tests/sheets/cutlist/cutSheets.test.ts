import { CUT_CAUTION } from '../../../src/sheets/print/cautions';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { Decimal } from '../../../src/core/units/decimal';
import type { Change } from '../../../src/workbook/workbook';
import { cutListSheet, type CutListWords } from '../../../src/sheets/cutlist/cutListSheet';
import { datedSheetName, freeSheetName, isDatedAfter } from '../../../src/sheets/print/freeSheetName';
import { hoseJobs } from '../../../src/sheets/cutlist/hoseJob';
import { planHose } from '../../../src/sheets/cutlist/planHose';
import type { PlannedReel } from '../../../src/sheets/cutlist/plannedReel';
import { blockOf } from '../../../src/workbook/a1';
import { readRack } from '../../../src/sheets/rack/rack';
import { rackIn, type RackRow } from '../../../src/sheets/rack/rackRow';
import { rackAfterSheet } from '../../../src/sheets/cutlist/rackAfterSheet';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { USUAL_SETTINGS } from './usualSettings';

const d = (value: number) => new Decimal(value);
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
  const [job] = hoseJobs(lines, rack, USUAL_SETTINGS, '2026-10-05');
  return (await planHose(job!, USUAL_SETTINGS, undefined, solveCutPlan)).reels;
}

const NO_WORDS: CutListWords = { source: '', result: [], notes: [], hoses: new Map() };

/** A cut list as the cells of its sheet, below its head: headings, then rows. */
function listOf(changes: readonly Change[]) {
  const tables = valuesOf(changes);
  const { at, values } = tables.find(({ values: rows }) => rows[0]!.includes('Cut to (mm)'))!;
  const headings = values[0]!;
  const cell = (row: readonly unknown[], heading: string, from = 0) => row[headings.indexOf(heading, from)];
  return {
    headings,
    head: tables[0]!.values.map(([text]) => String(text)),
    top: Number(/^A(\d+):/.exec(at.address)![1]),
    rows: values.slice(1),
    /** The rows with cuts, each cut as its quantity, length, line and piece. */
    cuts: values
      .slice(1)
      .flatMap(row =>
        headings.flatMap((heading, at) =>
          heading === '✓' && row[at] === '☐'
            ? [{ qty: row[at + 1], length: row[at + 2], line: row[at + 3], piece: row[at + 4], reel: Number(row[0]) }]
            : [],
        ),
      ),
    cell,
  };
}

const list = (
  reels: readonly PlannedReel[],
  own = USUAL_SETTINGS,
  words: Partial<CutListWords> = {},
  numbers?: Map<object, string>,
) => cutListSheet('Cut list', reels, own, { ...NO_WORDS, ...words }, numbers);

test('equal cuts of a line are one, several side by side in cutting order, and what is left of the reel behind the last', async () => {
  const reels = await planned();
  const { headings, cuts, rows, cell } = listOf(list(reels));
  expect(headings.slice(0, 9)).toEqual(['Reel', 'Place', 'Lot', 'Length (mm)', '✓', 'Qty', 'Cut to (mm)', 'Line', 'No.']);
  expect(headings.slice(-3)).toEqual(['Left (mm)', 'Rest to', 'Hose']);
  // By hand: 2 × 1169 and 3 × 700 of 2400 and 5000 with 20 squared off and 3 a cut.
  expect(cuts.map(({ qty, length }) => [qty, length])).toEqual(expect.arrayContaining([[2, 1169]]));
  expect(cuts.reduce((sum, { qty }) => sum + Number(qty), 0)).toBe(5);
  for (const row of rows.filter(each => cell(each, 'Left (mm)') !== '' && cell(each, 'Left (mm)') !== undefined)) {
    const own = cuts.filter(({ reel }) => reel === row[0]);
    const used = own.reduce((sum, { qty, length }) => sum + Number(qty) * (Number(length) + 3), 20);
    const left = Math.max(0, reels[Number(row[0]) - 1]!.rack.length.toNumber() - used);
    expect([cell(row, 'Left (mm)'), cell(row, 'Rest to')]).toEqual([left, left >= 500 ? 'rack' : left > 0 ? 'scrap' : '']);
  }
});

test('hose beyond the age limit is marked above the cuts of its reel, and a piece of a line that is cut in part keeps its whole', async () => {
  const limited = { ...USUAL_SETTINGS, ageLimitMonths: 12 };
  const [job] = hoseJobs(lines, rack.slice(0, 1), limited, '2026-10-05');
  const { reels } = await planHose(job!, limited, undefined, solveCutPlan);
  const old = listOf(list(reels, limited));
  const warning = old.rows.findIndex(row => String(row[0]).startsWith('Reel 1 OLDER THAN THE LIMIT: '));
  expect(old.rows[warning + 1]![0]).toBe(1);
  expect(old.cuts.map(({ piece }) => piece)).toEqual(['1–2 of 2']);
  const [short] = hoseJobs([{ ...lines[1]!, quantity: 5 }], rack.slice(0, 1), USUAL_SETTINGS, '2026-10-05');
  const part = await planHose(short!, USUAL_SETTINGS, undefined, solveCutPlan);
  expect(listOf(list(part.reels)).cuts.map(({ piece }) => piece)).toEqual(['1–3 of 5']);
});

test('what is said goes on further rows where it is longer than the page is wide: notes above the list, a hose’s own at its name', async () => {
  const said = `${'line 12 Topper lift: 3 × 4200 mm; '.repeat(12)}end.`;
  const changes = list(await planned(), USUAL_SETTINGS, { notes: [said], hoses: new Map([['larch', said]]) });
  const { head, rows, top } = listOf(changes);
  expect(Math.max(...[...head, ...rows.map(row => String(row[0]))].map(text => text.length))).toBeLessThanOrEqual(118);
  expect(head.join(' ')).toContain(`${said} ${CUT_CAUTION}`);
  expect(rows.map(row => String(row[0])).join(' ')).toContain(`Larch: ${said} 1`);
  expect(top).toBe(head.length + 1);
});

test('the list says what comes off every reel first, and so it does where that is nothing', async () => {
  const headWith = async (squaring: Decimal | undefined) =>
    listOf(list(await planned(), { ...USUAL_SETTINGS, squaring })).head.join(' ');
  expect(await headWith(d(20))).toContain('Square off 20 mm of every reel first.');
  expect(await headWith(undefined)).toContain('Nothing comes off a reel for squaring.');
  expect(await headWith(d(0))).toContain('Nothing comes off a reel for squaring.');
});

test('all changes touch the new sheet only, the sheet is added first, and blocks have their shape', async () => {
  const reels = await planned();
  for (const changes of [
    cutListSheet('New', reels, USUAL_SETTINGS, NO_WORDS),
    rackAfterSheet('New', await rackOf(), reels, 'mm'),
  ]) {
    expect(changes[0]).toEqual({ kind: 'addSheet', sheet: 'New' });
    for (const change of changes) {
      const sheet = 'at' in change ? change.at.sheet : change.kind === 'name' ? change.refersTo.sheet : change.sheet;
      expect(sheet).toBe('New');
      expect(change.kind).not.toBe('formulas');
    }
  }
});

/** Many reels of some hoses, each with one to nine cuts of different lines. */
function manyReels(count: number, hoses: number): readonly PlannedReel[] {
  return Array.from({ length: count }, (_, index): PlannedReel => {
    const hose = `Larch DN ${Math.floor((index * hoses) / count) + 1}`;
    const cuts = Array.from({ length: 1 + (index % 9) }, (__, nth) => {
      const line = { ...lines[0]!, line: `${(index % 97) * 9 + nth + 1}`, label: 'Beet lifter, left arm' };
      return { length: d(400 + nth), line, piece: 1 };
    });
    const own = { ...rack[1]!, hose, lot: `L${index % 60}` };
    return { rack: own, cuts, squaring: d(20), kerf: d(3), left: d(100), isKept: false, isTooOld: false };
  });
}

/** Sizes as the changes set them: widths of all columns, heights of all rows, letters. */
function sizesOf(changes: readonly Change[]) {
  const widths: number[] = [];
  const heights: number[] = [];
  const fonts: number[] = [];
  for (const change of changes) {
    if (change.kind !== 'style') continue;
    const { row, column, rows } = blockOf(change.at.address)!;
    const { columnWidth, rowHeight, fontSize } = change.style;
    if (columnWidth !== undefined) widths[column] = columnWidth;
    if (rowHeight !== undefined) for (let at = row; at < row + rows; at += 1) heights[at] = rowHeight;
    if (fontSize !== undefined) fonts.push(fontSize);
  }
  const page = changes.flatMap(change => (change.kind === 'page' ? [change.page] : []))[0]!;
  return { widths, heights, fonts, page };
}

test.each([false, true])('pages fit A4 and Letter at full size and name their hose; a page per hose: %s', pagePerHose => {
  const changes = list(manyReels(200, 5), { ...USUAL_SETTINGS, pagePerHose });
  const { rows, top } = listOf(changes);
  const { widths, heights, fonts, page } = sizesOf(changes);
  expect(page).toMatchObject({ orientation: 'portrait', titleRows: `${top}:${top}`, scale: 100 });
  // Rows are read at arm's length: nine points; headings a point less.
  expect([...new Set(fonts)].sort()).toEqual([14, 8, 9]);
  const printed = blockOf(page.printArea!)!;
  // ISO 216: A4 is 595 points wide; Letter is 792 points high (ANSI/ASME Y14.1): the narrower and the shorter.
  expect(widths.slice(0, printed.columns).reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(595 - 2 * page.margin!);
  const starts = [1, ...page.breaksBefore!, printed.rows + 1];
  starts.slice(1).forEach((next, index) => {
    const own = heights.slice(starts[index]! - 1, next - 1).reduce((sum, height) => sum + height, 0);
    expect(own + (index > 0 ? heights[top - 1]! : 0)).toBeLessThanOrEqual(792 - 2 * page.margin!);
  });
  for (const start of page.breaksBefore!) expect(rows[start - top - 1]![0]).toMatch(/^Larch DN \d(?:, continued)?$/);
  const firsts = rows.flatMap((row, index) => (/^Larch DN \d$/.test(String(row[0])) ? [index + top + 1] : [])).slice(1);
  if (pagePerHose) expect(page.breaksBefore).toEqual(expect.arrayContaining(firsts));
  else expect(firsts.some(first => !page.breaksBefore!.includes(first))).toBe(true);
});

test('a short list names what each cut is for; a long one puts more cuts side by side instead', () => {
  const count = (changes: readonly Change[], heading: string) => listOf(changes).headings.filter(each => each === heading).length;
  const [short, long] = [list(manyReels(20, 2)), list(manyReels(200, 5))];
  expect(count(short, 'Label')).toBe(count(short, '✓'));
  expect(count(long, 'Label')).toBe(0);
  expect(count(long, '✓')).toBeGreaterThan(count(short, '✓'));
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
  const [job] = hoseJobs(lines, rackIn(own.rows, 'mm'), USUAL_SETTINGS, '2026-10-05');
  return (await planHose(job!, USUAL_SETTINGS, undefined, solveCutPlan)).reels;
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

test('units in a row of their own and words that stand alone get no note: the sheet is read as its rack was', async () => {
  const own = await rackOf([
    ['Hose', 'Remaining', 'Qty', 'Lot'],
    ['', 'm', '', ''],
    ['Larch', 8, 1, 'L7'],
    ['Old stock, third bay', '', '', ''],
    ['Alder', 17.974, 1, 'L8'],
  ]);
  const [table] = valuesOf(rackAfterSheet('After', own, await plannedOn(own), 'mm'));
  const { workbook } = fakeWorkbook({ After: table!.values }, { sheet: 'After', address: 'A3' });
  const read = (await readRack(workbook, 'After'))!;
  expect(read.questions).toEqual([]);
  expect(read.problems).toEqual([]);
  expect(rackIn(read.rows, 'mm').map(({ hose, length }) => `${hose} ${length}`)).toContain('Alder 17974');
});

test('ends on a rack in feet keep their exact length and show it in thousandths of a foot at most', async () => {
  const own = await rackOf([
    ['Hose', 'Length (ft)'],
    ['Larch', 16],
  ]);
  const reel: PlannedReel = { ...(await plannedOn(own))[0]!, left: d(1000), isKept: true };
  const changes = rackAfterSheet('Rack after', own, [reel], 'mm');
  // 1000 mm are 3.280839895 ft (NIST SP 811: the foot is 304.8 mm).
  const row = valuesOf(changes)[0]!.values.findIndex(([, length]) => length === 3.280839895);
  expect(row).toBeGreaterThan(0);
  expect(changes).toContainEqual({
    kind: 'format',
    at: { sheet: 'Rack after', address: `B${row + 1}` },
    numberFormat: '0.0##',
  });
});

test('numbers of reels are named on the cut list', async () => {
  const reels = await plannedOn(await rackOf());
  const { rows, cell } = listOf(list(reels));
  expect(rows.map(row => cell(row, 'Place'))).toContain('A1, reel R1');
});

test('what the plan comes to stands on top; pieces are named by their numbers, in short where line and number say which', async () => {
  const reels = await planned();
  const cuts = reels.flatMap(reel => reel.cuts);
  const named = (numberOf: (cut: (typeof cuts)[number]) => string) =>
    listOf(
      list(
        reels,
        USUAL_SETTINGS,
        { source: 'Jobs', result: ['5 pieces planned.'] },
        new Map(cuts.map(cut => [cut, numberOf(cut)])),
      ),
    );
  const full = named(cut => `H3-${cuts.indexOf(cut) + 1}`);
  expect(full.head.slice(0, 3)).toEqual(['Cut list', 'Jobs', '5 pieces planned.']);
  expect(full.cuts.every(({ piece }) => /^H3-\d/.test(String(piece)))).toBe(true);
  const short = named(cut => `41/${cut.line.line}-${cut.piece}`);
  expect(short.head).toContain('Line and No. are the piece number: No. 2 of line 7 is piece 41/7-2.');
  expect(short.cuts.filter(({ line }) => line === 1).map(({ piece }) => piece)).toEqual(['1, 2']);
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

test.each(['Hoses', 'hoses', 'Hoses of the shop 2026-01-01', 'A sheet with a very long name, 3'])(
  'dated sheets of %j are told from others',
  name => {
    const first = datedSheetName(name, [], '2026-10-05');
    const second = datedSheetName(name, [first], '2026-10-05');
    for (const dated of [first, second]) expect([isDatedAfter(dated, name), isDatedAfter(dated, 'Hose')]).toEqual([true, false]);
    expect(isDatedAfter(name, 'Hoses')).toBe(false);
  },
);
