import { gatherCards } from '../../../src/sheets/jobs/gatherCards';
import { lookAlikeAnswers } from '../../../src/sheets/cutlist/ownLines';
import { CARDS, office, piecesText, planned, setStatus, week, written } from './shopOffice';

const HAZEL = 'Hazel DN 12';
const WEEKS = { 'Week 49': week([3, HAZEL, 700, 2]), 'Week 50': week([3, HAZEL, 555, 3]) };

const asked = async (workbook: ReturnType<typeof office>, sheet: string) => {
  const { gathered } = await planned(workbook, sheet);
  return { gathered, answers: lookAlikeAnswers(gathered) };
};

test('a new week’s line of the same number loses no pieces to last week’s: it is asked about, and planned whole as new work', async () => {
  const workbook = office(WEEKS);
  await written(workbook, 'Week 49');
  const { gathered, answers } = await asked(workbook, 'Week 50');
  expect(gathered.jobs).toEqual([]);
  expect(gathered.lookAlike).toEqual([
    {
      row: 2,
      reason: 'planned',
      sentence: '2 pieces on sheet Pieces, cut length 700 mm, while the line says 555 mm, known by line, label and hose only',
    },
  ]);
  expect(answers.map(({ label }) => label)).toEqual([
    'This is new work: cut these lines, too',
    'These are the lines planned before',
  ]);
  const { cuts, writing } = await written(workbook, 'Week 50', answers[0]!.wishes);
  expect(cuts).toEqual(['2: 3 × 555']);
  expect(writing.piecesTold).toContain('Numbers 3-… are taken by another job');
  expect(await piecesText(workbook)).toEqual([
    '3-1: 700 planned',
    '3-2: 700 planned',
    '3-3: 555 planned',
    '3-4: 555 planned',
    '3-5: 555 planned',
  ]);
  // The answer is about last week's pieces: with it nothing is planned twice.
  expect((await planned(workbook, 'Week 50', answers[0]!.wishes)).cuts).toEqual([]);
  expect((await workbook.used('Week 50'))!.values[1]![4]).toBe('planned');
});

test('cards have the pieces of their own week', async () => {
  const workbook = office(WEEKS);
  await written(workbook, 'Week 49');
  await workbook.select({ sheet: 'Week 50', address: 'A2' });
  expect((await gatherCards(workbook, CARDS)).cards[0]!.pieces).toEqual([]);
  await workbook.select({ sheet: 'Week 49', address: 'A2' });
  expect((await gatherCards(workbook, CARDS)).cards[0]!.pieces!.map(({ piece }) => piece)).toEqual(['3-1', '3-2']);
});

test('a line that is covered in part by pieces that may be another week’s is asked about, whatever its length', async () => {
  const workbook = office({ ...WEEKS, 'Week 51': week([3, HAZEL, 700, 5]) });
  await written(workbook, 'Week 49');
  const { gathered, answers } = await asked(workbook, 'Week 51');
  expect(gathered.jobs).toEqual([]);
  expect(gathered.lookAlike.map(({ row, sentence }) => [row, sentence])).toEqual([
    [2, '2 of 5 pieces on sheet Pieces, known by line, label and hose only'],
  ]);
  const [asNew, same] = answers;
  expect((await planned(workbook, 'Week 51', asNew!.wishes)).cuts).toEqual(['2: 5 × 700']);
  expect((await planned(workbook, 'Week 51', same!.wishes)).cuts).toEqual(['2: 3 × 700']);
});

test('lines that are planned anew leave the pieces of another length alone', async () => {
  const workbook = office({ 'Week 49': week([1, HAZEL, 1170, 4]), 'Week 50': week([1, HAZEL, 1800, 3]) });
  await written(workbook, 'Week 49');
  const { cuts, gathered } = await written(workbook, 'Week 50', { take: new Set(['planned']) });
  expect(cuts).toEqual([]);
  expect(gathered.lookAlike).toHaveLength(1);
  expect(await piecesText(workbook)).toEqual([1, 2, 3, 4].map(nth => `1-${nth}: 1170 planned`));
});

test('last week’s pieces that are cut are asked about as well, and the new ones follow behind them', async () => {
  const workbook = office(WEEKS);
  await written(workbook, 'Week 49');
  for (const number of ['3-1', '3-2']) await setStatus(workbook, number, 'cut');
  const { gathered, answers } = await asked(workbook, 'Week 50');
  expect(gathered.lookAlike.map(({ reason }) => reason)).toEqual(['done']);
  expect((await planned(workbook, 'Week 50', answers[0]!.wishes)).cuts).toEqual(['2: 3 × 555']);
});
