import { rackOfAnew, twiceSentence, unconfirmedSentence } from '../../../src/sheets/cutlist/rackSentences';
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

const lengthsOn = async (workbook: ReturnType<typeof office>, sheet: string) =>
  (await workbook.used(sheet))!.values.slice(1).map(row => row[1]);

test('hose of pieces that are planned anew comes off twice on the newest rack: it is said before writing, with the rack to take', async () => {
  const workbook = office({ Jobs: week([1, HAZEL, 1170, 4]) });
  await written(workbook, 'Jobs');
  // 20000 − 20 of squaring − 4 × (1170 + 3 of the saw).
  expect(await lengthsOn(workbook, 'Rack after')).toEqual([15288]);
  const { gathered } = await planned(workbook, 'Jobs', ANEW);
  expect(twiceSentence(gathered)).toBe(
    'The rack Rack after has the hose of 1-1 … 4 taken off already, and here it would come off once more. Take the rack Rack, on which they were planned.',
  );
  const { gathered: onIt, plans, writing } = await written(workbook, 'Jobs', ANEW, rackOfAnew(gathered));
  expect([twiceSentence(onIt), unconfirmedSentence(onIt, plans)]).toEqual([undefined, undefined]);
  expect(await lengthsOn(workbook, writing.rackAfter)).toEqual([15288]);
});

test('pieces of an older cut list that are planned anew: no rack has their hose alone, so it is to be given back by hand', async () => {
  const workbook = office({ Jobs: week([1, HAZEL, 1170, 4]), More: week([7, HAZEL, 600, 2]) });
  await written(workbook, 'Jobs');
  await written(workbook, 'More');
  const { gathered } = await planned(workbook, 'Jobs', ANEW);
  expect(rackOfAnew(gathered)).toBeUndefined();
  expect(twiceSentence(gathered)).toMatch(/ of 1-1 … 4 taken off already, .* Give it back to the reels on that sheet first\.$/);
});

test('where one of the pieces is cut, the rack before has too much hose: it is not offered', async () => {
  const workbook = office({ Jobs: week([1, HAZEL, 1170, 4]) });
  await written(workbook, 'Jobs');
  await setStatus(workbook, '1-1', 'cut');
  const { gathered, cuts } = await planned(workbook, 'Jobs', ANEW);
  expect(cuts).toEqual(['2: 3 × 1170']);
  expect(rackOfAnew(gathered)).toBeUndefined();
  expect(twiceSentence(gathered)).toContain('the hose of 1-2 … 4 taken off already');
});
