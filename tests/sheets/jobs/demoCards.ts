import { Decimal } from '../../../src/core/units/decimal';
import { cardTable } from '../../../src/sheets/jobs/cardHeadings';
import type { CardOptions } from '../../../src/sheets/benchcard/cardPage';
import { readCards } from '../../../src/sheets/jobs/readCards';
import { sheetContent } from '../table/sheetContent';

const headings = [
  ['Line', 'Wanted for', 'Order', 'Assembly no.', 'Hose', 'Bore (mm)', 'Coupling A', 'Coupling B', 'Quantity'],
  ['Overall length (mm)', 'Cut length (mm)', 'Shortest (mm)', 'Longest (mm)', 'Twist', 'Working pressure (bar)', 'Sleeve'],
  ['Die', 'Dial A', 'Dial B', 'Crimp diameter A (mm)', 'Crimp diameter B (mm)', 'Tolerance (mm)', 'Crimp length (mm)'],
  ['Skive outside (mm)', 'Insertion depth (mm)', 'Angle A', 'Angle B', 'Note'],
].flat();

/** Invented jobs of an invented workshop: never crimp from them. */
export const demoJobs = sheetContent([
  headings,
  [1, 'Harvester 3, topper lift', 'B-41', 'H3-117', 'Larch DN 12', 12.7, '24° cone S 45°', '24° cone S 90°', 2].concat([
    1250,
    1168.5,
    1246,
    1262,
    120,
    275,
    'spiral guard',
    'D23',
    471,
    468,
    23.4,
    23.6,
    0.2,
    31,
    0,
    34,
    45,
    90,
    'mind the clamp',
  ] as any[]),
  [2, 'Share steering <left>', '', '', 'Larch DN 8', 7.9, '24° cone L straight', '24° cone L 90°', 6].concat([
    640,
    570,
    636,
    652,
    '',
    '',
    '',
    'D17',
    402,
    402,
    17.2,
    17.2,
    0.2,
    '',
    '',
    27,
    0,
    90,
    '',
  ] as any[]),
  [3, 'Turbine drive', '', '', 'Rowan DN 25', 25.4, 'split flange straight', 'split flange 90°', 1].concat([
    2180,
    2046,
    2174,
    2200,
    '',
    350,
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    2.5,
    41,
    0,
    90,
    '',
  ] as any[]),
]);

export const demoOptions: CardOptions = {
  rule: { factor: new Decimal(2), hold: '30 to 60 s', source: 'ISO 6605:2017, 5.2' },
  source: 'sheet Jobs (invented)',
  today: '2026-10-05',
};

export const demoCards = readCards(cardTable(demoJobs)!, { unit: 'mm', step: new Decimal(1), pressureUnit: 'bar' });
