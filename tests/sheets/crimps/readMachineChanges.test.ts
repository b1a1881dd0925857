import { lastChange, machineChangesOf } from '../../../src/sheets/crimps/readMachineChanges';
import { sheetContent } from '../table/sheetContent';

// 2026-02-09 is day 46062 of the sheet.
const HEAD = ['Date', 'Machine', 'Kind', 'What', 'Turns, + is tighter', 'Note'];
const changes = (rows: readonly (readonly (string | number)[])[]) =>
  machineChangesOf(sheetContent([HEAD, ...rows], 'Machine log'));

test('rows that say that the machine was recalibrated, and checks after which its screw was turned', () => {
  const found = changes([
    [46_000, 'Gate', 'Care', 'Grease the pins', '', ''],
    [46_020, 'Gate', 'Check', 'Larch, die D23', '', 'The machine crimps as expected.'],
    [46_030, 'Gate', 'Check', 'Larch, die D23', -0.25, 'turn the calibration screw 0.25 turns looser'],
    ['2026-02-09 10:30', 'Gate', 'Recalibration', '', '', ''],
    [46_070, 'Gate', 'Care', 'Caliper calibrated', '', ''],
    [46_071, 'Gate', 'Care', 'Check the calibration', '', ''],
    ['soon', 'Gate', 'Recalibration', '', '', ''],
  ]);
  expect(found.map(({ moment, row }) => [moment, row])).toEqual([
    [46_030, 4],
    [46_062 + 10.5 / 24, 5],
  ]);
});

test('each machine has its own; crimps that name none go with a log of one machine', () => {
  const found = changes([
    [46_030, 'Gate', 'Recalibration', '', '', ''],
    [46_040, 'gate ', 'Repair', 'new seal', '', ''],
  ]);
  expect(lastChange(found, 'GATE')!.moment).toBe(46_040);
  expect(lastChange(found, '')!.moment).toBe(46_040);
  expect(lastChange(found, 'Van')).toBeUndefined();
  const both = [...found, ...changes([[46_050, 'Van', 'Recalibration', '', '', '']])];
  expect(lastChange(both, '')).toBeUndefined();
  expect(lastChange(both, 'Van')!.moment).toBe(46_050);
});

test('another table is no log', () => {
  const rows = [
    ['Date', 'Hose', 'Length (mm)'],
    [46_030, 'Alder DN 12', 900],
  ];
  expect(machineChangesOf(sheetContent(rows, 'Work log'))).toEqual([]);
});

test('dates of a column say together which is the day and which the month', () => {
  const rows = (...dates: string[]) => changes(dates.map(date => [date, 'Gate', 'Recalibration', '', '', '']));
  // 2026-09-01 is day 46266 of the sheet, 2026-09-13 twelve more.
  expect(rows('9/1/2026', '9/13/2026').map(({ moment }) => moment)).toEqual([46_266, 46_278]);
  expect(rows('9/1/2026')).toEqual([]);
});
