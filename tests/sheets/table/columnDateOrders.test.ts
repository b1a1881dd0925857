import { isoDate } from '../../../src/core/units/sheetDate';
import { NO_CRIMP_FIELDS, readOptionsOf } from '../../../src/sheets/crimps/crimpFields';
import { readCrimpRows } from '../../../src/sheets/crimps/readCrimpRows';
import { readGauges } from '../../../src/sheets/gauges/readGauges';
import { careTasks } from '../../../src/sheets/machines/machineCare';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { recordRows } from '../../../src/sheets/recall/recordRows';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const day = (date: number | undefined) => (date === undefined ? undefined : isoDate(date));

const crimpDays = async (dates: readonly FakeCell[]) => {
  const head = ['Line', 'Date', 'Target (mm)', 'Tol (mm)', 'R1 (mm)', 'R2 (mm)'];
  const Readings = [head, ...dates.map((date, index) => [index + 1, date, 24.9, 0.1, 24.9, 24.9])];
  const { workbook } = fakeWorkbook({ Readings }, { sheet: 'Readings', address: 'A2' });
  const { rows } = (await readCrimpRows(workbook, readOptionsOf(NO_CRIMP_FIELDS)))!;
  return { workbook, days: rows.map(({ date }) => day(date)), notes: rows.flatMap(({ notes }) => notes) };
};

test.each([
  [
    ['9/1/2026', '9/13/2026'],
    ['2026-09-01', '2026-09-13'],
  ],
  [
    ['13/9/2026', '9/1/2026'],
    ['2026-09-13', '2026-01-09'],
  ],
])('a date of readings is read as the others of its column: %j', async (dates, days) => {
  const found = await crimpDays(dates);
  expect([found.days, found.notes]).toEqual([days, []]);
});

test('where no other says it, or two contradict each other, the date is asked for as before', async () => {
  const alone = await crimpDays(['9/1/2026', '9/2/2026']);
  expect(alone.days).toEqual([undefined, undefined]);
  expect(alone.notes[0]).toMatch(/write 2026-01-09 or 2026-09-01/);
  expect((await crimpDays(['9/1/2026', '9/13/2026', '13/9/2026'])).days).toEqual([undefined, '2026-09-13', '2026-09-13']);
});

test('a row that was read before is read anew once another row settles its date', async () => {
  const { workbook, days } = await crimpDays(['9/1/2026', '9/2/2026']);
  expect(days[0]).toBeUndefined();
  await workbook.write([{ kind: 'values', at: { sheet: 'Readings', address: 'B3' }, values: [['9/13/2026']] }]);
  const { rows } = (await readCrimpRows(workbook, readOptionsOf(NO_CRIMP_FIELDS)))!;
  expect(day(rows[0]!.date)).toBe('2026-09-01');
});

test('checks of gauges and days of pieces are read so, too', async () => {
  const Gauges = [
    ['Gauge', 'Kind', 'Checked', 'Check due'],
    ['K-1', 'caliper', '1/10/2026', '7/10/2026'],
    ['K-2', 'caliper', '1/20/2026', '7/20/2026'],
  ];
  const Pieces = [
    ['Piece', 'Hose', 'Date'],
    ['H-1', 'Hazel', '9/1/2026'],
    ['H-2', 'Hazel', '9/13/2026'],
  ];
  const { workbook } = fakeWorkbook({ Gauges, Pieces }, { sheet: 'Gauges', address: 'A1' });
  const { gauges } = (await readGauges(workbook))!;
  expect(gauges.map(({ checked, due }) => [day(checked), day(due)])).toEqual([
    ['2026-01-10', '2026-07-10'],
    ['2026-01-20', '2026-07-20'],
  ]);
  expect((await readPieces(workbook))!.pieces.map(({ date }) => day(date))).toEqual(['2026-09-01', '2026-09-13']);
});

test('care of machines and rows of records are dated so, too', async () => {
  const Care = [
    ['Machine', 'Task', 'Every (days)', 'Last done'],
    ['Gate', 'Grease', 30, '9/1/2026'],
    ['Gate', 'Filter', 30, '9/13/2026'],
  ];
  const Records = [
    ['Date', 'Piece', 'Hose lot', 'Crimped on'],
    ['9/14/2026', 'H-1', 'L70', '9/1/2026'],
    ['9/14/2026', 'H-2', 'L70', '9/13/2026'],
  ];
  const { workbook } = fakeWorkbook({ Care, 'Inspection records': Records }, { sheet: 'Care', address: 'A1' });
  const tasks = careTasks(await workbook.used('Care'), '2026-09-20')!;
  expect(tasks.map(({ task, dueIn }) => [task, dueIn])).toEqual([
    ['Grease', 11],
    ['Filter', 23],
  ]);
  expect((await recordRows(workbook)).map(row => day(row.day))).toEqual(['2026-09-01', '2026-09-13']);
});
