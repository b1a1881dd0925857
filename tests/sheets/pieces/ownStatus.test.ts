import { office, planned, type, week, written } from './shopOffice';

const HAZEL = 'Hazel DN 12';
const statusIn = async (workbook: ReturnType<typeof office>) => (await workbook.used('Jobs'))!.values[1]![4];

test('a line whose own status says planned gets the pieces that a raised quantity wants', async () => {
  const workbook = office({ Jobs: week([1, HAZEL, 900, 2]) });
  await written(workbook, 'Jobs');
  expect(await statusIn(workbook)).toBe('planned');
  await type(workbook, 'Jobs', 'D2', 5);
  const { cuts, gathered } = await written(workbook, 'Jobs');
  expect([cuts, gathered.lookAlike]).toEqual([['2: 3 × 900'], []]);
  expect(await statusIn(workbook)).toBe('planned');
});

test('a line that says planned, of which sheet Pieces knows nothing or all, is planned already', async () => {
  const workbook = office({ Jobs: week([1, HAZEL, 900, 2], [2, HAZEL, 800, 1, 'planned']) });
  expect((await planned(workbook, 'Jobs')).gathered.report).toMatchObject({
    taken: [2],
    leftOut: [{ row: 3, reason: 'planned' }],
  });
  await written(workbook, 'Jobs');
  const { gathered, cuts } = await planned(workbook, 'Jobs');
  expect([cuts, gathered.report.leftOut.map(({ row, reason }) => [row, reason]), gathered.lookAlike]).toEqual([
    [],
    [
      [2, 'planned'],
      [3, 'planned'],
    ],
    [],
  ]);
  expect((await planned(workbook, 'Jobs', { take: new Set(['planned']) })).cuts).toEqual(['2: 2 × 900', '3: 1 × 800']);
});

test('what must not be made gets no more pieces, though its status says planned', async () => {
  const workbook = office({ Jobs: week([1, HAZEL, 900, 2]) });
  await written(workbook, 'Jobs');
  await type(workbook, 'Jobs', 'D2', '4?');
  expect((await planned(workbook, 'Jobs')).cuts).toEqual([]);
  await type(workbook, 'Jobs', 'D2', 4);
  await type(workbook, 'Jobs', 'C2', '');
  const { cuts, gathered } = await planned(workbook, 'Jobs');
  expect([cuts, gathered.report.leftOut]).toEqual([
    [],
    [{ row: 2, reason: 'stop', sentence: 'cut length is blank: fill it in' }],
  ]);
});
