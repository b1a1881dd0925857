import { dayNumber } from '../../../src/core/units/sheetDate';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { recall, recallSentence } from '../../../src/sheets/recall/recall';
import { recallSheet } from '../../../src/sheets/recall/recallSheet';
import type { RecallRequest } from '../../../src/sheets/recall/recallRequest';
import { recordRows } from '../../../src/sheets/recall/recordRows';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const day = (text: string) => dayNumber(text)!;
const HEAD = [
  'Date',
  'Order',
  'Assembly',
  'Piece',
  'End',
  'Hose',
  'Hose lot',
  'Coupling',
  'Coupling lot',
  'Crimped on',
  'Caliper',
];
const RECORDS: readonly (readonly FakeCell[])[] = [
  HEAD,
  ['2026-11-29', 'B-1', 'P', '1', 'A', 'Larch', 'L70, L71', 'cone', 'F1', '2026-10-01', 'Caliper 3, Caliper 4'],
  ['2026-11-29', 'B-2', 'P', '2', 'A', 'Larch', 'L70\nL72', 'cone', 'F1', '2026-10-02', 'Caliper 4'],
  ['2026-11-29', 'B-3', 'P', '3', 'A', 'Larch', '', 'cone', 'F1', '', ''],
  ['2026-09-01', 'B-4', 'P', '4', 'A', 'Rowan', '', 'cone', 'F1', '', 'Caliper 4'],
  ['2026-11-29', 'B-5', 'P', '5', 'A', 'Larch', 'L80', 'cone', 'F1', '2026-10-05', 'Caliper 3?'],
];
const PIECES: readonly (readonly FakeCell[])[] = [
  ['Piece', 'Order', 'Hose', 'Lot', 'Status', 'Date'],
  ['P-3', 'B-3', 'Larch', 'L90', 'done', '2026-10-03'],
];
const KNOWN = ['Caliper 3', 'Caliper 4'].map(name => ({ name, kind: 'caliper' }));

async function asked(request: RecallRequest, sheets: Record<string, readonly (readonly FakeCell[])[]> = {}) {
  const { workbook } = fakeWorkbook({ 'Inspection records': RECORDS, ...sheets }, { sheet: 'Inspection records', address: 'A1' });
  const pieces = (await readPieces(workbook))?.pieces ?? [];
  const found = recall(pieces, await recordRows(workbook), request, KNOWN);
  return { workbook, found };
}
const rows = async (...args: Parameters<typeof asked>) => {
  const { found } = await asked(...args);
  return { hits: found.records.map(({ row }) => row), open: found.openRecords.map(({ record, why }) => `${record.row}: ${why}`) };
};
const lot = (name: string, part = ''): RecallRequest => ({ by: 'lot', lot: name, of: 'hose', part });
const gauge = (since?: string): RecallRequest => ({
  by: 'gauge',
  name: 'caliper 3',
  kind: 'caliper',
  since: since === undefined ? undefined : day(since),
});

test.each([
  ['L70', [2, 3], ['4: no hose lot', '5: no hose lot']],
  ['L71', [2], ['4: no hose lot', '5: no hose lot']],
  ['L7', [], ['4: no hose lot', '5: no hose lot']],
  ['L80-1', [], ['4: no hose lot', '5: no hose lot', '6: hose lot "L80"']],
])('lots of records are read as those of pieces: %s', async (name, hits, open) => {
  expect(await rows(lot(name))).toEqual({ hits, open });
});

test('a record of another hose is out, and one whose piece names another lot', async () => {
  expect(await rows(lot('L70', 'Larch'))).toEqual({ hits: [2, 3], open: ['4: no hose lot'] });
  expect(await rows(lot('L70', 'Larch'), { Pieces: PIECES })).toEqual({ hits: [2, 3], open: [] });
});

test('a lot of ferrules, for which the records have no column, excludes none', async () => {
  const { open } = await rows({ by: 'lot', lot: 'R1', of: 'ferrule', part: '' });
  expect(open).toEqual([2, 3, 4, 5, 6].map(row => `${row}: no ferrule lot`));
});

test('several calipers in one cell; the day is that of the crimp', async () => {
  expect(await rows(gauge())).toEqual({ hits: [2], open: ['4: no caliper named', '6: "Caliper 3?"'] });
  // Row 2 was crimped on 2026-10-01 and written on 2026-11-29; row 4 only says when it was written.
  expect(await rows(gauge('2026-10-02'))).toEqual({ hits: [], open: ['4: no caliper named', '6: "Caliper 3?"'] });
});

test('days: as crimped; a record without that day was made on the day it was written or before', async () => {
  const days = (from: string, to: string) => rows({ by: 'days', from: day(from), to: day(to) });
  expect(await days('2026-10-01', '2026-10-01')).toEqual({ hits: [2], open: ['4: no date'] });
  expect(await days('2026-08-01', '2026-08-02')).toEqual({ hits: [], open: ['4: no date', '5: no date'] });
  expect(await days('2026-11-29', '2026-11-29')).toEqual({ hits: [], open: ['4: no date'] });
});

test('said in the sentence, with their orders, and written on the sheet', async () => {
  const { workbook, found } = await asked(lot('L71'));
  expect(recallSentence(found)).toBe('0 pieces of 1 order, 1 row of records. 2 rows of records cannot be excluded.');
  expect([found.orders, found.openOrders]).toEqual([['B-1'], ['B-3', 'B-4']]);
  await workbook.write(recallSheet('Recall', found, 'From records'));
  const written = (await workbook.used('Recall'))!.values.map(row => row[0]);
  expect(written).toContain('Inspection records, row 2: P 1, order B-1');
  expect(written).toContain('Inspection records, row 4: P 3, order B-3: cannot be excluded: no hose lot');
});
