import { readCrimpRows } from '../../../src/sheets/crimps/readCrimpRows';
import { judgeCrimpRow } from '../../../src/sheets/crimps/judgeCrimpRow';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import type { PieceRole } from '../../../src/sheets/pieces/pieceColumns';
import { planPieces } from '../../../src/sheets/pieces/planPieces';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { scrapPiece } from '../../../src/sheets/pieces/scrapPiece';
import { addressOf } from '../../../src/workbook/a1';
import { openBook } from '../columns/catalogueBook';
import { jobsOf, options, reelsFor } from './pieceSheets';

type Book = Awaited<ReturnType<typeof openBook>>;
let book: Book;
afterEach(() => book.dispose());

const JOBS = [
  ['Line', 'Hose', 'Coupling A', 'Coupling B', 'Quantity', 'Overall length (mm)', 'Cut length (mm)'],
  [1, 'Hazel', 'Straight', 'Elbow', 2, 1200, 1129],
];

const pieces = async () => (await readPieces(book.port))!;

async function plan() {
  const { port } = book;
  const jobs = await jobsOf(port, 'mm');
  const catalogue = (await workbookCatalogue(port))!.catalogue;
  const of = options('mm', { catalogue, machine: '' });
  await port.write(planPieces(await pieceBook(port), reelsFor(jobs, 'mm'), jobs.lines, of).writing.changes);
  await book.calculate();
}

async function scrap(index: number) {
  const { port } = book;
  const piece = (await pieces()).pieces[index]!;
  await port.write(scrapPiece(await pieceBook(port), piece, { now: '2026-10-06 14:03', by: '', why: '' }).changes);
  await book.calculate();
}

async function type(row: number, end: 'A' | 'B', values: readonly number[]) {
  const { table } = await pieces();
  const changes = values.map((value, index) => {
    const column = table.columns[`reading${index + 1}${end}` as PieceRole]!;
    const address = addressOf({ row: row - 1, column, rows: 1, columns: 1 });
    return { kind: 'values' as const, at: { sheet: 'Pieces', address }, values: [[value]] };
  });
  await book.port.write(changes);
  await book.calculate();
}

const verdicts = async () => (await pieces()).pieces.map(({ ends }) => ends.map(({ verdict }) => verdict));

/** What Entry says of the measured ends. */
async function atEntry() {
  const { rows } = (await readCrimpRows(book.port, undefined, {
    sheet: 'Pieces',
    block: { row: 1, column: 0, rows: 1, columns: 1 },
  }))!;
  return rows.flatMap(row => {
    const readings = row.readings.flatMap(reading => reading ?? []);
    return readings.length === 4 ? [`${row.row} ${row.end} ${judgeCrimpRow(row, readings).verdict}`] : [];
  });
}

// Straight 24.9 ± 0.12, largest spread 0.25; Elbow 25.4 ± 0.12, largest spread 0.4. Spread of A: 25.05 − 24.75 = 0.30 > 0.25, mean 24.9;
// of B: 25.55 − 25.25 = 0.30 < 0.4, mean 25.4.
const OF_A = [24.75, 25.05, 24.75, 25.05];
const OF_B = [25.25, 25.55, 25.25, 25.55];

beforeEach(async () => {
  book = await openBook(true);
  await book.put('Jobs', JOBS);
  await book.calculate();
  await plan();
});

test('the verdict of a piece says OVAL where Entry does', async () => {
  await type(2, 'A', OF_A);
  await type(2, 'B', OF_B);
  expect(await atEntry()).toEqual(['2 A OVAL', '2 B IN SPEC']);
  expect(await verdicts()).toEqual([
    ['OVAL', 'IN SPEC'],
    ['', ''],
  ]);
});

test('the row that replaces a scrapped piece keeps its largest spread', async () => {
  const [first] = (await pieces()).pieces;
  expect(first!.ends.map(({ largestSpread }) => largestSpread?.value.toNumber())).toEqual([0.25, 0.4]);
  await scrap(0);
  await type(4, 'A', OF_A);
  expect((await verdicts())[2]).toEqual(['OVAL', '']);
});

describe('a column that somebody added', () => {
  // 0.30 mm, in inches 0.0118: below 0.014 in (0.3556 mm), above 0.01 in (0.254 mm).
  test.each([
    ['Max. spread A (mm)', 0.35, 0.25],
    ['Largest spread A (in)', 0.014, 0.01],
  ])('%s counts before the catalogue', async (heading, wide, narrow) => {
    const { port } = book;
    const { block } = (await pieces()).table.table;
    const column = block.column + block.columns;
    const at = (row: number) => ({ sheet: 'Pieces', address: addressOf({ row, column, rows: 1, columns: 1 }) });
    await port.write([{ kind: 'values', at: at(0), values: [[heading]] }]);
    await scrap(0);
    await scrap(1);
    await port.write([
      { kind: 'values', at: at(3), values: [[wide]] },
      { kind: 'values', at: at(4), values: [[narrow]] },
    ]);
    await type(4, 'A', OF_A);
    await type(5, 'A', OF_A);
    expect(await atEntry()).toEqual(['4 A IN SPEC', '5 A OVAL']);
    expect((await verdicts()).slice(2).map(([a]) => a)).toEqual(['IN SPEC', 'OVAL']);
  });
});
