import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { dayNumber } from '../../../src/core/units/sheetDate';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { recall, recallSentence } from '../../../src/sheets/recall/recall';
import { recallSheet } from '../../../src/sheets/recall/recallSheet';
import type { RecallRequest } from '../../../src/sheets/recall/recallRequest';
import { recordRows } from '../../../src/sheets/recall/recordRows';
import { changedVerdicts, rejudge, retest } from '../../../src/sheets/recall/rejudge';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const mm = measureUnit('length', 'mm')!;
const bar = measureUnit('pressure', 'bar')!;
const day = (text: string) => dayNumber(text)!;

const HEAD = [
  'Piece',
  'Order',
  'Hose',
  'Lot',
  'Fitting A',
  'Fitting B',
  'Lot A',
  'Lot B',
  'Ferrule lot',
  'Gauge',
  'Date',
  'Status',
  'Target A (mm)',
  'Tolerance A (mm)',
  'Reading A1 (mm)',
  'Reading A2 (mm)',
  'Reading A3 (mm)',
  'Reading A4 (mm)',
  'Tested at (bar)',
  'Test pressure (bar)',
];
const crimp = (reading: number) => [24.9, 0.12, reading, reading, reading, reading];
/** 24.78 … 25.02: target 24.90, tolerance 0.12. */
const PIECES: readonly (readonly FakeCell[])[] = [
  HEAD,
  [
    'P-1',
    'B-1',
    'Larch DN 12',
    'L70',
    'cone',
    'cone',
    'F1',
    'F1',
    'R1',
    'Caliper 3; Gauge 7',
    '2026-09-01',
    'done',
    ...crimp(24.8),
    560,
    550,
  ],
  [
    'P-2',
    'B-1',
    'Larch DN 12',
    'L71',
    'cone',
    'cone',
    'F1',
    'F2',
    'R1',
    'Caliper 3',
    '2026-09-02',
    'done',
    ...crimp(24.9),
    551,
    550,
  ],
  ['P-3', 'B-2', 'Larch DN 12', '', 'cone', 'cone', 'F1', 'F1', 'R1', '', '2026-09-03', 'done', ...crimp(25.01), '', ''],
  [
    'P-4',
    'B-3',
    'Rowan DN 25',
    'L70; L72',
    'flange',
    'flange',
    '',
    '',
    '',
    'Caliper 4',
    '',
    'tested',
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    '',
  ],
  [
    'P-5',
    'B-4',
    'Rowan DN 25',
    '',
    'flange',
    'flange',
    'F9',
    'F9',
    'R9',
    'Caliper 9',
    '2026-09-04',
    'scrapped',
    ...crimp(24.9),
    '',
    '',
  ],
  ['P-6', 'B-5', 'Larch DN 12', '', 'cone', 'cone', '', '', '', '', '', '', '', '', '', '', '', '', '', ''],
];
const RECORDS: readonly (readonly FakeCell[])[] = [
  ['Date', 'Line', 'Order', 'Assembly', 'Piece', 'End', 'Hose lot', 'Coupling lot', 'Caliper', 'Gauge'],
  ['2026-09-01', '1', 'B-1', 'P', '1', 'A', 'L70', 'F1', 'Caliper 3', 'Gauge 7'],
  ['2026-08-01', '1', 'A-9', 'Q', '7', 'A', 'l70', 'F0', 'Caliper 4', ''],
  ['2026-09-04', '1', 'B-4', 'P-5', '', 'A', 'L80', 'F9', 'Caliper 9', ''],
];
const KNOWN = [
  { name: 'Caliper 3', kind: 'caliper' },
  { name: 'Caliper 4', kind: 'caliper' },
  { name: 'Gauge 7', kind: 'pressure gauge' },
];

const read = async () => {
  const { workbook } = fakeWorkbook(
    { Pieces: PIECES, 'Inspection records': RECORDS },
    { sheet: 'Pieces', address: 'A1' },
    { hiddenRows: { Pieces: [1] } },
  );
  return { workbook, pieces: (await readPieces(workbook))!.pieces, records: await recordRows(workbook) };
};
const asked = async (request: RecallRequest) => {
  const { pieces, records } = await read();
  const found = recall(pieces, records, request, KNOWN);
  const short = (list: typeof found.hits) => list.map(({ piece, why }) => `${piece.piece}: ${why}`);
  return { hits: short(found.hits), open: short(found.open), orders: found.orders, records: found.records.map(({ row }) => row) };
};

describe('by lot', () => {
  test('pieces that name it, among several lots too; those that name none cannot be excluded', async () => {
    expect(await asked({ by: 'lot', lot: ' l70', of: 'hose', part: '' })).toEqual({
      hits: ['P-1: hose lot L70', 'P-4: hose lot L70; L72'],
      open: ['P-3: no hose lot', 'P-5: no hose lot'],
      orders: ['B-1', 'B-3', 'A-9'],
      records: [2, 3],
    });
  });

  test('a piece that does not have the part is out', async () => {
    const { hits, open } = await asked({ by: 'lot', lot: 'L70', of: 'hose', part: 'Rowan DN 25' });
    expect(hits).toEqual(['P-1: hose lot L70', 'P-4: hose lot L70; L72']);
    expect(open).toEqual(['P-5: no hose lot']);
  });

  test('a coupling’s lot at either end', async () => {
    const { hits, open } = await asked({ by: 'lot', lot: 'F2', of: 'fitting', part: '' });
    expect(hits).toEqual(['P-2: lot B F2']);
    expect(open).toEqual(['P-4: no lot A, no lot B']);
  });
});

describe('by gauge', () => {
  test('pieces that name it; who names another of its kind is out, who names none or an unknown one cannot be excluded', async () => {
    const { hits, open } = await asked({ by: 'gauge', name: 'caliper 3', kind: 'caliper', since: undefined });
    expect(hits).toEqual(['P-1: caliper 3', 'P-2: caliper 3']);
    expect(open).toEqual(['P-3: no caliper named', 'P-5: Caliper 9: not on sheet Gauges']);
  });

  test('since a day: earlier ones are out', async () => {
    const { hits } = await asked({ by: 'gauge', name: 'Caliper 3', kind: 'caliper', since: day('2026-09-02') });
    expect(hits).toEqual(['P-2: Caliper 3']);
  });

  test('a pressure gauge concerns what was tested', async () => {
    const { hits, open } = await asked({ by: 'gauge', name: 'Gauge 7', kind: 'pressure gauge', since: undefined });
    expect([hits, open]).toEqual([['P-1: Gauge 7'], ['P-2: no pressure gauge named']]);
  });
});

test('by days: the last day counts whole, undated pieces cannot be excluded, planned ones are out', async () => {
  const { hits, open } = await asked({ by: 'days', from: day('2026-09-02'), to: day('2026-09-03') });
  expect(hits).toEqual(['P-2: made then', 'P-3: made then']);
  expect(open).toEqual(['P-4: no date']);
});

describe('judged again', () => {
  test('a caliper that read 0.03 high: of 24.80, 24.90, 25.01 in 24.78 … 25.02 the first was TIGHT', async () => {
    const { pieces } = await read();
    const judged = rejudge(pieces.slice(0, 3), { value: new Decimal('0.03'), unit: mm });
    // 24.80 − 0.03 = 24.77, 24.90 − 0.03 = 24.87, 25.01 − 0.03 = 24.98: by hand.
    expect(judged.rejudged.map(({ was, is, mean }) => [was, is, mean.toString()])).toEqual([
      ['IN SPEC', 'TIGHT', '24.77'],
      ['IN SPEC', 'IN SPEC', '24.87'],
      ['IN SPEC', 'IN SPEC', '24.98'],
    ]);
    expect(changedVerdicts(judged).map(({ piece, end }) => `${piece.piece} ${end}`)).toEqual(['P-1 A']);
  });

  test('an error in another unit is converted; one that read low makes it LOOSE', async () => {
    const { pieces } = await read();
    const inch = measureUnit('length', 'in')!;
    // −0.001 in = −0.0254 mm: 25.01 + 0.0254 = 25.0354 > 25.02.
    const judged = rejudge(pieces, { value: new Decimal('-0.001'), unit: inch });
    expect(changedVerdicts(judged).map(({ piece, is }) => `${piece.piece} ${is}`)).toEqual(['P-3 LOOSE']);
  });

  test('what cannot be judged is said in rounded numbers', async () => {
    const { pieces } = await read();
    const inch = measureUnit('length', 'in')!;
    const inches = pieces.slice(0, 1).map(piece => {
      const [a, b] = piece.ends;
      const end = { ...a, target: { value: new Decimal('0.98'), unit: inch } };
      return { ...piece, ends: [end, b] as const };
    });
    // (24.80 − 30) mm ÷ 25.4 = −0.204724… in.
    const { open } = rejudge(inches, { value: new Decimal(30), unit: mm });
    expect(open).toHaveLength(1);
    expect(open[0]!.why).toContain('reading 1 is -0.2047: ');
    expect(open[0]!.why).not.toMatch(/\.\d{5}/);
  });

  test('a pressure gauge that read 5 bar high: whether the pressure asked was reached', async () => {
    const { pieces } = await read();
    const found = retest(pieces, { value: new Decimal(5), unit: bar });
    expect(found.map(({ piece, reached, isReached }) => [piece.piece, reached.toNumber(), isReached])).toEqual([
      ['P-1', 555, true],
      ['P-2', 546, false],
    ]);
  });
});

test('as a sheet: result on top, verdicts that change, pieces, records', async () => {
  const { workbook, pieces, records } = await read();
  const found = recall(pieces, records, { by: 'gauge', name: 'Caliper 3', kind: 'caliper', since: undefined }, KNOWN);
  expect(recallSentence(found)).toBe('2 pieces of 1 order, 1 row of records. 2 pieces cannot be excluded.');
  await workbook.write(recallSheet('Recall', found, 'From Pieces, 2026-10-05', { value: new Decimal('0.03'), unit: mm }));
  const { values } = (await workbook.used('Recall'))!;
  expect(values[0]![0]).toBe('Recall: caliper Caliper 3');
  expect(values.some(row => row.join('|').startsWith('P-1|A|24.77|IN SPEC|TIGHT'))).toBe(true);
  const rows = values.slice(values.findIndex(row => row[0] === 'Piece' && row[1] === 'Order') + 1);
  expect(rows.slice(0, 4).map(row => [row[0], row[11]])).toEqual([
    ['P-1', 'Caliper 3'],
    ['P-2', 'Caliper 3'],
    ['P-3', 'cannot be excluded: no caliper named'],
    ['P-5', 'cannot be excluded: Caliper 9: not on sheet Gauges'],
  ]);
});
