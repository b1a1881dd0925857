import { readRack } from '../../../src/sheets/rack/rack';
import { lengthText } from '../../../src/sheets/table/lengthText';
import type { StockRow } from '../../../src/sheets/rack/rackRow';
import { expectLeftOut, expectQuestions, openSheet, type SheetCase } from './sheetCase';

/** `3: Larch DN 16, 12.5 m × 2, A1, reel R7, lot L7, 2025-04-01` */
const told = ({ row, hose, length, quantity, place, reel, lot, made }: StockRow) =>
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
  expect(rack.rows.map(told)).toEqual(from.taken);
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
