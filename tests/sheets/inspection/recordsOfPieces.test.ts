import { dayNumber } from '../../../src/core/units/sheetDate';
import { NO_CRIMP_FIELDS } from '../../../src/sheets/crimps/crimpFields';
import { gatherRecords, refuseOverdue } from '../../../src/sheets/inspection/gatherRecords';
import type { RecordWishes } from '../../../src/sheets/inspection/recordSources';
import { FRESH_FIELDS, NOT_NOTED } from '../../../src/sheets/inspection/inspectionRecord';
import { recordPage } from '../../../src/sheets/inspection/recordPage';
import { decisionRule, proofFacts, workFacts } from '../../../src/sheets/inspection/recordFacts';
import { recordGrowth } from '../../../src/sheets/inspection/recordsLog';
import { recordResult } from '../../../src/sheets/inspection/recordResult';
import { recordSheet } from '../../../src/sheets/inspection/recordSheet';
import { fillPiece, typedOf, type PieceTyped } from '../../../src/sheets/pieces/fillPiece';
import { rememberJobSheet } from '../../../src/sheets/pieces/jobsOfPieces';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { scrapPiece } from '../../../src/sheets/pieces/scrapPiece';
import { addressOf } from '../../../src/workbook/a1';
import type { Workbook } from '../../../src/workbook/workbook';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { METRIC, writeAll } from '../pieces/pieceSheets';

const wishes: RecordWishes = {
  fields: FRESH_FIELDS,
  crimps: NO_CRIMP_FIELDS,
  otherSheet: '',
  pressureUnit: 'bar',
  bench: { unit: 'mm', step: '1' },
  today: '2026-10-09',
};
const Gauges: readonly (readonly FakeCell[])[] = [
  ['Gauge', 'Kind', 'Checked', 'Every (days)', 'Unit', 'Resolution', 'U', 'Range from', 'Range to'],
  ['C3', 'caliper', dayNumber('2026-06-01')!, 365, 'mm', 0.01, 0.02, 0, 150],
  ['C4', 'caliper', dayNumber('2025-06-01')!, 365, 'mm', 0.01, 0.02, 0, 150],
  ['G7', 'pressure gauge', dayNumber('2026-06-01')!, 365, 'bar', 5, 10, 0, 1000],
];

async function open(sheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>> = { Gauges }) {
  const { workbook } = fakeWorkbook({ Jobs: METRIC, ...sheets }, { sheet: 'Jobs', address: 'A2' });
  await writeAll(workbook, 'mm');
  return workbook;
}

const pieceOf = async (workbook: Workbook, number: string) => {
  const pieces = (await readPieces(workbook))!;
  return { pieces, piece: pieces.pieces.find(({ piece }) => piece === number)! };
};

async function fill(workbook: Workbook, number: string, typed: Partial<PieceTyped>) {
  const { pieces, piece } = await pieceOf(workbook, number);
  const all = { ...typedOf(pieces, piece), ...typed };
  await workbook.write((await fillPiece(workbook, pieces, piece, all, '2026-10-07 08:00')).changes);
}

/** The same four readings at an end. */
async function measure(workbook: Workbook, number: string, end: 'A' | 'B', value: number) {
  const { pieces, piece } = await pieceOf(workbook, number);
  const column = pieces.table.columns[`reading1${end}`]!;
  const address = addressOf({ row: piece.row - 1, column, rows: 1, columns: 4 });
  await workbook.write([{ kind: 'values', at: { sheet: 'Pieces', address }, values: [[value, value, value, value]] }]);
}

const DONE = {
  lotA: 'C-5',
  lotB: 'C-6',
  ferruleLot: 'F-2',
  finished: '2181',
  testedAt: '702',
  testedFor: '60',
  gauge: 'C3; G7',
  by: 'Ilse',
  flushed: true,
  capped: true,
};

async function finished(more: Partial<PieceTyped> = {}, sheets = { Gauges }) {
  const workbook = await open(sheets);
  await measure(workbook, '41/3-1', 'A', 44.2);
  await measure(workbook, '41/3-1', 'B', 44.3);
  await fill(workbook, '41/3-1', { ...DONE, ...more });
  await workbook.select({ sheet: 'Pieces', address: 'A9' });
  return workbook;
}

const recordFor = async (workbook: Workbook) => {
  const gathered = await gatherRecords(workbook, wishes);
  return { gathered, record: gathered.records.find(({ line }) => line === '3')! };
};
const options = {
  fields: { ...FRESH_FIELDS, customer: 'Farm <A>' },
  result: NOT_NOTED,
  handle: '',
  source: 's',
  today: '2026-10-09',
};

test('a record of pieces names lots, lengths against limits, pressure asked and reached, gauges with resolution and due date', async () => {
  const workbook = await finished();
  const { gathered, record } = await recordFor(workbook);
  expect(gathered.refusals).toEqual([]);
  expect(record).toMatchObject({ order: 'B-42', assembly: '41/3', hose: 'Rowan DN 25', hoseLot: 'L75' });
  expect(record.crimps.map(({ piece, end, fittingLot, verdict }) => [piece, end, fittingLot, verdict])).toEqual([
    ['41/3-1', 'A', 'C-5', 'IN SPEC'],
    ['41/3-1', 'B', 'C-6', 'IN SPEC'],
  ]);
  expect(recordResult(record, NOT_NOTED)).toEqual({ kind: 'in spec', sentence: 'IN SPEC: 1 piece, 2 crimps.' });
  const html = recordPage([record], options);
  for (const text of [
    'C3: resolution 0.01 mm, U 0.02 mm (k = 2), checked 2026-06-01, due 2027-06-01',
    'hose L75, reel 5, A C-5, B C-6, ferrules F-2',
    // Twice the working pressure of 350 bar: ISO 6605:2017, 5.2.
    '702 of 700 bar, 60 s',
    'Ilse, 2026-10-07',
    'Farm &lt;A&gt;',
    '2032-10',
    'IN SPEC: 1 piece, 2 crimps.',
    '<small>Released</small>',
  ]) {
    expect(html).toContain(text);
  }
  const values = recordSheet('R', [record], options).flatMap(change => (change.kind === 'values' ? change.values.flat() : []));
  expect(values).toEqual(expect.arrayContaining(['IN SPEC: 1 piece, 2 crimps.', 'Released']));
});

test('the proof test is filled in from the pieces, for the paper and for the rows that are kept', async () => {
  const workbook = await finished();
  await rememberJobSheet(workbook, 'Jobs');
  const { record } = await recordFor(workbook);
  const typed = { ...FRESH_FIELDS, gauge: 'G1', hold: '30 s', caliper: 'C1', caliperChecked: '2020-01-01', medium: 'oil' };
  const facts = Object.fromEntries(
    [...workFacts(record, { ...options, fields: typed }), ...proofFacts(record, { ...options, fields: typed })].map(
      ({ label, value }) => [label, value],
    ),
  );
  expect(facts).toMatchObject({
    Caliper: 'C3',
    'Caliper calibrated': '2026-06-01',
    'Proof pressure': '700 bar',
    Rule: '2 × working pressure, ISO 6605:2017, 5.2',
    'Pressure reached': '702 bar',
    Gauge: 'G7',
    'Gauge calibrated': '2026-06-01',
    'Held for': '60 s',
    'Tested by': 'Ilse',
    // What no piece says is as it was typed.
    Medium: 'oil',
  });
  const { appended } = await recordGrowth(workbook, [record], { ...options, fields: typed });
  const values = appended!.changes.flatMap(change => (change.kind === 'values' ? change.values : []));
  const at = (heading: string) => values[0]!.indexOf(heading);
  const row = values.find(cells => cells[at('Piece')] === '41/3-1')!;
  expect(['Caliper', 'Gauge', 'Held for', 'Tested at', 'Tested by'].map(heading => row[at(heading)])).toEqual([
    'C3',
    'G7',
    '60 s',
    702,
    'Ilse',
  ]);
});

test('with pieces that nobody tested the test stays to be written on, and what is typed counts', async () => {
  const { record } = await recordFor(await finished({ testedAt: '', testedFor: '' }));
  const said = (label: string, fields = FRESH_FIELDS) =>
    proofFacts(record, { ...options, fields }).find(fact => fact.label === label)!.value;
  expect(['Pressure reached', 'Gauge', 'Held for', 'Tested by'].map(label => said(label))).toEqual(['', '', '', '']);
  expect(said('Held for', { ...FRESH_FIELDS, hold: '30 s' })).toBe('30 s');
  expect(said('Tested by', { ...FRESH_FIELDS, tester: 'RM' })).toBe('RM');
});

test('a piece that is too long, or was tested too low, is rejected: no line to release it', async () => {
  const { record } = await recordFor(await finished({ finished: '2300', testedAt: '650' }));
  const { kind, sentence } = recordResult(record, NOT_NOTED);
  expect(kind).toBe('rejected');
  expect(sentence).toMatch(/piece 41\/3-1 finished length LONG; piece 41\/3-1 tested at 650 of 700 bar/);
  expect(recordPage([record], options)).not.toContain('<small>Released</small>');
});

test('what lacks a reading, a length or a test is not complete', async () => {
  const { record } = await recordFor(await finished({ finished: '', testedAt: '', testedFor: '' }));
  expect(recordResult(record, NOT_NOTED).sentence).toBe('NOT COMPLETE: piece 41/3-1 finished length; piece 41/3-1 test.');
});

test('a gauge that was overdue on the day of its use is refused; one that is not on sheet Gauges is told', async () => {
  const overdue = await recordFor(await finished({ gauge: 'C4; G7' }));
  expect(() => refuseOverdue(overdue.gathered)).toThrow(/C4: overdue by 128 days, since 2026-06-01/);
  const strange = await recordFor(await finished({ gauge: 'C9; G7' }));
  expect(() => refuseOverdue(strange.gathered)).not.toThrow();
  expect(strange.record.problems).toContain('C9: not on sheet Gauges, no check of it is known');
});

test('the decision rule does not deny an uncertainty that the gauges state', async () => {
  const { record } = await recordFor(await finished());
  expect(record.gauges![0]).toContain('U 0.02 mm (k = 2)');
  expect(decisionRule(options, record)).toBe(
    'Decision rule: the mean against its limits as measured; no uncertainty U is taken off them.',
  );
});

test('a record says the same due date as Gauges: the earlier one of interval and next check', async () => {
  const dated = Gauges.map((row, index) => [...row, index === 0 ? 'Next due' : row[0] === 'C3' ? '2026-11-30' : '2027-01-15']);
  const everyBlank = dated.map(row => (row[0] === 'G7' ? [...row.slice(0, 3), '', ...row.slice(4)] : row));
  const { record } = await recordFor(await finished({}, { Gauges: everyBlank }));
  expect(record.gauges).toEqual([
    'C3: resolution 0.01 mm, U 0.02 mm (k = 2), checked 2026-06-01, due 2026-11-30',
    'G7: resolution 5 bar, U 10 bar (k = 2), checked 2026-06-01, due 2027-01-15',
  ]);
});

test('a gauge that was checked again after the pieces were made is told, not refused; with a row for each check the one before counts', async () => {
  const again = ['C3', 'caliper', '2026-10-08', 365, 'mm', 0.01, 0.015, 0, 150];
  const later = await recordFor(await finished({}, { Gauges: [Gauges[0]!, again, Gauges[3]!] }));
  expect(later.gathered.refusals).toEqual([]);
  expect(later.record.problems).toContain(
    'C3: its check of 2026-10-08 came after its use on 2026-10-07: whether it was due then is not known',
  );
  const both = await recordFor(await finished({}, { Gauges: [...Gauges, again] }));
  expect([both.gathered.refusals, both.record.problems]).toEqual([[], []]);
  expect(both.record.gauges![0]).toBe('C3: resolution 0.01 mm, U 0.02 mm (k = 2), checked 2026-06-01, due 2027-06-01');
  expect(workFacts(both.record, options)).toContainEqual({ label: 'Caliper calibrated', value: '2026-06-01' });
});

test('what nobody says of a gauge is not guessed: a bare G7 is neither caliper nor pressure gauge, and no check of it is known', async () => {
  const factsOf = (record: Parameters<typeof workFacts>[0], options: Parameters<typeof workFacts>[1]) =>
    Object.fromEntries([...workFacts(record, options), ...proofFacts(record, options)].map(({ label, value }) => [label, value]));
  const fields = { ...FRESH_FIELDS, caliper: 'C5', caliperChecked: '2026-06-01' };
  const bare = await recordFor(await finished({ gauge: 'G7' }, {} as never));
  const unknown = 'G7: not on sheet Gauges, no check of it is known';
  expect(factsOf(bare.record, { ...options, fields })).toMatchObject({
    Caliper: 'C5',
    'Caliper calibrated': '2026-06-01',
    Gauge: '',
    'Measured with': unknown,
  });
  expect(bare.record.problems).toContain(unknown);
  expect(() => refuseOverdue(bare.gathered)).not.toThrow();
  // On the sheet, but without a kind: it has a check, and is still neither.
  const kindless = Gauges.map(row => (row[0] === 'G7' ? ['G7', '', ...row.slice(2)] : row));
  const listed = await recordFor(await finished({ gauge: 'G7' }, { Gauges: kindless }));
  expect(factsOf(listed.record, options)).toMatchObject({
    Caliper: '',
    Gauge: '',
    'Measured with': 'G7: resolution 5 bar, U 10 bar (k = 2), checked 2026-06-01, due 2027-06-01',
  });
  // Its own words say what it is, and so does the heading of its column.
  const worded = await recordFor(await finished({ gauge: 'Caliper 3; Pressure gauge 7' }, {} as never));
  expect(factsOf(worded.record, options)).toMatchObject({ Caliper: 'Caliper 3', Gauge: 'Pressure gauge 7' });
});

test('the heading of its column says what a gauge is', async () => {
  const { workbook } = fakeWorkbook(
    {
      Pieces: [
        ['Piece', 'Hose', 'Caliper', 'Pressure gauge'],
        ['P-1', 'Larch DN 12', 'C3', 'G7'],
      ],
    },
    { sheet: 'Pieces', address: 'A1' },
  );
  const [piece] = (await readPieces(workbook))!.pieces;
  expect([...piece!.gaugeKinds]).toEqual([
    ['g7', 'pressure gauge'],
    ['c3', 'caliper'],
  ]);
});

test('of job lines the readings come from Pieces by themselves; a scrapped piece is named, not recorded', async () => {
  const workbook = await finished();
  const book = await pieceBook(workbook);
  const bad = book.pieces!.pieces.find(({ piece }) => piece === 'H3-117-2')!;
  await workbook.write(scrapPiece(book, bad, { now: '2026-10-07 09:00', by: '', why: 'kinked' }).changes);
  await workbook.select({ sheet: 'Jobs', address: 'A2' });
  const { gathered, record } = await recordFor(workbook);
  expect(gathered.records.map(({ title }) => title)).toEqual(['Line 1', 'Line 2', 'Line 3']);
  expect(record.crimps.map(({ verdict }) => verdict)).toEqual(['IN SPEC', 'IN SPEC']);
  const first = gathered.records[0]!;
  expect(first.scrapped).toEqual(['H3-117-2']);
  expect(first.pieces!.map(({ piece }) => piece)).toEqual(['H3-117-1', 'H3-117-3', 'H3-117-4', 'H3-117-5']);
});
