import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { CRIMP_HEADINGS } from '../../../src/sheets/crimps/crimpHeadings';
import { measuredCrimps, readCrimpRows } from '../../../src/sheets/crimps/readCrimpRows';
import { GAUGE_HEADINGS, readGauges } from '../../../src/sheets/gauges/readGauges';
import { JOB_HEADINGS } from '../../../src/sheets/jobs/jobHeadings';
import { NoJobs, readJobs } from '../../../src/sheets/jobs/readJobs';
import { PIECE_HEADINGS } from '../../../src/sheets/pieces/pieceTable';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { rackSheets, readRack } from '../../../src/sheets/rack/rack';
import { RACK_HEADINGS } from '../../../src/sheets/rack/rackTable';
import { headingProposals, type HeadingKind } from '../../../src/sheets/table/headingProposals';
import { rememberAnswer } from '../../../src/sheets/table/tableAnswers';
import type { Workbook } from '../../../src/workbook/workbook';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const mm = measureUnit('length', 'mm')!;
const WISHES = { step: { value: new Decimal(1), unit: mm } };

type Rows = readonly (readonly FakeCell[])[];
const book = (sheet: string, rows: Rows, address = 'A1') => fakeWorkbook({ [sheet]: rows }, { sheet, address }).workbook;
const say = async (workbook: Workbook, sheet: string, { kind }: HeadingKind, said: Readonly<Record<string, string>>) => {
  for (const [heading, role] of Object.entries(said)) await rememberAnswer(workbook, kind, sheet, 'role', heading, role);
};
/** Heading rows that are proposed, as the sheet shows them. */
const proposedRows = async (...of: Parameters<typeof headingProposals>) =>
  (await headingProposals(...of)).map(({ table }) => table.block.row + 1);

/** Czech: hose, coupling, length, pieces, under a title block. */
const CZECH: Rows = [
  ['Zakázkový list', '', '', '', '', ''],
  ['Dílna', 'Sklizeň řepy', '', '', '', ''],
  ['Datum', '3. 10. 2026', '', '', '', ''],
  ['', '', '', '', '', ''],
  ['Č.', 'Hadice', 'Koncovka levá', 'Koncovka pravá', 'Délka (mm)', 'Kusů'],
  [1, 'Olše 12', 'rovná', 'rovná', 850, 4],
  [2, 'Olše 12', 'rovná', 'koleno', 1200, 2],
  ['', 'celkem', '', '', '', 6],
];

describe('job lines in another language', () => {
  test('the likeliest heading row is proposed, with what is still to be said', async () => {
    const workbook = book('Zakázky', CZECH, 'B6');
    await expect(readJobs(workbook, WISHES)).rejects.toBeInstanceOf(NoJobs);
    const [first] = await headingProposals(workbook, 'Zakázky', JOB_HEADINGS);
    expect(first!.table.block).toMatchObject({ row: 4, column: 0, columns: 6 });
    expect(first!.columns.map(({ heading }) => heading)).toEqual(CZECH[4]);
    expect(first!.missing).toEqual([['Hose'], ['Overall length', 'Cut length']]);
  });

  test('after the choice the ordinary reader reads it', async () => {
    const workbook = book('Zakázky', CZECH, 'B6');
    await say(workbook, 'Zakázky', JOB_HEADINGS, { Hadice: 'hose', 'Délka (mm)': 'cutLength', Kusů: 'quantity' });
    expect((await headingProposals(workbook, 'Zakázky', JOB_HEADINGS))[0]!.missing).toEqual([]);
    const { lines, report } = await readJobs(workbook, WISHES);
    expect(report.tables).toEqual(['A5:F8']);
    expect(lines.map(({ row, hose, cutLength, quantity }) => [row, hose, cutLength?.value.toNumber(), quantity])).toEqual([
      [6, 'Olše 12', 850, 4],
      [7, 'Olše 12', 1200, 2],
      [8, 'celkem', undefined, 6],
    ]);
    // A total in another language is no hose to cut: it has no length, so it is refused with its row.
    expect(report.taken).toEqual([6, 7]);
    expect(report.leftOut.map(({ row, reason }) => [row, reason])).toEqual([[8, 'stop']]);
  });

  test('a heading row that no words tell from the rows below is found by what was said', async () => {
    // Lengths are texts, so that nothing but words and texts stands in the sheet; the title block has values of its own.
    const rows: Rows = [
      ['Kunde', 'Maschine'],
      ['Hofgut', '6-reihig'],
      ['', ''],
      ['Schlauch', 'Armatur 1', 'Armatur 2', 'Zuschnitt', 'Stück', 'für'],
      ['Erle 12', 'gerade', 'Bogen', '850 mm', '4', 'Heber'],
      ['Erle 12', 'gerade', 'gerade', '1,2 m', '2', 'Rodeschar'],
    ];
    const workbook = book('Aufträge', rows, 'A5');
    expect((await proposedRows(workbook, 'Aufträge', JOB_HEADINGS))[0]).toBe(4);
    await say(workbook, 'Aufträge', JOB_HEADINGS, {
      Schlauch: 'hose',
      'Armatur 1': 'fittingA',
      'Armatur 2': 'fittingB',
      Zuschnitt: 'cutLength',
      Stück: 'quantity',
    });
    const { lines } = await readJobs(workbook, WISHES);
    const message = lines.map(({ hose, ends, cutLength, quantity }) =>
      [hose, ends[0].fitting, ends[1].fitting, `${cutLength?.value} ${cutLength?.unit.symbol}`, quantity].join(', '),
    );
    expect(message).toEqual(['Erle 12, gerade, Bogen, 850 mm, 4', 'Erle 12, gerade, gerade, 1.2 m, 2']);
  });

  test('rows of data are no headings; a sheet of numbers or of prose proposes none', async () => {
    expect(await proposedRows(book('Zakázky', CZECH), 'Zakázky', JOB_HEADINGS)).not.toContain(6);
    const numbers = [
      [1, 2, 3],
      [4, 5, 6],
    ];
    expect(await proposedRows(book('Čísla', numbers), 'Čísla', JOB_HEADINGS)).toEqual([]);
    expect(await proposedRows(book('Text', [['Vzkaz'], ['Zavolat do dílny']]), 'Text', JOB_HEADINGS)).toEqual([]);
  });

  test('several rows that may be headings are all proposed', async () => {
    const rows: Rows = [
      ['Stroj', 'Hodiny', 'Řádků'],
      ['Sklízeč', 120, 6],
      ['', '', ''],
      ['', '', ''],
      ['Hadice', 'Délka', 'Kusů', 'Poznámka'],
      ['Olše 12', 850, 4, 'spěchá'],
    ];
    expect(await proposedRows(book('List', rows), 'List', JOB_HEADINGS)).toEqual([5, 1]);
  });
});

test('a rack in another language is found and read', async () => {
  const rows: Rows = [
    ['Hadice', 'Zbývá (m)', 'Regál'],
    ['Olše 12', '12,5', 'A1'],
    ['Olše 10', 30, 'A2'],
  ];
  const workbook = book('Sklad', rows);
  expect(await rackSheets(workbook)).toEqual([]);
  expect((await headingProposals(workbook, 'Sklad', RACK_HEADINGS))[0]!.missing).toEqual([['Hose'], ['Length']]);
  await say(workbook, 'Sklad', RACK_HEADINGS, { Hadice: 'hose', 'Zbývá (m)': 'length', Regál: 'place' });
  expect(await rackSheets(workbook)).toEqual(['Sklad']);
  const rack = await readRack(workbook, 'Sklad');
  expect(rack!.rows.map(({ hose, length, place }) => `${hose} ${length.value} ${length.unit.symbol} ${place}`)).toEqual([
    'Olše 12 12.5 m A1',
    'Olše 10 30 m A2',
  ]);
});

test('readings in another language are found and judged', async () => {
  const rows: Rows = [
    ['Hadice', 'Koncovka', 'Předpis (mm)', 'Úchylka (mm)', 'Průměr I', 'Průměr II'],
    ['Olše 12', 'rovná', 25.4, 0.2, 25.41, 25.38],
    ['Olše 12', 'koleno', 25.4, 0.2, 25.7, 25.72],
  ];
  const workbook = book('Lisování', rows);
  // Diameters side by side are taken for readings, whatever heads them; of what and against which target is not known.
  expect(measuredCrimps((await readCrimpRows(workbook))!, 'mm')).toEqual([]);
  const [first] = await headingProposals(workbook, 'Lisování', CRIMP_HEADINGS);
  expect(first!.columns.filter(({ role }) => role === 'reading').map(({ heading }) => heading)).toEqual([
    'Průměr I',
    'Průměr II',
  ]);
  await say(workbook, 'Lisování', CRIMP_HEADINGS, {
    Hadice: 'hose',
    Koncovka: 'fitting',
    'Předpis (mm)': 'target',
    'Úchylka (mm)': 'tolerance',
    'Průměr I': 'reading',
    'Průměr II': 'reading',
  });
  const reading = await readCrimpRows(workbook);
  expect(measuredCrimps(reading!, 'mm').map(({ readings }) => readings.map(String))).toEqual([
    ['25.41', '25.38'],
    ['25.7', '25.72'],
  ]);
});

test('gauges and pieces under other headings are found by what was said', async () => {
  const gauges: Rows = [
    ['Měřidlo', 'Ověřeno', 'Dnů'],
    ['Posuvka 1', '2026-01-10', 365],
  ];
  const workbook = book('Gauges', gauges);
  expect(await readGauges(workbook)).toBeUndefined();
  expect((await headingProposals(workbook, 'Gauges', GAUGE_HEADINGS))[0]!.missing).toEqual([['Gauge'], ['Checked']]);
  await say(workbook, 'Gauges', GAUGE_HEADINGS, { Měřidlo: 'gauge', Ověřeno: 'checked', Dnů: 'every' });
  expect((await readGauges(workbook))!.gauges.map(({ name, every }) => [name, every])).toEqual([['Posuvka 1', { days: 365 }]]);

  const pieces: Rows = [
    ['Kus', 'Hadice', 'Šarže', 'Délka (mm)'],
    ['Z1-1', 'Olše 12', '42', 850],
  ];
  const other = book('Pieces', pieces);
  expect(await readPieces(other)).toBeUndefined();
  await say(other, 'Pieces', PIECE_HEADINGS, { Kus: 'piece', Hadice: 'hose', Šarže: 'lot' });
  expect((await readPieces(other))!.pieces.map(({ piece, hose, lot }) => [piece, hose, lot])).toEqual([
    ['Z1-1', 'Olše 12', '42'],
  ]);
});
