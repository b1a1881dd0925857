import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { blockOf } from '../../../src/workbook/a1';
import type { CellValue, Change } from '../../../src/workbook/workbook';
import { EMPTY_ENTRY, type EntryState } from '../../../src/sheets/crimps/entry';
import { memoryText, recallEntry } from '../../../src/sheets/crimps/entryMemory';
import { entryState } from '../../../src/sheets/crimps/entryState';
import { NO_OPTIONS } from '../../../src/sheets/crimps/crimpReadOptions';
import { addEntryColumns, missingColumns } from '../../../src/sheets/crimps/entryColumns';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { crimpRowsOf } from '../../../src/sheets/crimps/readCrimpRows';
import { trialPiece } from '../../../src/sheets/crimps/trialPiece';
import { undoEntry, writeEntry } from '../../../src/sheets/crimps/writeEntry';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { gate, registerSheets } from '../machines/registerSheets';
import { sheetContent } from '../table/sheetContent';

const HEAD = ['Line', 'Hose', 'Coupling', 'Machine', 'Reading 1 (mm)', 'Reading 2 (mm)'];
const line = (number: number, ...more: CellValue[]): CellValue[] => [
  number,
  'Larch DN 12',
  'Larch cone',
  'Gate',
  '',
  '',
  ...more,
];
type Machines = Parameters<typeof registerSheets>[0];

function catalogueOf(machines: Machines = gate) {
  const sheets = registerSheets(machines);
  const table = (name: string) => sheets[name]!.map(row => row.map(cell => (cell === '' ? null : (cell as string | number))));
  return readCatalogue({
    hoses: table('Hoses'),
    fittings: table('Fittings'),
    crimps: table('Crimps'),
    machines: table('Machines'),
  });
}

const readingOf = (rows: readonly (readonly CellValue[])[], catalogue = catalogueOf()) =>
  crimpRowsOf(crimpSheetOf({ used: sheetContent(rows, 'Record'), catalogue }, blockOf('A2')!), NO_OPTIONS);

const opened = (rows: readonly (readonly CellValue[])[], before = EMPTY_ENTRY, catalogue = catalogueOf()) =>
  entryState(before, { type: 'open', rows: readingOf(rows, catalogue).rows });

/** 2026-03-14 (day 46095 of a sheet) at 14:30. */
const MOMENT = 46_095 + 14.5 / 24;
/** Types readings, each with Enter; the last Enter twice, for what is to be replaced. */
function typed(state: EntryState, ...readings: string[]): EntryState {
  const filled = readings.reduce(
    (now, text, field) => entryState(entryState(now, { type: 'type', field, text }), { type: 'enter', moment: MOMENT }),
    state,
  );
  return filled.stop?.kind === 'overwrite' ? entryState(filled, { type: 'enter', moment: MOMENT }) : filled;
}
const written = ({ pending }: EntryState) => pending.at(-1)!.writing.cells.map(({ address, after }) => `${address} ${after}`);

describe('the dial that a crimp was made at', () => {
  test('stays when its readings are corrected, though the next dial is another by now', () => {
    const first = typed(opened([HEAD, line(1), line(2)]), '25.2', '25.2');
    // 0.2 too large at 0.02 a digit: 10 digits up from the recorded 410.
    expect(first.dialText).toBe('420');
    const again = entryState(first, { type: 'previous' });
    expect(again.dialText).toBe('410');
    const corrected = typed(again, '25.19', '25.2');
    expect(corrected.last!.row.dial!.value.toNumber()).toBe(410);
  });

  test('is known again after the rows were read anew, and after the pane was loaded again', async () => {
    const rows = [HEAD, line(1), line(2)];
    const first = typed(entryState(opened(rows), { type: 'dial', text: '395' }), '25.01', '25');
    const measured = [HEAD, [...line(1).slice(0, 4), 25.01, 25], line(2)];
    expect(entryState(opened(measured, first), { type: 'goTo', index: 0 }).dialText).toBe('395');
    const { workbook } = fakeWorkbook({ Record: [[]] }, { sheet: 'Record', address: 'A1' });
    await workbook.remember('entry', memoryText(first));
    const reading = readingOf(measured);
    const loaded = entryState(EMPTY_ENTRY, { type: 'open', rows: reading.rows, remembered: await recallEntry(workbook) });
    expect(entryState(loaded, { type: 'goTo', index: 0 }).dialText).toBe('395');
  });
});

test('a crimp that is in the sheet already gets neither the dial, nor the day, operator and die of a later one', () => {
  const more = ['Date', 'Operator', 'Die', 'Dial'];
  const old = [...line(1).slice(0, 4), 25.19, 25.2, '', '', '', ''];
  const state = opened([[...HEAD, ...more], line(2, '', '', '', ''), old]);
  // The second line asks for another dial; the first one was made at nobody knows what.
  const first = typed(entryState(state, { type: 'operator', text: 'Ann' }), '25.2', '25.2');
  const back = entryState(first, { type: 'goTo', index: 1 });
  expect(back.dialText).toBe('');
  expect(written(typed(back, '25.18', '25.2'))).toEqual(['E3 25.18']);
});

test('what is on its way to the sheet is remembered until it is there', async () => {
  const rows = [HEAD, line(1), line(2)];
  const sent = typed(opened(rows), '25.01', '25');
  const { workbook } = fakeWorkbook({ Record: [[]] }, { sheet: 'Record', address: 'A1' });
  await workbook.remember('entry', memoryText(sent));
  const loaded = entryState(EMPTY_ENTRY, { type: 'open', rows: readingOf(rows).rows, remembered: await recallEntry(workbook) });
  expect(entryState(loaded, { type: 'goTo', index: 0 }).texts).toEqual(['25.01', '25']);
  const there = entryState(sent, { type: 'written', result: sent.pending[0]! });
  expect(memoryText(there) ?? '').not.toContain('25.01');
});

test('a reload in the middle of an entry loses nothing that was typed', async () => {
  const rows = [HEAD, line(1), line(2)];
  const half = entryState(opened(rows), { type: 'type', field: 0, text: '25.0' });
  const { workbook } = fakeWorkbook({ Record: [[]] }, { sheet: 'Record', address: 'A1' });
  await workbook.remember('entry', memoryText(half));
  const loaded = entryState(EMPTY_ENTRY, { type: 'open', rows: readingOf(rows).rows, remembered: await recallEntry(workbook) });
  expect([loaded.index, loaded.texts]).toEqual([0, ['25.0', '']]);
  // Written, it is remembered no longer.
  expect(memoryText({ ...typed(loaded, '25.01', '25'), index: 2 })).not.toContain('25.0"');
});

describe('what is filled in beside the readings', () => {
  const columns = ['Date', 'Time', 'Operator', 'Die', 'Dial'];
  const operator = (state: EntryState) => entryState(state, { type: 'operator', text: 'Ann' });

  test('day, time, operator, die and dial, where the table has such columns', () => {
    const state = typed(operator(opened([[...HEAD, ...columns], line(1, '', '', '', '', '')])), '25.01', '25');
    expect(written(state)).toEqual(['E2 25.01', 'F2 25', 'K2 410', 'J2 D23', 'I2 Ann', 'G2 46095', 'H2 14:30']);
    // A number in a plain cell is no day to look at.
    expect(state.pending[0]!.writing.cells.find(({ address }) => address === 'G2')!.format).toBe('yyyy-mm-dd');
  });

  test('what is there already stays', () => {
    const state = typed(operator(opened([[...HEAD, ...columns], line(1, 46_000, '08:00', 'Bob', 'D24', 402)])), '25.01', '25');
    expect(written(state)).toEqual(['E2 25.01', 'F2 25']);
    expect(state.last!.row.dial!.value.toNumber()).toBe(402);
  });

  test('the columns that a table has not got are offered, and go to its right', () => {
    const [table] = readingOf([HEAD, line(1)]).tables;
    expect(missingColumns(table!)).toEqual(columns);
    const [values] = addEntryColumns(table!) as Extract<Change, { kind: 'values' }>[];
    expect([values!.at.address, values!.values]).toEqual(['G1:K1', [columns]]);
    const [full] = readingOf([
      ['Line', 'Hose', 'Coupling', 'Reading 1 (mm)', 'Reading 2 (mm)', '', '', 'Bay'],
      [1, 'Larch DN 12', 'Larch cone', '', '', '', '', 3],
    ]).tables;
    expect(() => addEntryColumns(full!)).toThrow(/no room at the right of the table: H1 is not blank/);
  });
});

test('a reading that belongs to no crimp like the others is refused, as in the functions', () => {
  const rows = [[...HEAD, 'Reading 3 (mm)', 'Reading 4 (mm)', 'Target (mm)', 'Tolerance (mm)'], line(1, '', '', 24.9, 0.12)];
  const state = opened(rows);
  // 28.4 is kept on purpose (Enter twice), but lies 3.5 from the median: more than 10 tolerances and 2 % of the target.
  const far = ['24.9', '24.9', '28.4'].reduce((now, text, field) => {
    const after = entryState(entryState(now, { type: 'type', field, text }), { type: 'enter' });
    return after.stop?.kind === 'ask' ? entryState(after, { type: 'enter' }) : after;
  }, state);
  const full = entryState(entryState(far, { type: 'type', field: 3, text: '24.9' }), { type: 'enter' });
  expect([full.field, full.stop?.sentence]).toEqual([
    2,
    'Reading 3 is 28.4: it does not belong to this crimp, whose readings lie around 24.9: measure again.',
  ]);
});

test('what a correction replaces is kept, and so is that it was taken back', async () => {
  const rows = [
    [...HEAD, 'Dial'],
    [...line(1).slice(0, 4), 25.1, 25, 410],
  ];
  const { workbook } = fakeWorkbook({ Record: rows }, { sheet: 'Record', address: 'A2' });
  const state = typed(entryState(opened(rows), { type: 'goTo', index: 0 }), '25.01', '25');
  const [result] = state.pending;
  await writeEntry(workbook, result!.before, result!.writing, 'Ann', MOMENT);
  await undoEntry(workbook, result!.before, result!.writing, 'Ann', MOMENT);
  const [, ...kept] = (await workbook.used('Corrections'))!.values;
  expect(kept.map(cells => cells.slice(1))).toEqual([
    ['Record', 'E2', 'Line 1', 25.1, 25.01, 'Ann', ''],
    ['Record', 'E2', 'Line 1', 25.01, 25.1, 'Ann', 'correction taken back'],
  ]);
  expect((await workbook.used('Record'))!.values[1]!.slice(4)).toEqual([25.1, 25, 410]);
});

test('a machine whose scale is another and that has no record: no dial, and one to try on one trial piece', () => {
  // The van's scale runs the other way (−0.02 mm a digit) and is not the catalogue's; its record with the same die is of another pair.
  const headings = ['Machine', 'Die', 'Hose', 'Fitting', 'Dial', 'Step (mm)', 'Catalogue dials'];
  const sheets = registerSheets([]);
  const table = (name: string) => sheets[name]!.map(row => row.map(cell => (cell === '' ? null : (cell as string | number))));
  const [crimpHeadings, pair] = table('Crimps');
  const catalogue = readCatalogue({
    hoses: table('Hoses'),
    fittings: table('Fittings'),
    crimps: [crimpHeadings!, pair!, [pair![0]!, 'Larch elbow', 'D23', 400, 25.2, 0.1]],
    machines: [
      headings,
      ['Van', null, null, null, null, -0.02, 'no'],
      ['Van', 'D23', 'Larch DN 12', 'Larch elbow', 180, null, null],
    ],
  });
  const [row] = readingOf([HEAD, [1, 'Larch DN 12', 'Larch cone', 'Van', '', '']], catalogue).rows;
  expect([row!.hasNoDial, row!.wantedDial]).toEqual([true, undefined]);
  // 0.2 mm smaller than the elbow at −0.02 mm a digit: 10 digits down.
  const trial = trialPiece(catalogue, row!)!;
  expect(trial.dial).toBe('170');
  expect(trial.sentence).toMatch(/^NO DIAL: Van has no recorded dial.*Trial piece: dial 170 .*1 record.*Crimp ONE trial piece/);
});
