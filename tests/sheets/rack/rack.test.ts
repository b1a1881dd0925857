import { Decimal } from '../../../src/core/units/decimal';
import { rememberRack } from '../../../src/sheets/rack/newestRack';
import { rackSheets, readRack } from '../../../src/sheets/rack/rack';
import { rackIn } from '../../../src/sheets/rack/rackRow';
import { reelLengths } from '../../../src/sheets/rack/reelLengths';
import { rememberAnswer } from '../../../src/sheets/table/tableAnswers';
import { fakeWorkbook, type FakeCell, type FakeDetails } from '../../workbook/fakeWorkbook';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { treeTables } from '../../core/catalogue/treeCatalogue';

const book = (rows: readonly (readonly FakeCell[])[], details: FakeDetails = {}) =>
  fakeWorkbook({ Rack: rows }, { sheet: 'Rack', address: 'A1' }, details).workbook;
/** Rows as `row: hose, length in mm × quantity, place, reel, lot, made`. */
async function message(rows: readonly (readonly FakeCell[])[], details: FakeDetails = {}) {
  const rack = await readRack(book(rows, details), 'Rack');
  return rackIn(rack!.rows, 'mm').map(({ row, hose, length, quantity, place, reel, lot, made }) =>
    [`${row}: ${hose}`, `${length} × ${quantity}`, place, reel, lot, made].filter(Boolean).join(', '),
  );
}
const leftOut = async (rows: readonly (readonly FakeCell[])[], details: FakeDetails = {}) =>
  (await readRack(book(rows, details), 'Rack'))!.report.leftOut.map(({ row, reason }) => `${row} ${reason}`);

test.each([
  ['Length (metres)', '20000'],
  ['Length (m)', '20000'],
  ['Length (foot)', '6096'],
  ['Length, yd', '18288'],
  ['Length (″)', '508'],
  ['Length left mm', '20'],
  ['On the reel (cm)', '200'],
])('20 under %s is %s mm of hose (factors: NIST SP 811, appendix B)', async (heading, mm) => {
  expect(
    await message([
      ['Hose', heading],
      ['Alder DN 12', 20],
    ]),
  ).toEqual([`2: Alder DN 12, ${mm} × 1`]);
});

test('a length without a unit is asked about, and no reel is used until it is answered', async () => {
  const workbook = book([
    ['Hose', 'Length', 'Reels'],
    ['Alder DN 12', 50, 2],
  ]);
  const open = (await readRack(workbook, 'Rack'))!;
  expect(open.rows).toEqual([]);
  expect(open.questions.map(({ sentence }) => sentence)).toEqual(['Column B: Length has no unit. Which is it?']);
  expect(open.problems).toMatchObject([{ row: 2, sentence: expect.stringMatching(/has no unit/) }]);
  await rememberAnswer(workbook, 'rack', 'Rack', 'unit', 'Length', 'm');
  const rack = (await readRack(workbook, 'Rack'))!;
  expect(rackIn(rack.rows, 'mm').map(({ length, quantity }) => [`${length}`, quantity])).toEqual([['50000', 2]]);
});

test('place, reel, lot and day of making are read; the row that cannot be read says why', async () => {
  const rows = [
    ['Our stock', '', '', '', '', '', ''],
    ['Hose', 'Length (m)', 'Qty', 'Bay', 'Reel no.', 'Batch', 'Made'],
    ['Larch DN 12', 40, 2, 'A1', 'R7', 'L77', 45_992],
    ['Larch DN 12', '3,25', 1, 'A2', '', '', '2020-06'],
    ['Larch DN 12', 'some', 1, 'A3', '', '', ''],
    ['Larch DN 12', 2, 1, 'A4', '', '', 'last spring'],
    ['Larch DN 12', 2, 1, 'A5', '', '', '03/04/2025'],
    ['Larch DN 10', 5, 0, 'A6', '', '', ''],
    ['Total', '', 5, '', '', '', ''],
  ];
  expect(await message(rows)).toEqual([
    '3: Larch DN 12, 40000 × 2, A1, R7, L77, 2025-12-01',
    '4: Larch DN 12, 3250 × 1, A2, 2020-06-01',
  ]);
  expect(await leftOut(rows)).toEqual(['5 problem', '6 problem', '7 problem', '8 none wanted', '9 total']);
});

test('hidden rows are left out and told; a tick takes them', async () => {
  const rows = [
    ['Hose', 'Length (m)', 'Place'],
    ['Larch DN 12', 40, 'A1'],
    ['Larch DN 12', 30, 'A2'],
  ];
  const workbook = book(rows, { hiddenRows: { Rack: [1] } });
  expect((await readRack(workbook, 'Rack'))!.report).toMatchObject({ taken: [3], leftOut: [{ row: 2, reason: 'hidden' }] });
  expect((await readRack(workbook, 'Rack', new Set(['hidden'])))!.report).toMatchObject({ taken: [2, 3], leftOut: [] });
});

test('two tables are read, each with its own columns; a merged hose holds for all its rows', async () => {
  const rows = [
    ['Hose', 'Length (m)', 'Qty', 'Place'],
    ['Larch DN 12', 40, 1, 'A1'],
    ['', 30, 1, 'A2'],
    ['', '', '', ''],
    ['Hose', 'Place', 'Length (mm)', 'Qty'],
    ['Alder DN 12', 'B1', 900, 3],
  ];
  expect(await message(rows, { merges: { Rack: ['A2:A3'] } })).toEqual([
    '2: Larch DN 12, 40000 × 1, A1',
    '3: Larch DN 12, 30000 × 1, A2',
    '6: Alder DN 12, 900 × 3, B1',
  ]);
});

test('racks are found, the likeliest first; job sheets, cut lists and the catalogue’s hoses are none', async () => {
  const { workbook } = fakeWorkbook(
    {
      Jobs: [
        ['Line', 'Hose', 'Fitting A', 'Fitting B', 'Length (mm)', 'Qty'],
        [1, 'Alder DN 12', 'x', 'y', 900, 2],
      ],
      Small: [
        ['Hose', 'Length (m)'],
        ['Alder DN 12', 20],
      ],
      Stock: [
        ['Hose', 'Length (m)', 'Reels', 'Bay', 'Lot'],
        ['Alder DN 12', 20, 1, 'A1', 'L7'],
      ],
      'Cut list': [
        ['Done', 'Cut', 'Reel', 'Hose', 'Cut length (mm)', 'Line'],
        ['☐', 1, 1, 'Alder DN 12', 900, 1],
      ],
      Hoses: [
        ['Hose', 'Family', 'Bore (mm)', 'Reel length (m)'],
        ['Alder DN 12', 'Alder', 12.7, 40],
      ],
      Blank: [],
    },
    { sheet: 'Jobs', address: 'A1' },
  );
  expect(await rackSheets(workbook)).toEqual(['Stock', 'Small']);
  expect(await readRack(workbook, 'Hoses')).toBeUndefined();
  expect(await readRack(workbook, 'Blank')).toBeUndefined();
});

test('a heading that nobody knows can be said to be the length', async () => {
  const workbook = book([
    ['Hose', 'Length (m)', 'Klafter (m)'],
    ['Alder DN 12', 20, 7],
  ]);
  await rememberAnswer(workbook, 'rack', 'Rack', 'role', 'Klafter (m)', 'length');
  const rack = (await readRack(workbook, 'Rack'))!;
  expect(rack.rows.map(({ length }) => `${length.value} ${length.unit.symbol}`)).toEqual(['7 m']);
});

test('lengths of new reels are the catalogue’s, in the unit asked for (1 in = 25.4 mm, NIST SP 811)', () => {
  const [heading, ...rows] = treeTables.hoses!;
  const hoses = [[...heading!, 'Reel length (m)'], ...rows.map((row, i) => [...row, i === 0 ? 40 : null])];
  const catalogue = readCatalogue({ ...treeTables, hoses });
  expect([...reelLengths(catalogue, 'mm')].map(([hose, length]) => [hose, `${length}`])).toEqual([['alder dn 12', '40000']]);
  expect(reelLengths(catalogue, 'in').get('alder dn 12')!.eq(new Decimal(40_000).div('25.4'))).toBe(true);
  expect(reelLengths(undefined, 'mm').size).toBe(0);
});

describe('the rack’s own status', () => {
  const rows: readonly (readonly FakeCell[])[] = [
    ['Hose', 'Length (m)', 'Place', 'Status'],
    ['Larch DN 12', 40, 'A1', ''],
    ['Larch DN 12', 30, 'A2', 'Quarantine'],
    ['Larch DN 12', 20, 'A3', 'blocked - see QA'],
    ['Larch DN 12', 10, 'A4', 'Reserved for order 77'],
    ['Larch DN 12', 9, 'A5', 'scrap'],
    ['Larch DN 12', 8, 'A6', 'OK'],
    ['Larch DN 12', 7, 'A7', 'Not released'],
    ['Larch DN 12', 6, 'A8', 'do not use!'],
    ['Larch DN 12', 5, 'A9', 'in use'],
  ];
  test('reels that it keeps from being used are left out with its words; a tick takes them', async () => {
    const rack = (await readRack(book(rows), 'Rack'))!;
    expect(rack.rows.map(({ row }) => row)).toEqual([2, 7, 10]);
    expect(
      rack.report.leftOut.filter(({ reason }) => reason === 'barred').map(({ row, sentence }) => `${row} ${sentence}`),
    ).toEqual([
      '3 Status: Quarantine',
      '4 Status: blocked - see QA',
      '5 Status: Reserved for order 77',
      '6 Status: scrap',
      '8 Status: Not released',
      '9 Status: do not use!',
    ]);
    const taken = (await readRack(book(rows), 'Rack', new Set(['barred'])))!;
    expect(taken.rows.map(({ row }) => row)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(taken.rows.filter(({ barred }) => barred).map(({ row }) => row)).toEqual([3, 4, 5, 6, 8, 9]);
  });

  test('words that nobody knows are asked about, and no such reel is used until that is answered', async () => {
    const workbook = book([
      rows[0]!,
      ['Larch DN 12', 40, 'A1', 'Q2'],
      ['Larch DN 12', 30, 'A2', 'grün'],
      ['Larch DN 12', 20, 'A3', 'q2'],
    ]);
    const open = (await readRack(workbook, 'Rack'))!;
    expect(open.rows).toEqual([]);
    expect(open.questions.map(({ sentence }) => sentence)).toEqual([
      'Column D: Status says “grün”. May that hose be used?',
      'Column D: Status says “q2”. May that hose be used?',
    ]);
    const [green, q2] = open.questions;
    await rememberAnswer(workbook, 'rack', 'Rack', green!.asked, green!.heading, 'free');
    await rememberAnswer(workbook, 'rack', 'Rack', q2!.asked, q2!.heading, 'barred');
    const rack = (await readRack(workbook, 'Rack'))!;
    expect(rack.questions).toEqual([]);
    expect(rack.rows.map(({ row }) => row)).toEqual([3]);
    expect(rack.report.leftOut).toEqual([
      { row: 2, reason: 'barred', sentence: 'Status: Q2' },
      { row: 4, reason: 'barred', sentence: 'Status: q2' },
    ]);
  });

  test('below “Reserved for” or “Blocked” whatever stands there counts, in any of several columns', async () => {
    const several = [
      ['Hose', 'Length (m)', 'Condition', 'Reserved for', 'Blocked'],
      ['Larch DN 12', 40, 'good', '', 'no'],
      ['Larch DN 12', 30, 'good', 'Farm Lindenhof', ''],
      ['Larch DN 12', 20, 'new', '-', 'x'],
    ];
    expect(await message(several)).toEqual(['2: Larch DN 12, 40000 × 1']);
    expect(await leftOut(several)).toEqual(['3 barred', '4 barred']);
  });
});

describe('how many reels', () => {
  const rowsWith = (heading: string, ...counts: readonly FakeCell[]) => [
    ['Hose', 'Length (m)', heading, 'Place'],
    ...counts.map((count, index) => ['Larch DN 12', 20, count, `A${index + 1}`]),
  ];

  test.each(['No. of reels', 'No of reels', '# of reels', 'Reels', 'Qty of coils', 'Reel count', 'Rolls', 'Reels on hand'])(
    '%s: three count as three, and a row with none is not planned from',
    async heading => {
      expect(await message(rowsWith(heading, 3, 0))).toEqual(['2: Larch DN 12, 20000 × 3, A1']);
      expect(await leftOut(rowsWith(heading, 3, 0))).toEqual(['3 none wanted']);
    },
  );

  test('a column of counts that is not read is asked about, and no reel is used until it is answered', async () => {
    const workbook = book(rowsWith('On the shelf', 3, 0));
    const open = (await readRack(workbook, 'Rack'))!;
    expect(open.questions.map(({ sentence }) => sentence)).toEqual(['No column says how many. Is C: On the shelf the quantity?']);
    expect(open.rows).toEqual([]);
    expect(open.problems[0]).toEqual({
      row: 2,
      sentence: 'no column says how many: say whether C: On the shelf is the quantity',
    });
    await rememberAnswer(workbook, 'rack', 'Rack', 'role', 'On the shelf', 'quantity');
    expect((await readRack(workbook, 'Rack'))!.rows.map(({ quantity }) => quantity)).toEqual([3]);
    await rememberAnswer(workbook, 'rack', 'Rack', 'role', 'On the shelf', 'none');
    expect((await readRack(workbook, 'Rack'))!.rows.map(({ quantity }) => quantity)).toEqual([1, 1]);
  });
});

test('what was said about a rack holds for the rack that a cut list leaves: nobody is asked twice', async () => {
  const rows = [
    ['Hose', 'Length', 'Status'],
    ['Alder DN 12', 50, 'loft'],
  ];
  const { workbook } = fakeWorkbook({ Rack: rows, 'Rack after': rows }, { sheet: 'Rack', address: 'A1' });
  const asked = async (sheet: string) => (await readRack(workbook, sheet))!.questions.map(({ asked }) => asked);
  expect(await asked('Rack')).toEqual(['unit', 'meaning']);
  await rememberAnswer(workbook, 'rack', 'Rack', 'unit', 'Length', 'm');
  await rememberAnswer(workbook, 'rack', 'Rack', 'meaning', 'status loft', 'free');
  expect(await asked('Rack')).toEqual([]);
  expect(await asked('Rack after')).toEqual(['unit', 'meaning']);
  await rememberRack(workbook, 'Rack after', { sheet: 'Rack', pieces: [] });
  expect(await asked('Rack after')).toEqual([]);
  expect((await readRack(workbook, 'Rack after'))!.rows).toHaveLength(1);
  // A change of mind about the old one is none about the new one.
  await rememberAnswer(workbook, 'rack', 'Rack', 'meaning', 'status loft', undefined);
  expect([await asked('Rack'), await asked('Rack after')]).toEqual([['meaning'], []]);
});

test('of rows that are alike in every cell and name a reel, only the first is taken until somebody says what they are', async () => {
  const workbook = book([
    ['Hose', 'Length (m)', 'Reel', 'Place'],
    ['Alder DN 12', 50, 'R1', 'A1'],
    ['Alder DN 12', 50, 'R1', 'A2'],
    ['Alder DN 12', 50, '', 'A1'],
    ['Alder DN 12', 50, '', 'A1'],
    ['Alder DN 12', 50, 'R1', 'A1'],
    ['Alder DN 12', 50, 'R1', 'A1'],
  ]);
  const open = (await readRack(workbook, 'Rack'))!;
  expect(open.questions).toEqual([
    {
      asked: 'meaning',
      heading: 'rows that are alike',
      column: 'C: Reel',
      sentence: 'Rows 2 and 6 are alike in every cell, reel R1. Is that one piece of hose, entered twice?',
      choices: [
        { value: 'once', label: 'Yes, count it once' },
        { value: 'each', label: 'No, each row is a piece of hose' },
      ],
    },
  ]);
  expect(open.report.taken).toEqual([2, 3, 4, 5]);
  const sentence = 'the row is row 2 once more, cell by cell: say whether it is another piece of hose';
  expect(open.problems).toEqual([6, 7].map(row => ({ row, sentence })));
  await rememberAnswer(workbook, 'rack', 'Rack', 'meaning', 'rows that are alike', 'once');
  const once = (await readRack(workbook, 'Rack'))!;
  expect([once.report.taken, once.problems, once.questions]).toEqual([[2, 3, 4, 5], [], []]);
  expect(once.report.leftOut.map(({ row, sentence }) => `${row} ${sentence}`)).toEqual([
    '6 row 2 is the same piece of hose',
    '7 row 2 is the same piece of hose',
  ]);
  await rememberAnswer(workbook, 'rack', 'Rack', 'meaning', 'rows that are alike', 'each');
  expect((await readRack(workbook, 'Rack'))!.report.taken).toEqual([2, 3, 4, 5, 6, 7]);
});
