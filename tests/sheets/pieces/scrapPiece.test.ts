import { Decimal } from '../../../src/core/units/decimal';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import { addStatusColumn, jobStatusChanges, lineStatus } from '../../../src/sheets/pieces/jobStatusChanges';
import { rememberJobSheet } from '../../../src/sheets/pieces/jobsOfPieces';
import { linesStillToPlan } from '../../../src/sheets/pieces/linesStillToPlan';
import { findPiece } from '../../../src/sheets/pieces/findPiece';
import { pieceStatusChanges } from '../../../src/sheets/pieces/pieceStatusChanges';
import { rejections, statusOfPiece } from '../../../src/sheets/pieces/pieceStatus';
import { planPieces } from '../../../src/sheets/pieces/planPieces';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { makeAgain, scrapPiece } from '../../../src/sheets/pieces/scrapPiece';
import { scrapWriting } from '../../../src/sheets/pieces/statusWriting';
import { successorsToCut } from '../../../src/sheets/pieces/successorsToCut';
import type { Workbook } from '../../../src/workbook/workbook';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { INCH, jobsOf, METRIC, options, writeAll } from './pieceSheets';

const open = async (jobs = METRIC, unit: 'mm' | 'in' = 'mm', row = 1) => {
  const { workbook } = fakeWorkbook({ Jobs: jobs }, { sheet: 'Jobs', address: 'A2' });
  await writeAll(workbook, unit, {}, row);
  return workbook;
};
const piecesOf = async (workbook: Workbook) => (await readPieces(workbook))!;
const pieceOf = async (workbook: Workbook, number: string) =>
  (await piecesOf(workbook)).pieces.find(({ piece }) => piece === number)!;

/** Types into cells of a piece, by heading. */
async function type(workbook: Workbook, number: string, cells: Readonly<Record<string, string | number>>) {
  const { values } = (await workbook.used('Pieces'))!;
  const row = values.findIndex(each => each[0] === number);
  for (const [heading, value] of Object.entries(cells)) {
    const column = values[0]!.indexOf(heading);
    const letters = column < 26 ? String.fromCharCode(65 + column) : `A${String.fromCharCode(39 + column)}`;
    await workbook.write([{ kind: 'values', at: { sheet: 'Pieces', address: `${letters}${row + 1}` }, values: [[value]] }]);
  }
}
const readings = (end: 'A' | 'B', value: number) =>
  Object.fromEntries([1, 2, 3, 4].map(nth => [`Reading ${end}${nth} (mm)`, value]));

const SAID = { now: '2026-10-06 14:03', by: 'KB', why: 'cut too short' };

test('scrap, then the next plan takes the successor up: its own row gets lot and reel', async () => {
  const workbook = await open();
  await type(workbook, 'H3-117-2', { 'Fitting A': 'cone S straight', Status: 'cut', Note: 'first of the week' });
  const writing = scrapPiece(await pieceBook(workbook), await pieceOf(workbook, 'H3-117-2'), SAID);
  expect(writing.message).toBe('Piece H3-117-2 is scrapped; H3-117-5 replaces it and waits for the next cut list.');
  await workbook.write(writing.changes);
  expect(await pieceOf(workbook, 'H3-117-2')).toMatchObject({
    status: 'scrapped',
    note: 'first of the week; scrapped 2026-10-06 14:03 by KB: cut too short (was cut)',
  });
  const successor = await pieceOf(workbook, 'H3-117-5');
  expect(successor).toMatchObject({ replaces: 'H3-117-2', lot: '', reel: '', status: '', hose: 'Larch DN 12', line: '1' });
  expect(successor.ends[0]).toMatchObject({ die: 'D26', readings: [undefined, undefined, undefined, undefined] });

  const { pieces } = await piecesOf(workbook);
  const { lines, problems } = successorsToCut(pieces, 'mm');
  expect(problems).toEqual([]);
  expect(lines.map(({ waits, quantity, cutLength }) => [waits, quantity, cutLength.toNumber()])).toEqual([['H3-117-5', 1, 1169]]);
  const jobs = await jobsOf(workbook, 'mm');
  const cuts = [{ length: lines[0]!.cutLength, line: lines[0]!, piece: 1 }];
  const plan = planPieces(await pieceBook(workbook), [{ rack: { lot: 'L80', place: 'B2' }, cuts }], jobs.lines, options('mm'));
  await workbook.write(plan.writing.changes);
  expect(await pieceOf(workbook, 'H3-117-5')).toMatchObject({ lot: 'L80', reel: 'B2', status: 'planned', note: '' });
  expect(successorsToCut((await piecesOf(workbook)).pieces, 'mm').lines).toEqual([]);
});

test('scrapping is taken back whole', async () => {
  const workbook = await open();
  const before = (await piecesOf(workbook)).pieces;
  const writing = scrapPiece(await pieceBook(workbook), before[0]!, SAID);
  await workbook.write(writing.changes);
  await workbook.write(writing.undo);
  expect((await piecesOf(workbook)).pieces).toEqual(before);
});

test('a piece is not scrapped twice, and the rows of inches keep their unit', async () => {
  const workbook = await open(INCH, 'in', 3);
  const first = (await piecesOf(workbook)).pieces[0]!;
  await workbook.write(scrapPiece(await pieceBook(workbook), first, SAID).changes);
  const scrapped = await pieceOf(workbook, first.piece);
  expect(() => scrapPiece({} as never, scrapped, SAID)).toThrow('no sheet Pieces');
  const book = await pieceBook(workbook);
  expect(() => scrapPiece(book, scrapped, SAID)).toThrow('scrapped already');
  const { lines } = successorsToCut(book.pieces!.pieces, 'mm');
  // 24.5 in × 25.4 (NIST SP 811, appendix B).
  expect(lines.map(({ cutLength }) => cutLength.toNumber())).toEqual([622.3]);
});

test('a piece whose successor is there already adds none to its line, which stays as far as the others', async () => {
  const workbook = await open();
  await workbook.write(scrapPiece(await pieceBook(workbook), await pieceOf(workbook, 'H3-117-2'), SAID).changes);
  for (const nth of [1, 2, 3, 4, 5]) await type(workbook, `H3-117-${nth}`, { Status: 'cut' });
  await rememberJobSheet(workbook, 'Jobs');
  const again = await scrapWriting(workbook, await pieceBook(workbook), await pieceOf(workbook, 'H3-117-2'), SAID);
  expect(again.message).toBe('Piece H3-117-2 is scrapped; its successor was there already.');
  await workbook.write(again.changes);
  expect((await piecesOf(workbook)).pieces.filter(({ replaces }) => replaces === 'H3-117-2')).toHaveLength(1);
  expect((await workbook.used('Jobs'))!.values.map(row => row[20]).slice(0, 2)).toEqual(['Status', 'cut']);
});

test('made again: rows like the old one wait for a plan, and say like which', async () => {
  const workbook = await open();
  const writing = makeAgain(await pieceBook(workbook), await pieceOf(workbook, '41/2-1'), 2, '2026-11-02');
  await workbook.write(writing.changes);
  expect(writing.message).toMatch(/^41\/2-4 to 41\/2-5 added/);
  const { lines } = successorsToCut((await piecesOf(workbook)).pieces, 'mm');
  expect(lines.map(({ waits, note }) => [waits, note])).toEqual([
    ['41/2-4', 'again like 41/2-1, 2026-11-02'],
    ['41/2-5', 'again like 41/2-1, 2026-11-02'],
  ]);
});

describe('status', () => {
  test('it moves on with what is filled', async () => {
    const workbook = await open();
    const is = async () => statusOfPiece(await pieceOf(workbook, 'H3-117-1'));
    expect(await is()).toBe('planned');
    await type(workbook, 'H3-117-1', { 'Reading A1 (mm)': 27.35 });
    expect(await is()).toBe('cut');
    await type(workbook, 'H3-117-1', readings('A', 27.35));
    expect(await is()).toBe('cut');
    await type(workbook, 'H3-117-1', readings('B', 27.35));
    expect(await is()).toBe('crimped');
    await type(workbook, 'H3-117-1', { 'Tested at (bar)': 551, 'Tested for (s)': 60 });
    expect(await is()).toBe('tested');
    await type(workbook, 'H3-117-1', { Flushed: '☑', Capped: 'x' });
    expect(await is()).toBe('done');
    await type(workbook, 'H3-117-1', { 'Finished length (mm)': 1263 });
    // Longer than 1262 mm: it is tested, but cannot be released.
    expect(await is()).toBe('tested');
    expect(rejections(await pieceOf(workbook, 'H3-117-1'))).toEqual(['finished length LONG']);
    const moved = pieceStatusChanges(await piecesOf(workbook), '2026-10-06 15:00')!;
    await workbook.write(moved.changes);
    expect(await pieceOf(workbook, 'H3-117-1')).toMatchObject({ status: 'tested', note: '' });
  });

  test('the job sheet follows the piece that is least far; a word of its own stays and is told', async () => {
    const workbook = await open();
    for (const nth of [1, 2, 3, 4]) await type(workbook, `H3-117-${nth}`, { Status: nth === 3 ? 'cut' : 'tested' });
    const jobs = await jobsOf(workbook, 'mm');
    const { writing, left, without } = jobStatusChanges((await piecesOf(workbook)).pieces, jobs);
    expect(without).toEqual([]);
    expect(left).toEqual([{ row: 4, text: 'rush' }]);
    await workbook.write(writing!.changes);
    const status = (await workbook.used('Jobs'))!.values.map(row => row[20]);
    expect(status).toEqual(['Status', 'cut', 'planned', 'rush']);
    // Planned and cut lines are left out of the next plan.
    const step = { value: new Decimal(1), unit: jobs.lines[0]!.cutLength!.unit };
    const { readJobs } = await import('../../../src/sheets/jobs/readJobs');
    const next = await readJobs(workbook, { step }, jobs.choice);
    expect(next.lines.map(({ standing }) => standing.kind)).toEqual(['done', 'planned', 'ready']);
  });

  test('a line of which some pieces are planned stays open', async () => {
    const workbook = await open();
    const jobs = await jobsOf(workbook, 'mm');
    const { pieces } = await piecesOf(workbook);
    expect(lineStatus(pieces.slice(1), jobs.lines[0]!)).toBe('planned: 3 of 4');
    expect(lineStatus([], jobs.lines[0]!)).toBe('');
  });

  test('a sheet without the column is offered one', async () => {
    const workbook = await open(INCH, 'in', 3);
    const jobs = await jobsOf(workbook, 'in', 'Jobs', 3);
    const { without } = jobStatusChanges((await piecesOf(workbook)).pieces, jobs);
    await workbook.write(addStatusColumn(without[0]!)!.changes);
    const again = jobStatusChanges((await piecesOf(workbook)).pieces, await jobsOf(workbook, 'in', 'Jobs', 3));
    await workbook.write(again.writing!.changes);
    expect((await workbook.used('Jobs'))!.values.slice(2).map(row => row[9])).toEqual(['Status', 'planned', 'planned']);
  });
});

/** The jobs with a column `Cut` in place of `Status`. */
const ticked = (heading: string, ...cells: readonly (string | boolean)[]) =>
  METRIC.map((row, index) => [...row.slice(0, -1), index === 0 ? heading : (cells[index - 1] ?? '')]);
const ticksOf = async (workbook: Workbook) => {
  const jobs = await jobsOf(workbook, 'mm');
  const changes = jobStatusChanges((await piecesOf(workbook)).pieces, jobs);
  await workbook.write(changes.writing?.changes ?? []);
  const cells = (await workbook.used('Jobs'))!.values.slice(1).map(row => row[20]);
  return { cells, left: changes.left, ticks: changes.ticks.map(({ heading, from }) => [heading, from]) };
};

describe('a column for ticks gets no words', () => {
  test('Cut stays blank while pieces are planned, and gets its tick when all of a line are cut', async () => {
    const workbook = await open(ticked('Cut'));
    expect(await ticksOf(workbook)).toEqual({ cells: ['', '', ''], left: [], ticks: [['Cut', 'cut']] });
    for (const nth of [1, 2, 3]) await type(workbook, `H3-117-${nth}`, { Status: 'cut' });
    expect((await ticksOf(workbook)).cells).toEqual(['', '', '']);
    await type(workbook, 'H3-117-4', { Status: 'crimped' });
    expect((await ticksOf(workbook)).cells).toEqual(['✓', '', '']);
  });

  test('the tick is the one that the column uses; boxes are ticked as boxes; a word of its own stays', async () => {
    for (const [heading, unticked, tick] of [
      ['Cut', '', 'x'],
      ['Status', '', 'x'],
      ['Done', false, true],
    ] as const) {
      const workbook = await open(ticked(heading, unticked, tick, 'no'));
      for (const nth of [1, 2, 3, 4]) await type(workbook, `H3-117-${nth}`, { Status: 'done' });
      expect((await ticksOf(workbook)).cells).toEqual([tick, tick, 'no']);
    }
    const worded = await open(ticked('Crimped', 'by Ilse, not yet'));
    for (const nth of [1, 2, 3, 4]) await type(worded, `H3-117-${nth}`, { Status: 'crimped' });
    const { cells, left } = await ticksOf(worded);
    expect(cells[0]).toBe('by Ilse, not yet');
    expect(left).toEqual([{ row: 2, text: 'by Ilse, not yet' }]);
  });

  test('words of ours that stand there are kept up to date', async () => {
    const workbook = await open(ticked('Made', 'planned'));
    expect(await ticksOf(workbook)).toMatchObject({ cells: ['planned', 'planned', 'planned'], ticks: [] });
  });
});

test('a line without order and assembly number that looks like an old one is left out and told; a tick makes it once more', async () => {
  const workbook = await open(INCH, 'in', 3);
  const { lines } = await jobsOf(workbook, 'in', 'Jobs', 3);
  const { pieces } = await piecesOf(workbook);
  const planned = linesStillToPlan(pieces, lines, new Set());
  expect(planned.lines).toEqual([]);
  expect(planned.lookAlike).toEqual([
    { row: 4, reason: 'planned', sentence: '2 pieces on sheet Pieces, known by line, label and hose only' },
    { row: 5, reason: 'planned', sentence: '5 pieces on sheet Pieces, known by line, label and hose only' },
  ]);
  const done = pieces.map(piece => ({ ...piece, status: 'done' as const }));
  expect(linesStillToPlan(done, lines, new Set()).lookAlike.map(({ reason }) => reason)).toEqual(['done', 'done']);
  const again = linesStillToPlan(done, lines, new Set(['done'] as const));
  expect(again.lookAlike).toEqual([]);
  expect(again.lines.map(({ quantity, isAgain }) => [quantity, isAgain])).toEqual([
    [2, true],
    [5, true],
  ]);
  // A line that has a number is known for sure.
  const metric = await open();
  const known = await jobsOf(metric, 'mm');
  const sure = linesStillToPlan((await piecesOf(metric)).pieces, known.lines, new Set());
  expect(sure.leftOut).toHaveLength(3);
  expect(sure.lookAlike).toEqual([]);
});

test('a scanned tag finds its piece: whole number, in whatever case, or the assembly of a single piece', async () => {
  const { pieces } = await piecesOf(await open());
  const found = (text: string) => {
    const is = findPiece(pieces, text);
    return is.kind === 'found' ? is.piece.piece : is.kind;
  };
  expect([' h3-117-3\r', '41/3', 'H3-117', 'H3-118-1', ''].map(found)).toEqual(['H3-117-3', '41/3-1', 'several', 'none', 'none']);
});

describe('words of people in the column Status of Pieces', () => {
  const HEAD = [
    'Piece',
    'Line',
    'Hose',
    'Lot',
    'Fitting A',
    'Target A (in)',
    'Tolerance A (in)',
    'Reading A1 (in)',
    'Reading A2 (in)',
  ];
  const own = async (...statuses: readonly string[]) => {
    const rows = statuses.map((status, index) => [
      `7-${index + 1}`,
      '7',
      'Birch',
      'L1',
      'Cone',
      0.765,
      0.005,
      0.765,
      0.764,
      status,
    ]);
    const { workbook } = fakeWorkbook({ Pieces: [[...HEAD, 'Status'], ...rows] }, { sheet: 'Pieces', address: 'A2' });
    return { workbook, pieces: (await readPieces(workbook))!.pieces };
  };

  test('scrap is scrap, however it is written; days behind a word change nothing', async () => {
    const { pieces } = await own(
      'scrapped 10/6',
      'scrap - kinked',
      'Scraped',
      'rejected, see note',
      'tested 2026-10-06',
      'planned',
    );
    expect(pieces.map(({ status }) => status)).toEqual(['scrapped', 'scrapped', 'scrapped', 'scrapped', 'tested', 'planned']);
    expect(pieces.flatMap(({ problems }) => problems)).toEqual([]);
  });

  test('a word that nobody knows stays in its cell, is told, and keeps the piece from moving on', async () => {
    const { workbook, pieces } = await own('hold for the yard', 'planned');
    expect(pieces.map(statusOfPiece)).toEqual(['planned', 'crimped']);
    expect(pieces[0]!.problems).toEqual([expect.stringMatching(/^status is "hold for the yard": write planned, cut/)]);
    const { changes } = pieceStatusChanges(await piecesOf(workbook), '2026-10-07 08:00')!;
    expect(changes.flatMap(change => ('at' in change ? [change.at.address] : []))).toEqual(['J3']);
  });

  test('rows that share a number are told, each with the other', async () => {
    const row = ['7-1', '7', 'Birch', 'L1', 'Cone', 0.765, 0.005, '', '', ''];
    const { workbook } = fakeWorkbook({ Pieces: [[...HEAD, 'Status'], row, row] }, { sheet: 'Pieces', address: 'A2' });
    expect((await readPieces(workbook))!.report.leftOut.map(({ row: at, sentence }) => `${at}: ${sentence}`)).toEqual([
      '2: piece 7-1 is in row 3, too: give each piece a number of its own',
      '3: piece 7-1 is in row 2, too: give each piece a number of its own',
    ]);
  });
});
