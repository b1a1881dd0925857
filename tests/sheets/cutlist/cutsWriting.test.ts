import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { Decimal } from '../../../src/core/units/decimal';
import { cutsWriting } from '../../../src/sheets/cutlist/cutsWriting';
import { gatherCuts, type CutWishes } from '../../../src/sheets/cutlist/gatherCuts';
import { planHoses } from '../../../src/sheets/cutlist/planHoses';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { scrapPiece } from '../../../src/sheets/pieces/scrapPiece';
import { statusOfPiece } from '../../../src/sheets/pieces/pieceStatus';
import { orderOfJobs } from '../../../src/sheets/week/orderOfJobs';
import type { Workbook } from '../../../src/workbook/workbook';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { METRIC } from '../pieces/pieceSheets';
import { cutsOptions, demoSheets } from './demoWorkbook';
import { USUAL_SETTINGS } from './usualSettings';

const Rack = [
  ['Hose', 'Length (mm)', 'Quantity', 'Place', 'Lot'],
  ['Larch DN 12', 2500, 1, 'A1', 'L70'],
  ['Larch DN 12', 12000, 2, 'A2', 'L71'],
  ['Larch DN 8', 9000, 2, 'A3', 'L66'],
  ['Rowan DN 25', 9000, 1, 'B1', 'R12'],
];

const SOMEWHERE = 'Jobs!A2';

async function planned(workbook: Workbook, wishes: CutWishes = {}) {
  await workbook.select({ sheet: 'Jobs', address: SOMEWHERE.split('!')[1]! });
  const gathered = await gatherCuts(workbook, 'Rack', USUAL_SETTINGS, '2026-10-05', wishes);
  const plans = await planHoses(gathered, solveCutPlan, () => {}, { aborted: false });
  const machine = { machine: '', die: '', dial: '', share: new Decimal('0.5') };
  const options = { ...cutsOptions, order: orderOfJobs(gathered.read, machine, 'mm').rows };
  return { gathered, plans, writing: await cutsWriting(workbook, gathered, plans, options) };
}

async function written(workbook: Workbook, wishes: CutWishes = {}) {
  const made = await planned(workbook, wishes);
  await workbook.write(made.writing.changes);
  return made;
}

const pieces = async (workbook: Workbook) => (await readPieces(workbook))?.pieces ?? [];
const statusOf = async (workbook: Workbook) => {
  const { values } = (await workbook.used('Jobs'))!;
  const column = values[0]!.indexOf('Status');
  return values.slice(1).map(row => row[column]);
};

test('a written cut list adds a piece for every cut, with reel and lot, and the status of its line follows; one undo takes all back', async () => {
  const { workbook } = fakeWorkbook({ Jobs: METRIC, Rack }, { sheet: 'Jobs', address: 'A2' });
  const { plans, writing } = await written(workbook);
  const cuts = plans.flatMap(({ reels }) => reels.flatMap(({ rack, cuts: of }) => of.map(cut => [rack.lot, `${cut.length}`])));
  const made = await pieces(workbook);
  expect(made.map(({ lot, cutLength }) => [lot, `${cutLength!.value}`]).sort()).toEqual(cuts.sort());
  expect(made.every(piece => statusOfPiece(piece) === 'planned')).toBe(true);
  // The word of their own, rush, stays and is told.
  expect(await statusOf(workbook)).toEqual(['planned', 'planned', 'rush']);
  expect(writing.piecesTold).toMatch(/8 pieces added\..*Status of 2 lines.*row 4 says something else/);
  await workbook.write(writing.undo);
  expect(await workbook.sheets()).toEqual(['Jobs', 'Rack']);
  expect(await statusOf(workbook)).toEqual(['', '', 'rush']);
});

test('what is planned is not planned again, but for a tick; pieces of a plan that is made anew are put on its reels', async () => {
  const { workbook } = fakeWorkbook({ Jobs: METRIC, Rack }, { sheet: 'Jobs', address: 'A2' });
  await written(workbook);
  const again = await planned(workbook);
  expect(again.gathered.jobs).toEqual([]);
  expect(again.gathered.report.leftOut.map(({ row, reason }) => [row, reason])).toEqual([
    [2, 'planned'],
    [3, 'planned'],
    [4, 'planned'],
  ]);
  await written(workbook, { take: new Set(['planned']) });
  expect(await pieces(workbook)).toHaveLength(8);
});

test('a scrapped piece comes back by itself: its successor is cut, and nothing else', async () => {
  const { workbook } = fakeWorkbook({ Jobs: METRIC, Rack }, { sheet: 'Jobs', address: 'A2' });
  await written(workbook);
  const book = await pieceBook(workbook);
  const scrapped = book.pieces!.pieces[1]!;
  await workbook.write(scrapPiece(book, scrapped, { now: '2026-10-06 09:00', by: 'Ilse', why: 'kinked' }).changes);
  const { gathered, writing } = await written(workbook);
  // It never had a reel.
  expect(writing.piecesTold).toMatch(/^Pieces: 1 waiting piece put on a reel\./);
  expect(gathered.jobs.flatMap(({ lines }) => lines.map(({ waits, quantity }) => [waits, quantity]))).toEqual([['H3-117-5', 1]]);
  const [successor] = (await pieces(workbook)).filter(({ replaces }) => replaces === scrapped.piece);
  expect(successor).toMatchObject({ piece: 'H3-117-5', status: 'planned', lot: expect.stringMatching(/^L7[01]$/) });
  expect((await planned(workbook, { leavesWaiting: true })).gathered.jobs).toEqual([]);
});

test('a line whose quantity has grown is planned for what is missing; a line that is made once more gets numbers behind the others', async () => {
  const { workbook } = fakeWorkbook({ Jobs: METRIC, Rack }, { sheet: 'Jobs', address: 'A2' });
  await written(workbook);
  const quantity = { sheet: 'Jobs', address: 'I2' };
  await workbook.write([
    { kind: 'values', at: quantity, values: [[6]] },
    { kind: 'values', at: { sheet: 'Jobs', address: 'U2' }, values: [['planned: 4 of 6']] },
  ]);
  const more = await written(workbook);
  expect(more.gathered.jobs.flatMap(({ lines }) => lines.map(line => [line.row, line.quantity, line.ordered]))).toEqual([
    [2, 2, 6],
  ]);
  expect((await pieces(workbook)).map(({ piece }) => piece).filter(piece => piece.startsWith('H3'))).toEqual(
    [1, 2, 3, 4, 5, 6].map(nth => `H3-117-${nth}`),
  );
  expect(await statusOf(workbook)).toEqual(['planned', 'planned', 'rush']);
});

test('a job sheet without a column for the status says so', async () => {
  const { workbook } = fakeWorkbook(demoSheets, { sheet: 'Jobs', address: 'A2' });
  const { writing } = await planned(workbook);
  expect(writing.withoutStatus).toHaveLength(1);
});
