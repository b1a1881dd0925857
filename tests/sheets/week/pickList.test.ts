import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { readRack } from '../../../src/sheets/rack/rack';
import { pickList } from '../../../src/sheets/week/pickList';
import { rackReels } from '../../../src/sheets/week/pickReels';
import { orderOfWork } from '../../../src/sheets/week/orderOfWork';
import { orderSheet, pickSheet } from '../../../src/sheets/week/weekSheets';
import { workLines } from '../../../src/sheets/week/workLines';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const HEAD = [
  'Line',
  'Hose',
  'Coupling A',
  'Coupling B',
  'Qty',
  'Overall (mm)',
  'Cut length (mm)',
  'Sleeve',
  'Ferrule',
  'Die',
  'Dial',
  'Status',
];
const JOBS: readonly (readonly FakeCell[])[] = [
  HEAD,
  [1, 'Larch DN 12', 'cone straight', 'cone 90°', 4, 1250, 1168, 'spiral guard', 'F12', 'D26', 300, ''],
  [2, 'Larch DN 12', 'cone straight', 'cone straight', 2, 900, 818, '', 'F12', 'D26', 300, ''],
  [3, 'Larch DN 8', 'cone L', 'cone L', 3, 640, 570, 'spiral guard', 'F8', 'D18', 210, ''],
  [4, 'Larch DN 8', 'cone L', 'cone L', 3, 640, 570, '', 'F8', 'D18', 210, 'done'],
];
const RACK = [
  ['Hose', 'Length (m)', 'Place', 'Lot', 'Reel'],
  ['larch dn 12', 9, 'B10', 'L71', '7'],
  ['Larch DN 12', 2.5, 'B2', 'L70', ''],
];
const read = async () => {
  const { workbook } = fakeWorkbook({ Jobs: JOBS, Rack: RACK }, { sheet: 'Jobs', address: 'A2' });
  const jobs = await readJobs(workbook, { step: { value: new Decimal(1), unit: measureUnit('length', 'mm')! } });
  return { jobs, rack: (await readRack(workbook, 'Rack'))! };
};

test('what to fetch: hose with its reels as the rack is walked, couplings and ferrules of both ends, sleeves over the overall length', async () => {
  const { jobs, rack } = await read();
  const list = pickList(jobs, rackReels(rack.rows, 'mm'), 'mm');
  const short = list.items.map(({ kind, part, count, length }) => `${kind} ${part}: ${count ?? `${length} mm`}`);
  // By hand: 4·1168 + 2·818 = 6308; 3·570 = 1710; straight 4 + 2 + 2; ferrules 2·(4 + 2), 2·3; sleeve 4·1250 + 3·640 = 6920.
  expect(short).toEqual([
    'Hose Larch DN 12: 6308 mm',
    'Hose Larch DN 8: 1710 mm',
    'Coupling cone straight: 8',
    'Coupling cone 90°: 4',
    'Coupling cone L: 6',
    'Ferrule F12: 12',
    'Ferrule F8: 6',
    'Sleeve spiral guard: 6920 mm',
  ]);
  expect(list.items[0]!.reels.map(({ place, length }) => `${place} ${length}`)).toEqual(['B2 2500', 'B10 9000']);
  expect(list.problems).toEqual(['Larch DN 8: none in the rack']);
  expect(list.lineCount).toBe(3);
});

test('both as sheets: every row stands there, and names stay text', async () => {
  const { jobs, rack } = await read();
  const order = orderOfWork(workLines(jobs, ''), {
    inMachine: () => ({ die: '', dial: '' }),
    share: new Decimal('0.5'),
    step: () => undefined,
  });
  const { workbook } = fakeWorkbook({ Jobs: JOBS }, { sheet: 'Jobs', address: 'A2' });
  const list = pickList(jobs, rackReels(rack.rows, 'mm'), 'mm');
  await workbook.write([...orderSheet('Order', order, 'from Jobs'), ...pickSheet('Pick', list, 'from Jobs')]);
  const { values: steps } = (await workbook.used('Order'))!;
  expect(steps.slice(4, 7).map(row => row.slice(0, 8))).toEqual([
    [1, '', 'D26', 300, '1', '', 'Larch DN 12', 'A + B'],
    [1, '', 'D26', 300, '2', '', 'Larch DN 12', 'A + B'],
    [2, '', 'D18', 210, '3', '', 'Larch DN 8', 'A + B'],
  ]);
  const { values: picks } = (await workbook.used('Pick'))!;
  expect(picks[4]).toEqual([
    '☐',
    'Hose',
    'Larch DN 12',
    '',
    '6308 mm',
    '1 (4672), 2 (1636)',
    'B2, lot L70: 2500 mm\nB10, reel 7, lot L71: 9000 mm',
  ]);
});
