import { readRack } from '../../../src/sheets/rack/rack';
import { lengthText } from '../../../src/sheets/table/lengthText';
import type { StockRow } from '../../../src/sheets/rack/rackRow';
import { expectLeftOut, expectQuestions, openSheet, type SheetCase } from './sheetCase';

/** `3: Larch DN 16, 12.5 m × 2, A1, reel R7, lot L7, 2025-04-01` */
const message = ({ row, hose, length, quantity, place, reel, lot, made }: StockRow) =>
  [
    `${row}: ${hose}`,
    `${lengthText(length.value, length.unit.symbol)} ${length.unit.symbol} × ${quantity}`,
    place,
    reel && `reel ${reel}`,
    lot && `lot ${lot}`,
    made,
  ]
    .filter(Boolean)
    .join(', ');

async function expectRack(from: SheetCase): Promise<void> {
  const workbook = await openSheet('rack', 'Rack', from);
  const rack = (await readRack(workbook, 'Rack', new Set(from.take ?? [])))!;
  expect(rack.rows.map(message)).toEqual(from.taken);
  expectLeftOut(rack.report.leftOut, from.leftOut ?? []);
  expectQuestions(rack.questions, from.asks ?? []);
}

/** Racks as other workshops keep them; what each must come to was written down before it was read. */
const SHEETS: readonly SheetCase[] = [
  {
    name: 'what is left on the reel counts, not what it had when it was new',
    rows: [
      ['Hose', 'Reel no.', 'Length (m)', 'Remaining (m)', 'Bay'],
      ['Larch DN 16', 'R7', 50, 12.4, 'A1'],
      ['Larch DN 16', 'R8', 50, '3,25', 'A2'],
      ['Larch DN 16', 'R9', 50, 0, 'A2'],
    ],
    taken: ['2: Larch DN 16, 12.4 m × 1, A1, reel R7', '3: Larch DN 16, 3.25 m × 1, A2, reel R8'],
    leftOut: ['4 problem: is 0'],
  },
  {
    name: 'reels in metres above, offcuts in millimetres below, a total in between',
    rows: [
      ['Full reels', '', '', ''],
      ['Hose', 'On the reel (m)', 'Reels', 'Batch'],
      ['Alder DN 12', 40, 2, 'B1'],
      ['Larch DN 16', 25, 1, 'B2'],
      ['Total', 105, 3, ''],
      [],
      ['Offcuts', '', '', ''],
      ['Place', 'Hose', 'Pcs', 'Length (mm)'],
      ['bin 1', 'Alder DN 12', 3, 820],
      ['bin 1', 'Larch DN 16', 1, '1,250'],
      ['bin 2', 'Larch DN 16', 1, '640,5'],
    ],
    taken: [
      '3: Alder DN 12, 40 m × 2, lot B1',
      '4: Larch DN 16, 25 m × 1, lot B2',
      '9: Alder DN 12, 820 mm × 3, bin 1',
      '10: Larch DN 16, 1.25 mm × 1, bin 1',
      '11: Larch DN 16, 640.5 mm × 1, bin 2',
    ],
    leftOut: ['5 total', '7 remark'],
  },
  {
    name: 'mixed units in the cells, none in the heading: asked for the bare number only',
    rows: [
      ['Hose', 'Length', 'Rack'],
      ['Alder DN 12', '20 m', 'A'],
      ['Alder DN 12', '65 ft', 'A'],
      ['Alder DN 12', 12.5, 'B'],
      ['Alder DN 12', `6' 3"`, 'B'],
      ['Alder DN 12', 'about half', 'B'],
    ],
    taken: ['2: Alder DN 12, 20 m × 1, A', '3: Alder DN 12, 65 ft × 1, A', '5: Alder DN 12, 75 in × 1, B'],
    leftOut: ['4 problem: has no unit', '6 problem: about half'],
    asks: ['Column B: Length has no unit. Which is it? → mm / cm / m / in / ft / yd'],
  },
  {
    name: 'the same, answered: feet',
    rows: [
      ['Hose', 'Length', 'Rack'],
      ['Alder DN 12', '20 m', 'A'],
      ['Alder DN 12', 12.5, 'B'],
    ],
    answers: [['unit', 'Length', 'ft']],
    taken: ['2: Alder DN 12, 20 m × 1, A', '3: Alder DN 12, 12.5 ft × 1, B'],
  },
  {
    name: 'ages in the ways of makers and of sheets',
    rows: [
      ['Hose', 'Length (ft)', 'Date of manufacture'],
      ['Alder DN 12', 100, '2Q25'],
      ['Alder DN 12', 101, 'Q3/2025'],
      ['Alder DN 12', 102, 45_748],
      ['Alder DN 12', 103, 2024],
      ['Alder DN 12', 104, 'Mar 2025'],
      ['Alder DN 12', 105, '03/2025'],
      ['Alder DN 12', 106, 'week 14'],
      ['Alder DN 12', 107, '03/04/2025'],
      ['Alder DN 12', 108, ''],
      ['Alder DN 12', 109, 'September 2024'],
    ],
    details: { formats: { Rack: { 'C4:C4': 'mmm yy' } } },
    taken: [
      '2: Alder DN 12, 100 ft × 1, 2025-04-01',
      '3: Alder DN 12, 101 ft × 1, 2025-07-01',
      '4: Alder DN 12, 102 ft × 1, 2025-04-01',
      '5: Alder DN 12, 103 ft × 1, 2024-01-01',
      '6: Alder DN 12, 104 ft × 1, 2025-03-01',
      '7: Alder DN 12, 105 ft × 1, 2025-03-01',
      '10: Alder DN 12, 108 ft × 1',
      '11: Alder DN 12, 109 ft × 1, 2024-09-01',
    ],
    leftOut: ['8 problem: week 14', '9 problem: 03/04/2025'],
  },
  {
    name: 'one name merged over its reels, a hidden reel, a merged length, an error',
    rows: [
      ['Type of hose', 'Coil no.', 'Length left (yd)', 'Lot'],
      ['Alder DN 12', 'K1', 20, 'L1'],
      ['', 'K2', 30, ''],
      ['', 'K3', 5, ''],
      ['Larch DN 16', 'K4', 9, ''],
      ['', 'K5', '', ''],
      [{ formula: '=Z1', value: { error: '#REF!' } }, 'K6', 4, ''],
    ],
    details: { merges: { Rack: ['A2:A4', 'A5:A6', 'C5:C6', 'D2:D4'] }, hiddenRows: { Rack: [3] } },
    taken: ['2: Alder DN 12, 20 yd × 1, reel K1, lot L1', '3: Alder DN 12, 30 yd × 1, reel K2, lot L1'],
    leftOut: ['4 hidden', '5 problem: merged over rows 5 to 6', '6 problem: merged over rows 5 to 6', '7 problem: #REF!'],
  },
  {
    name: 'feet left, numbers headed #, notes that bar a reel, one that does not',
    rows: [
      ['Hose inventory', '', '', '', ''],
      [],
      ['Bin', 'Hose', 'Reel #', 'Feet left', 'Mfg', 'Notes'],
      ['A1', 'Birch 3/8', 'R1', 125, '1Q25', ''],
      ['A2', 'Birch 3/8', 'R2', "37'", '3Q2024', 'from the old rack'],
      ['A3', 'Birch 1/2', 'R3', `12' 6"`, '', 'DO NOT USE'],
      ['A4', 'Birch 1/2', 'R4', '100 ft', '', 'reserved for the dealer'],
    ],
    selected: 'B5',
    taken: ['4: Birch 3/8, 125 ft × 1, A1, reel R1, 2025-01-01', '5: Birch 3/8, 444 in × 1, A2, reel R2, 2024-07-01'],
    leftOut: ['6 barred: Notes: DO NOT USE', '7 barred: reserved'],
  },
  {
    name: 'every heading over two lines',
    rows: [
      ['Hose', 'Reel', 'Length', 'Date of', 'Lot'],
      ['type', 'no.', 'left (ft)', 'manufacture', 'no.'],
      ['Birch 3/8', 'R1', 50, '2Q25', 'L1'],
      ['Birch 1/2', 'R2', 12.5, '3Q25', 'L2'],
    ],
    selected: 'A3',
    taken: ['3: Birch 3/8, 50 ft × 1, reel R1, lot L1, 2025-04-01', '4: Birch 1/2, 12.5 ft × 1, reel R2, lot L2, 2025-07-01'],
  },
  {
    name: 'the size of the hose in a column beside its name',
    rows: [
      ['Hose', 'Dash', 'Length (ft)'],
      ['Birch', 6, 50],
      ['Birch', -8, 60],
      ['Birch 3/8', -6, 70],
    ],
    taken: ['2: Birch -6, 50 ft × 1', '3: Birch -8, 60 ft × 1', '4: Birch 3/8, 70 ft × 1'],
  },
  {
    name: 'what was used in a column of its own: asked whether it still comes off',
    rows: [
      ['Hose', 'Length (m)', 'Used (m)', 'Reel'],
      ['Alder DN 12', 50, 12, 'R1'],
      ['Alder DN 12', 50, 50, 'R2'],
    ],
    taken: [],
    leftOut: ['2 problem: say whether C: Used (m) comes off it', '3 problem: say whether'],
    asks: ['Is B: Length (m) what is left on the reel, or does C: Used (m) still come off it?'],
  },
  {
    name: 'the same, answered: it comes off',
    rows: [
      ['Hose', 'Length (m)', 'Used (m)', 'Reel'],
      ['Alder DN 12', 50, 12, 'R1'],
      ['Alder DN 12', 50, 50, 'R2'],
      ['Alder DN 12', 50, 51, 'R3'],
      ['Alder DN 12', 50, '', 'R4'],
    ],
    answers: [['meaning', 'length beside Used (m)', 'new']],
    taken: ['2: Alder DN 12, 38 m × 1, reel R1', '5: Alder DN 12, 50 m × 1, reel R4'],
    leftOut: ['3 none wanted', '4 problem: length used is more than the length of the reel'],
  },
  {
    name: 'a book of what goes in and out: three rows of one reel are not three reels',
    rows: [
      ['Date', 'Hose', 'In (m)', 'Out (m)', 'Balance (m)', 'Reel'],
      [45_900, 'Alder DN 12', 50, 0, 50, 'R1'],
      [45_901, 'Alder DN 12', 0, 12, 38, 'R1'],
      [45_902, 'Alder DN 12', 0, 5, 33, 'R1'],
    ],
    details: { formats: { Rack: { 'A2:A4': 'dd/mm/yyyy' } } },
    taken: [],
    leftOut: ['2 problem: say whether each row counts', '3 problem: say whether', '4 problem: say whether'],
    asks: ['Rows 2, 3 and 4 all name reel R1. Does only the last row of a reel count?'],
  },
  {
    name: 'the same, answered: the last row of each reel, and its day is not the day of making',
    rows: [
      ['Date', 'Hose', 'In (m)', 'Out (m)', 'Balance (m)', 'Reel'],
      [45_900, 'Alder DN 12', 50, 0, 50, 'R1'],
      [45_901, 'Alder DN 12', 0, 12, 38, 'R1'],
      [45_902, 'Alder DN 12', 0, 5, 33, 'R1'],
      [45_903, 'Alder DN 12', 20, 0, 20, 'R2'],
    ],
    details: { formats: { Rack: { 'A2:A5': 'dd/mm/yyyy' } } },
    answers: [['meaning', 'rows of one reel', 'last']],
    taken: ['4: Alder DN 12, 33 m × 1, reel R1', '5: Alder DN 12, 20 m × 1, reel R2'],
    leftOut: ['2 replaced: row 4 says what is left on reel R1', '3 replaced: row 4 says what is left on reel R1'],
  },
  {
    name: 'a reel that stands twice in the rack, cell by cell: nobody knows whether there are two',
    rows: [
      ['Hose', 'Length (m)', 'Reel', 'Place'],
      ['Alder DN 12', 50, 'R1', 'A1'],
      ['Larch DN 16', 20, '', 'A2'],
      ['Larch DN 16', 20, '', 'A2'],
      ['Alder DN 12', 12, 'R1', 'A1'],
      ['Alder DN 12', 50, 'R1', 'A1'],
    ],
    taken: [
      '2: Alder DN 12, 50 m × 1, A1, reel R1',
      '3: Larch DN 16, 20 m × 1, A2',
      '4: Larch DN 16, 20 m × 1, A2',
      '5: Alder DN 12, 12 m × 1, A1, reel R1',
    ],
    leftOut: ['6 problem: say whether it is another piece of hose'],
    asks: ['Rows 2 and 6 are alike in every cell, reel R1. Is that one piece of hose, entered twice?'],
  },
  {
    name: 'the same, answered: entered twice',
    rows: [
      ['Hose', 'Length (m)', 'Reel'],
      ['Alder DN 12', 50, 'R1'],
      ['Alder DN 12', 50, 'R1'],
    ],
    answers: [['meaning', 'rows that are alike', 'once']],
    taken: ['2: Alder DN 12, 50 m × 1, reel R1'],
    leftOut: ['3 replaced: row 2 is the same piece of hose'],
  },
  {
    name: 'the same, answered: two pieces',
    rows: [
      ['Hose', 'Length (m)', 'Reel'],
      ['Alder DN 12', 50, 'R1'],
      ['Alder DN 12', 50, 'R1'],
    ],
    answers: [['meaning', 'rows that are alike', 'each']],
    taken: ['2: Alder DN 12, 50 m × 1, reel R1', '3: Alder DN 12, 50 m × 1, reel R1'],
  },
  {
    name: 'units in a row of their own below the headings, pieces among them',
    rows: [
      ['Hose', 'Length', 'Qty'],
      ['', 'm', 'pcs'],
      ['Alder DN 12', 50, 2],
      ['Larch DN 16', 20.5, 1],
    ],
    taken: ['3: Alder DN 12, 50 m × 2', '4: Larch DN 16, 20.5 m × 1'],
    leftOut: ['2 remark'],
  },
  {
    name: 'the length headed as a quantity in metres',
    rows: [
      ['Hose', 'Qty (m)', 'Location'],
      ['Alder DN 12', 38.5, 'A1'],
      ['Larch DN 16', 12, 'A2'],
    ],
    taken: ['2: Alder DN 12, 38.5 m × 1, A1', '3: Larch DN 16, 12 m × 1, A2'],
  },
  {
    name: 'a title over merged cells, headings in two rows',
    rows: [
      ['Stock of the yard', '', '', '', ''],
      ['Hose', 'Reel', '', 'Length (m)', ''],
      ['', 'No.', 'Lot', 'new', 'left'],
      ['Alder DN 12', 'R1', 'L1', 50, 20.5],
      ['Larch DN 16', 'R2', 'L2', 50, 50],
    ],
    details: { merges: { Rack: ['A1:E1', 'A2:A3', 'B2:C2', 'D2:E2'] } },
    taken: ['4: Alder DN 12, 20.5 m × 1, reel R1, lot L1', '5: Larch DN 16, 50 m × 1, reel R2, lot L2'],
  },
];

test.each(SHEETS)('$name', async from => expectRack(from));
