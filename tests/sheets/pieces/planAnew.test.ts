import { office, piecesText, planned, setStatus, type, week, written } from './shopOffice';

const HAZEL = 'Hazel DN 12';
const ANEW = { take: new Set(['planned'] as const) };

test('planning anew plans what is wanted now: a lowered quantity fewer, without the pieces that are cut', async () => {
  const workbook = office({ Jobs: week([1, HAZEL, 1170, 4]) });
  await written(workbook, 'Jobs');
  await type(workbook, 'Jobs', 'D2', 3);
  expect((await planned(workbook, 'Jobs', ANEW)).cuts).toEqual(['2: 3 × 1170']);
  await setStatus(workbook, '1-1', 'cut');
  const { cuts, writing } = await written(workbook, 'Jobs', ANEW);
  expect(cuts).toEqual(['2: 2 × 1170']);
  expect(writing.piecesTold).toContain('Not in this plan, though planned before: 1-4.');
  await type(workbook, 'Jobs', 'D2', 1);
  const none = await planned(workbook, 'Jobs', ANEW);
  expect([none.cuts, none.gathered.report.leftOut.map(({ row, reason }) => [row, reason])]).toEqual([[], [[2, 'planned']]]);
});

test('planning anew with a raised quantity puts the planned pieces on the new reels and adds the others', async () => {
  const workbook = office({ Jobs: week([1, HAZEL, 1170, 2]) });
  await written(workbook, 'Jobs');
  await type(workbook, 'Jobs', 'D2', 5);
  // A reel for three of the five: the two that are planned come first.
  await workbook.write([
    { kind: 'addSheet', sheet: 'Short' },
    {
      kind: 'values',
      at: { sheet: 'Short', address: 'A1:D2' },
      values: [
        ['Hose', 'Length (mm)', 'Place', 'Lot'],
        [HAZEL, 3700, 'B1', 'L9'],
      ],
    },
  ]);
  await written(workbook, 'Jobs', ANEW, 'Short');
  expect(await piecesText(workbook)).toEqual([1, 2, 3].map(nth => `1-${nth}: 1170 planned`));
});
