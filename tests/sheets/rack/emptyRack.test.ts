import { rackSheets, readRack } from '../../../src/sheets/rack/rack';
import { office, planned, week, written } from '../pieces/shopOffice';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { rememberRack } from '../../../src/sheets/rack/newestRack';

const HAZEL = 'Hazel DN 12';
const USED_UP = [
  ['Hose', 'Length (mm)', 'Place', 'Lot'],
  [HAZEL, 6700, 'A1', 'L1'],
  [HAZEL, 1500, 'A2', 'L2'],
];

test('a rack that was used up stays the newest: nothing is planned from the reels it was made from', async () => {
  const workbook = office({
    Monday: week([1, HAZEL, 6500, 1], [2, HAZEL, 1400, 1]),
    Tuesday: week([5, HAZEL, 1000, 3]),
    Rack: USED_UP,
  });
  const { writing } = await written(workbook, 'Monday');
  expect((await workbook.used(writing.rackAfter))!.values).toHaveLength(1);
  expect(await rackSheets(workbook)).toEqual(['Rack after', 'Rack']);
  const { gathered, plans } = await planned(workbook, 'Tuesday');
  expect(gathered.rackSheet).toBe('Rack after');
  expect(plans.flatMap(({ reels }) => reels)).toEqual([]);
  expect(plans.flatMap(({ tooLong, later }) => [...tooLong, ...later])).not.toEqual([]);
});

test('an empty rack below a title is read, too; other sheets with headings only are none', async () => {
  const titled = [
    ['What is left on Friday', '', ''],
    ['', '', ''],
    ['Hose', 'Length (m)', 'Note of the cut list'],
  ];
  const { workbook } = fakeWorkbook({ Rest: titled, Other: USED_UP.slice(0, 1) }, { sheet: 'Rest', address: 'A1' });
  await rememberRack(workbook, 'Rest');
  expect(await rackSheets(workbook)).toEqual(['Rest']);
  expect(await readRack(workbook, 'Rest')).toMatchObject({ rows: [], report: { tables: ['A3:C3'] } });
  expect(await readRack(workbook, 'Other')).toBeUndefined();
});
