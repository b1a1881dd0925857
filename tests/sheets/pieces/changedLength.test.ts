import { lengthSentence } from '../../../src/sheets/cutlist/leftOutSentences';
import { gatherCards } from '../../../src/sheets/jobs/gatherCards';
import { CARDS, office, piecesText, planned, type, written } from './shopOffice';

const jobs = (order: string) => [
  ['Line', 'Order', 'Hose', 'Cut length (mm)', 'Qty', 'Status'],
  [1, order, 'Hazel DN 12', 900, 2, ''],
];

test.each(['B-7', ''])(
  'a cut length that was changed after planning is told, by row and on the card (order "%s")',
  async order => {
    const workbook = office({ Jobs: jobs(order) });
    await written(workbook, 'Jobs');
    expect(lengthSentence((await planned(workbook, 'Jobs')).gathered)).toBeUndefined();
    await type(workbook, 'Jobs', 'D2', 1500);
    const { gathered, cuts } = await planned(workbook, 'Jobs');
    expect(cuts).toEqual([]);
    expect(lengthSentence(gathered)).toBe(
      'Pieces on sheet Pieces have another length than their line has now, and stay as they are: row 2 (1-1, 1-2, cut length 900 mm, while the line says 1500 mm).',
    );
    await workbook.select({ sheet: 'Jobs', address: 'A2' });
    const [card] = (await gatherCards(workbook, CARDS)).cards;
    expect(card!.notes).toEqual(['1-1, 1-2 on sheet Pieces: cut length 900 mm, while the line says 1500 mm']);
  },
);

test('planned anew, the pieces of a line with an order get its new length, and nothing is left to tell', async () => {
  const workbook = office({ Jobs: jobs('B-7') });
  await written(workbook, 'Jobs');
  await type(workbook, 'Jobs', 'D2', 1500);
  const { gathered } = await written(workbook, 'Jobs', { take: new Set(['planned']) });
  expect(lengthSentence(gathered)).toBeUndefined();
  expect(await piecesText(workbook)).toEqual(['1-1: 1500 planned', '1-2: 1500 planned']);
});

test('a length that the bench rounds is no other length', async () => {
  const workbook = office({ Jobs: jobs('B-7') });
  await type(workbook, 'Jobs', 'D2', 899.5);
  await written(workbook, 'Jobs');
  expect(lengthSentence((await planned(workbook, 'Jobs')).gathered)).toBeUndefined();
});
