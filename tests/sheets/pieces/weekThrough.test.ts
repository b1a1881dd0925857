import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { Decimal } from '../../../src/core/units/decimal';
import type { LengthUnit } from '../../../src/core/units/lengthUnit';
import { NO_CRIMP_FIELDS } from '../../../src/sheets/crimps/crimpFields';
import { cutsWriting } from '../../../src/sheets/cutlist/cutsWriting';
import { gatherCuts } from '../../../src/sheets/cutlist/gatherCuts';
import { planHoses } from '../../../src/sheets/cutlist/planHoses';
import { gatherRecords } from '../../../src/sheets/inspection/gatherRecords';
import { FRESH_FIELDS, NOT_NOTED, type RecordOptions } from '../../../src/sheets/inspection/inspectionRecord';
import { recordResult } from '../../../src/sheets/inspection/recordResult';
import { recordGrowth } from '../../../src/sheets/inspection/recordsLog';
import { fillPiece, typedOf } from '../../../src/sheets/pieces/fillPiece';
import { rememberJobSheet } from '../../../src/sheets/pieces/jobsOfPieces';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import type { Piece } from '../../../src/sheets/pieces/piece';
import { isCrimpedEnd, statusOfPiece } from '../../../src/sheets/pieces/pieceStatus';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { scrapWriting, statusWriting } from '../../../src/sheets/pieces/statusWriting';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { rememberAnswer } from '../../../src/sheets/table/tableAnswers';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { rackSheets } from '../../../src/sheets/rack/rack';
import { rememberRack } from '../../../src/sheets/rack/newestRack';
import { recall } from '../../../src/sheets/recall/recall';
import { recordRows } from '../../../src/sheets/recall/recordRows';
import { orderOfJobs } from '../../../src/sheets/week/orderOfJobs';
import { addressOf } from '../../../src/workbook/a1';
import type { Change, Workbook } from '../../../src/workbook/workbook';
import { fakeWorkbook, type FakeCell, type FakeDetails } from '../../workbook/fakeWorkbook';
import { openSample } from '../quote/openSample';
import { INCH, METRIC } from './pieceSheets';

/** A workbook with job lines and a rack, and how it is written to. */
interface Shop {
  readonly workbook: Workbook;
  readonly write: (changes: readonly Change[]) => Promise<void>;
  /** Calculates what was written, where the workbook does. */
  readonly calculate: () => Promise<void>;
  readonly jobs: { readonly sheet: string; readonly address: string };
  readonly unit: LengthUnit;
}

const SETTINGS = {
  mm: { step: '1', kerf: '3', squaring: '20', keep: '500' },
  in: { step: '0.0625', kerf: '0.125', squaring: '1', keep: '20' },
} as const;

const settingsOf = (unit: LengthUnit) => {
  const { step, kerf, squaring, keep } = SETTINGS[unit];
  return {
    unit,
    step: new Decimal(step),
    kerf: new Decimal(kerf),
    squaring: new Decimal(squaring),
    keep: new Decimal(keep),
    ageLimitMonths: undefined,
    isOldestFirst: false,
  };
};

/** Plans the open lines on the newest rack and writes the cut list, as the pane does. */
async function plan({ workbook, write, jobs, unit }: Shop, now: string) {
  await workbook.select(jobs);
  const [rack] = await rackSheets(workbook);
  const gathered = await gatherCuts(workbook, rack!, settingsOf(unit), now.slice(0, 10));
  const plans = await planHoses(gathered, solveCutPlan, () => {}, { aborted: false });
  const machine = { machine: '', die: '', dial: '', share: new Decimal('0.5') };
  const writing = await cutsWriting(workbook, gathered, plans, {
    machine: '',
    proofFactor: new Decimal(2),
    useBy: '2032-10',
    pressureUnit: unit === 'mm' ? 'bar' : 'psi',
    prefix: '41/',
    now,
    order: orderOfJobs(gathered.read, machine, unit).rows,
  });
  await rememberJobSheet(workbook, jobs.sheet);
  await rememberRack(workbook, writing.rackAfter);
  await write(writing.changes);
  return { gathered, plans, writing, rack: rack! };
}

const piecesIn = async ({ workbook }: Shop) => (await readPieces(workbook))!;

/** Four readings on target at each end that is crimped, as Entry writes them. */
async function crimp(shop: Shop, isNew: (piece: Piece) => boolean, now: string): Promise<void> {
  const read = await piecesIn(shop);
  const readings = read.pieces.flatMap(piece =>
    (['A', 'B'] as const).flatMap((end, index): Change[] => {
      const { target } = piece.ends[index]!;
      if (!isNew(piece) || statusOfPiece(piece) === 'scrapped' || !isCrimpedEnd(piece.ends[index]!) || !target) return [];
      const column = read.table.columns[`reading1${end}`]!;
      const value = target.value.toNumber();
      const address = addressOf({ row: piece.row - 1, column, rows: 1, columns: 4 });
      return [{ kind: 'values', at: { sheet: read.sheet, address }, values: [[value, value, value, value]] }];
    }),
  );
  await shop.write(readings);
  await shop.calculate();
  const status = await statusWriting(shop.workbook, now);
  if (status) await shop.write(status.changes);
}

/** Length, test, lots, boxes of a piece, as they are filled in under Bench › Entry. */
async function finish(shop: Shop, number: string, now: string): Promise<void> {
  const pieces = await piecesIn(shop);
  const own = pieces.pieces.find(each => each.piece === number)!;
  const reached = own.testPressure?.value ?? new Decimal(shop.unit === 'mm' ? 500 : 6000);
  const typed = {
    ...typedOf(pieces, own),
    lotA: 'C-5',
    lotB: 'C-5',
    ferruleLot: 'F-2',
    finished: (own.overall ?? own.cutLength)!.value.toString(),
    testedAt: reached.toString(),
    testedFor: '60',
    gauge: 'C3; G7',
    by: 'Ilse',
    flushed: true,
    capped: true,
  };
  await shop.write((await fillPiece(shop.workbook, pieces, own, typed, now)).changes);
}

/** The whole week: plan, write, scrap one piece, plan again, finish, record, recall. */
async function weekThrough(shop: Shop): Promise<void> {
  const { workbook, write } = shop;
  // Pieces of the weeks before stay as they are.
  const old = new Map(((await readPieces(workbook))?.pieces ?? []).map(piece => [piece.piece, piece]));
  const isNew = ({ piece }: Piece) => !old.has(piece);
  const first = await plan(shop, '2026-10-05 07:12');
  const before = (await piecesIn(shop)).pieces.filter(isNew);
  const cuts = first.plans.flatMap(({ reels }) => reels.flatMap(({ rack, cuts: of }) => of.map(() => rack.lot)));
  expect(before.map(({ lot }) => lot).sort()).toEqual(cuts.sort());
  expect(before.every(piece => statusOfPiece(piece) === 'planned')).toBe(true);

  // One is scrapped: its successor waits, and the next plan takes it up from the rack that the first one left.
  const book = await pieceBook(workbook);
  const scrapped: Piece = book.pieces!.pieces.filter(isNew)[1]!;
  await write((await scrapWriting(workbook, book, scrapped, { now: '2026-10-06 09:00', by: 'Ilse', why: 'kinked' })).changes);
  const second = await plan(shop, '2026-10-06 10:00');
  expect(second.rack).toBe(first.writing.rackAfter);
  const ofPlan = second.gathered.jobs.flatMap(({ lines }) => lines);
  expect(ofPlan.filter(({ waits }) => waits !== undefined)).toHaveLength(1);
  const successor = (await piecesIn(shop)).pieces.find(({ replaces }) => replaces === scrapped.piece)!;
  expect(successor).toMatchObject({ status: 'planned', line: scrapped.line });

  const good = (await piecesIn(shop)).pieces.filter(piece => isNew(piece) && statusOfPiece(piece) !== 'scrapped');
  await crimp(shop, isNew, '2026-10-07 08:00');
  for (const { piece } of good) await finish(shop, piece, '2026-10-07 09:00');
  await shop.calculate();
  const after = (await piecesIn(shop)).pieces;
  expect(after.filter(piece => !isNew(piece)).map(({ piece, status, note }) => [piece, status, note])).toEqual(
    [...old.values()].map(({ piece, status, note }) => [piece, status, note]),
  );
  const done = after.filter(isNew);
  expect(done.filter(piece => statusOfPiece(piece) === 'scrapped').map(({ piece }) => piece)).toEqual([scrapped.piece]);
  expect(done.every(piece => piece.problems.length === 0)).toBe(true);

  // Records of the pieces, each row once.
  await workbook.select({ sheet: 'Pieces', address: 'A2' });
  const gathered = await gatherRecords(workbook, {
    fields: FRESH_FIELDS,
    crimps: NO_CRIMP_FIELDS,
    otherSheet: '',
    pressureUnit: 'bar',
    bench: { unit: shop.unit, step: SETTINGS[shop.unit].step },
    today: '2026-10-09',
  });
  const ofNew = gathered.records.filter(({ pieces: of = [] }) => of.some(isNew));
  const measured = ofNew.filter(({ crimps }) => crimps.some(({ mean }) => mean));
  // Without crimp data nothing is measured.
  expect(measured.length > 0).toBe(good.some(({ ends }) => ends.some(end => isCrimpedEnd(end) && end.target)));
  expect(measured.map(record => recordResult(record, NOT_NOTED).kind)).toEqual(measured.map(() => 'in spec'));
  const options: RecordOptions = { fields: FRESH_FIELDS, result: NOT_NOTED, handle: '', source: 's', today: '2026-10-09' };
  const growth = await recordGrowth(workbook, ofNew, options);
  await write(growth.appended!.changes);

  // A lot is recalled: exactly the pieces that were cut from it, the scrapped one among them, and their records.
  const { lot } = scrapped;
  const all = (await piecesIn(shop)).pieces;
  const found = recall(all, await recordRows(workbook), { by: 'lot', lot, of: 'hose', part: '' });
  expect(found.hits.map(({ piece }) => piece.piece)).toEqual(all.filter(piece => piece.lot === lot).map(({ piece }) => piece));
  expect(found.open).toEqual([]);
  const recorded = new Set(all.filter(piece => piece.lot === lot && piece.status !== 'scrapped').map(({ piece }) => piece));
  expect(new Set(found.records.map(({ piece }) => piece))).toEqual(recorded);
}

const fake = (
  sheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>>,
  address: string,
  unit: LengthUnit,
  details: FakeDetails = {},
): Shop => {
  const jobs = { sheet: 'Jobs', address };
  const { workbook } = fakeWorkbook(sheets, jobs, details);
  return { workbook, write: changes => workbook.write(changes), calculate: async () => {}, jobs, unit };
};

test('the week of the sample workbook, on a sheet that calculates', async () => {
  const sample = await openSample();
  try {
    await weekThrough({
      workbook: sample.port,
      write: changes => sample.port.write(changes),
      calculate: sample.calculate,
      jobs: { sheet: 'Week', address: 'A6' },
      unit: 'mm',
    });
    const { pieces } = (await readPieces(sample.port))!;
    expect(new Set(pieces.map(statusOfPiece))).toEqual(new Set(['done', 'scrapped']));
    expect(pieces.filter(({ status }) => status === 'done').every(({ ends }) => ends[0].verdict === 'IN SPEC')).toBe(true);
  } finally {
    sample.dispose();
  }
}, 300_000);

test('one more week of the workshop that keeps the pieces of six weeks, on a sheet that calculates', async () => {
  const file = readFileSync(join(__dirname, '../../../samples/workshop.xlsx'));
  const sample = await openSample(new Uint8Array(file));
  try {
    await weekThrough({
      workbook: sample.port,
      write: changes => sample.port.write(changes),
      calculate: sample.calculate,
      jobs: { sheet: 'This week', address: 'B11' },
      unit: 'mm',
    });
  } finally {
    sample.dispose();
  }
}, 300_000);

test('a week on a sheet with its own crimp data, status and order numbers', async () => {
  const Rack = [
    ['Reel', 'Batch', 'Hose', 'Length (m)'],
    ['R1', 'L70', 'Larch DN 12', 2.5],
    ['R2', 'L71', 'Larch DN 12', 12],
    ['R3', 'L66', 'Larch DN 8', 9],
    ['R4', 'R12', 'Rowan DN 25', 9],
  ];
  const shop = fake({ Jobs: METRIC, Rack }, 'A2', 'mm');
  await weekThrough(shop);
  const { values } = (await shop.workbook.used('Jobs'))!;
  expect(values.slice(1).map(row => row.at(-1))).toEqual(['done', 'done', 'rush']);
});

test('a week in inches, under a title, without orders, crimp data or a column for the status', async () => {
  const Stock = [
    ['Hose type', 'Length (ft)', 'Pieces', 'Lot', 'Bin'],
    ['Birch 3/8', 25, 1, 'B1', '1'],
    ['Birch 1/2', 10, 2, 'B2', '2'],
    ['Birch 1/2', 30, 1, 'B3', '3'],
  ];
  await weekThrough(fake({ Jobs: INCH, Stock }, 'A4', 'in'));
});

/** What the column of the job sheet holds that its heading names. */
async function columnOf({ workbook }: Shop, heading: string): Promise<readonly unknown[]> {
  const { values } = (await workbook.used('Jobs'))!;
  const top = values.findIndex(row => row.includes(heading));
  return values.slice(top + 1).map(row => row[values[top]!.indexOf(heading)]);
}

test('a week in inches with its days as rows, fractions as text, ditto marks, subtotals, and a rack with a status of its own', async () => {
  const head = ['Item', 'Hose', 'End 1', 'End 2', 'Qty', 'OAL (in)', 'Cut to (in)', 'ID (in)'];
  const crimp = ['Die 1', 'Crimp OD 1', 'Tol 1', 'Die 2', 'Crimp OD 2', 'Tol 2'].map(each =>
    /^(?:Crimp|Tol)/.test(each) ? `${each} (in)` : each,
  );
  const blank = (many: number) => Array<FakeCell>(many).fill('');
  const day = (name: string): readonly FakeCell[] => [name, ...blank(14)];
  const data = (die: string, od: number) => [die, od, 0.005, die, od, 0.005];
  const Jobs: readonly (readonly FakeCell[])[] = [
    ['Hoses, week 41', ...blank(14)],
    [],
    [...head, ...crimp, 'Progress'],
    day('Monday'),
    ['A', 'Birch 3/8', 'JIC straight', 'JIC 90°', 2, '27 1/4', '24 1/2', 0.375, ...data('D19', 0.765), ''],
    ['B', '"', 'JIC straight', 'JIC straight', 1, 40, 37.5, 0.375, ...data('D19', 0.765), ''],
    ['Subtotal', '', '', '', 3, '', '', ...blank(7), ''],
    day('Tuesday'),
    ['C', 'Birch 1/2', 'ORFS straight', 'ORFS straight', 3, 38.5, 36, 0.5, ...data('D23', 0.905), ''],
    ['D', 'Birch 1/2', 'ORFS straight', 'ORFS straight', 2, 50, 47.5, 0.5, ...data('D23', 0.905), 'hold: drawing'],
    ['E', 'Birch 1/2', 'ORFS straight', 'ORFS straight', 1, 30, 27.5, 0.5, ...data('D23', 0.905), 'ship Friday'],
  ];
  const Stock = [
    ['Hose type', 'Length (ft)', 'Pieces', 'Lot', 'Bin', 'Status'],
    ['Birch 3/8', 25, 1, 'B1', '1', 'ok'],
    ['Birch 1/2', 11, 1, 'B0', '2', 'Quarantine'],
    ['Birch 1/2', 12, 2, 'B2', '3', ''],
    ['Birch 1/2', 30, 1, 'B3', '4', 'reserved for spring'],
  ];
  const shop = fake({ Jobs, Stock }, 'A5', 'in');
  await weekThrough(shop);
  const { pieces } = (await readPieces(shop.workbook))!;
  expect(new Set(pieces.map(({ lot }) => lot))).toEqual(new Set(['B1', 'B2']));
  expect(pieces.filter(({ line }) => line === 'B').map(({ hose }) => hose)).toEqual(['Birch 3/8']);
  expect(pieces.some(({ line }) => line === 'D')).toBe(false);
  expect(await columnOf(shop, 'Progress')).toEqual(['', 'done', 'done', '', '', 'done', 'hold: drawing', 'ship Friday']);
  // The rack that is left still has the reels that its status keeps back, and says why.
  const racks = (await shop.workbook.sheets()).filter(sheet => sheet.startsWith('Rack after'));
  const left = (await shop.workbook.used(racks.at(-1)!))!.values;
  expect(left.filter(row => row[5] !== '').map(row => [row[3], row[5]])).toEqual(
    expect.arrayContaining([
      ['B0', 'Quarantine'],
      ['B3', 'reserved for spring'],
    ]),
  );
});

test('a metric week with hidden rows, merged orders, hoses as headings of groups, and status words of its own', async () => {
  const head = ['Order no.', 'No.', 'Hose', 'Fitting 1', 'Fitting 2', 'Pieces', 'Overall (mm)', 'Cut length (mm)', 'Bore (mm)'];
  const crimp = ['Die', 'Crimp diameter (mm)', 'Tolerance (mm)'];
  const Jobs: readonly (readonly FakeCell[])[] = [
    [...head, ...crimp, 'State'],
    ['', '', 'Alder DN 12', ...Array<FakeCell>(10).fill('')],
    ['B-51', 1, '', 'cone straight', 'cone 90°', 3, 1250, 1168.5, 12.7, 'D26', 27.35, 0.12, ''],
    ['', 2, '', 'cone straight', 'cone straight', 2, 640, 570, 12.7, 'D26', 27.35, 0.12, 'rush'],
    ['', 3, '', 'cone straight', 'cone straight', 9, 900, 830, 12.7, 'D26', 27.35, 0.12, ''],
    ['', '', 'Alder DN 20', ...Array<FakeCell>(10).fill('')],
    ['B-52', 1, '', 'cone straight', 'cone 45°', 2, 1800, 1700, 19.1, 'D36', 37.1, 0.15, 'planned in October'],
    ['', 2, '', 'cone straight', 'cone 45°', 1, 800, 700, 19.1, 'D36', 37.1, 0.15, 'delivered'],
  ];
  const Lager = [
    ['Hose', 'Length (m)', 'Reel no.', 'Lot', 'Where'],
    ['Alder DN 12', '3,5', 'R1', 'L81', 'A1'],
    ['Alder DN 12', 6, 'R2', 'L82', 'A2'],
    ['Alder DN 20', 9, 'R3', 'L83', 'A3'],
  ];
  const shop = fake({ Jobs, Lager }, 'A3', 'mm', { hiddenRows: { Jobs: [4] }, merges: { Jobs: ['A3:A5', 'A7:A8'] } });
  const open = await readJobs(shop.workbook, { step: { value: new Decimal(1), unit: measureUnit('length', 'mm')! } });
  const [question] = open.questions;
  expect(open.lines.every(({ standing }) => standing.kind === 'stop' || standing.kind === 'done')).toBe(true);
  await rememberAnswer(shop.workbook, 'jobs', 'Jobs', question!.asked, question!.heading, 'yes');
  await weekThrough(shop);
  const { pieces } = (await readPieces(shop.workbook))!;
  const made = pieces.map(({ order, line, hose }) => `${order}/${line} ${hose}`);
  expect(new Set(made)).toEqual(new Set(['B-51/1 Alder DN 12', 'B-51/2 Alder DN 12', 'B-52/1 Alder DN 20']));
  expect(await columnOf(shop, 'State')).toEqual(['', 'done', 'rush', '', '', 'planned in October', 'delivered']);
});

test('a week in inches with headings over two lines, sizes beside the hoses, and a rack that books off what was used', async () => {
  const Jobs: readonly (readonly FakeCell[])[] = [
    ['Build sheet', '', '', '', '', '', '', '', ''],
    [],
    ['WO', 'Hose', 'Dash', 'Fitting', 'Fitting', 'Finished', 'Cut', 'No.', ''],
    ['#', 'stock', 'size', 'left', 'right', 'length (in)', 'length (in)', `req'd`, 'Status'],
    ['1001', 'Birch', -6, 'JIC straight', 'JIC 90°', '36 1/2', '33-3/4', 4, ''],
    ['1002', 'Birch', -6, 'JIC straight', 'JIC straight', `4' 2"`, '47 5/16"', 2, ''],
    ['call the yard before the next one', '', '', '', '', '', '', '', ''],
    ['1003', 'Birch', -8, 'JIC straight', 'JIC straight', 18.25, '15 1/2', '5 ea', ''],
    ['1004', 'Birch', -8, 'JIC straight', 'JIC straight', 60, 57.5, 2, 'waiting on fittings'],
  ];
  const Stock = [
    ['Bin', 'Hose', 'Size', 'Reel #', 'Length (ft)', 'Used (ft)', 'Lot #', 'Notes'],
    ['A1', 'Birch', -6, 'R1', 12, '', 'L1', ''],
    ['A2', 'Birch', -6, 'R2', 50, 25, 'L2', ''],
    ['A3', 'Birch', -8, 'R3', 10, 2.5, 'L3', ''],
    ['A4', 'Birch', -8, 'R4', 30, '', 'L4', 'DO NOT USE'],
    ['A5', 'Birch', -8, 'R5', 3, '', 'L5', ''],
  ];
  const shop = fake({ Jobs, Stock }, 'A5', 'in');
  await rememberAnswer(shop.workbook, 'rack', 'Stock', 'meaning', 'length beside Used (ft)', 'new');
  await weekThrough(shop);
  const { pieces } = (await readPieces(shop.workbook))!;
  const lots = (hose: string) => new Set(pieces.filter(piece => piece.hose === hose).map(({ lot }) => lot));
  expect(lots('Birch -6')).toEqual(new Set(['L1', 'L2']));
  expect([...lots('Birch -8')].every(lot => lot === 'L3' || lot === 'L5')).toBe(true);
  expect(pieces.filter(({ status }) => status !== 'scrapped')).toHaveLength(4 + 2 + 5);
  // What is left on each reel is its length new less what was used and cut, saws and squaring: nothing comes off twice.
  const racks = (await shop.workbook.sheets()).filter(sheet => sheet.startsWith('Rack after'));
  const [head, ...rows] = (await shop.workbook.used(racks.at(-1)!))!.values;
  expect(head!.filter(cell => cell === 'Note of the cut list')).toHaveLength(1);
  const cutFrom = (lot: unknown) =>
    pieces.filter(piece => piece.lot === lot).reduce((sum, { cutLength }) => sum + cutLength!.value.toNumber() + 0.125, 0);
  const stock = new Map(Stock.slice(1).map(([, , , , length, used, lot]) => [lot, 12 * (Number(length) - Number(used))]));
  for (const [, , , , left, used, lot] of rows) {
    // Each plan squares off 1 in of a reel that it cuts into.
    const squared = stock.get(lot as string)! - cutFrom(lot) - Number(left) * 12;
    if (lot === 'L4') expect([left, used]).toEqual([30, '']);
    else expect([used, [0, 1, 2].some(inches => Math.abs(inches - squared) < 1e-6)]).toEqual(['', true]);
  }
});
