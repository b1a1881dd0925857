import { readFileSync } from 'node:fs';
import { blockOf, type Block } from '../../../src/host/a1';
import type { CellValue, RangeContent } from '../../../src/host/workbook';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { datesAmongLengths, isDateFormat, textFormatChanges } from '../../../src/taskpane/columns/dateTrouble';
import { findTable } from '../../../src/taskpane/columns/findTable';
import { offersFor, type CatalogueState } from '../../../src/taskpane/columns/offers';
import { planColumns } from '../../../src/taskpane/columns/planColumns';
import { proposeColumns } from '../../../src/taskpane/columns/proposeColumns';
import { INCHES, OTHER_WORDS, sheetOf, TWO_TABLES } from './jobSheets';

const NONE: CatalogueState = { present: false };
const at = (address: string) => blockOf(address)!;

function planned(
  used: RangeContent,
  cell: string,
  ids: readonly string[],
  { catalogue = NONE, spill = false, hostTables = [] as Block[] } = {},
) {
  const table = findTable(used, at(cell), hostTables)!;
  const columns = proposeColumns(used, table);
  const offers = offersFor(columns, catalogue).filter(offer => ids.includes(offer.id));
  const plan = planColumns(used, table, columns, offers, { spill, hostTables });
  const formulas = plan.changes.find(change => change.kind === 'formulas')!;
  return { plan, at: formulas.at.address, formulas: formulas.formulas };
}

async function sampleSheet(sheet: string): Promise<RangeContent> {
  const { cells } = await readXlsx(new Uint8Array(readFileSync('samples/job-sheet.xlsx')), 'job-sheet.xlsx');
  const own = cells.filter(cell => cell.sheet === sheet);
  const rows: CellValue[][] = [];
  for (const cell of own) {
    const { row, column } = at(cell.address);
    (rows[row] ??= [])[column] = cell.cached;
  }
  return sheetOf(Array.from(rows, row => Array.from(row ?? [], value => value ?? '')));
}

test('a table in other words under a title block is found with its blank row and without the note below', () => {
  const used = sheetOf(OTHER_WORDS);
  expect(findTable(used, at('B7'))?.block).toEqual(at('A4:H7'));
  expect(findTable(used, at('A1'))?.block).toEqual(at('A4:H7'));
  expect(planned(used, 'B5', ['cutLength'])).toMatchObject({
    at: 'I5:I7',
    formulas: [['=HOSE.CUTLENGTH(E5,G5,H5)'], ['=HOSE.CUTLENGTH(E6,G6,H6)'], ['=HOSE.CUTLENGTH(E7,G7,H7)']],
  });
});

test('inch fractions as text are taken, with the allowance, and the heading carries the unit', () => {
  const { plan, formulas } = planned(sheetOf(INCHES), 'A2', ['cutLength']);
  expect(formulas[0]).toEqual(['=HOSE.CUTLENGTH(D2,E2,F2,G2)']);
  expect(plan.changes[1]).toMatchObject({ values: [['Cut length (in)']] });
  expect(plan.told).toContain('column H, rows 2 to 3');
});

test('of two tables side by side the selected one is taken, and the new columns jump over the other', () => {
  const used = sheetOf(TWO_TABLES);
  expect(findTable(used, at('A2'))?.block).toEqual(at('A1:B3'));
  expect(findTable(used, at('F3'))?.block).toEqual(at('D1:L3'));
  expect(planned(used, 'F3', ['check', 'deviation', 'nextDial']).formulas[1]).toEqual([
    '=HOSE.CRIMPCHECK(E3:H3,I3,J3)',
    '=INDEX(HOSE.CRIMPDETAIL(E3:H3,I3,J3),1,2)',
    '=HOSE.NEXTDIAL(K3,E3:H3,I3,J3,L3)',
  ]);
  const left = findTable(used, at('A2'))!;
  const columns = { overall: { first: 0, last: 0 }, cutOffA: { first: 1, last: 1 }, cutOffB: { first: 1, last: 1 } };
  const plan = planColumns(used, left, columns, offersFor(columns, NONE).slice(0, 1));
  expect(plan.at).toEqual(at('M1:M3'));
});

test('a table below another one ends it', () => {
  const rows = [['Hose', 'Qty'], ['Alder', 1], [], ['Hose', 'Qty', 'OAL'], ['Larch', 2, 900]];
  expect(findTable(sheetOf(rows), at('A2'))?.block).toEqual(at('A1:B2'));
  expect(findTable(sheetOf(rows), at('A5'))?.block).toEqual(at('A4:C5'));
});

test('a row of data with words of ours in it (a die D27, a dial from the MACHINE) does not end the table', () => {
  const rows = [
    ['Hose', 'Overall', 'Quantity', 'Die', 'Dial', 'Dial from', 'Cost'],
    ['Larch DN 12', 840, 1, 'D23', 412, 'CATALOGUE', 31.5],
    ['Larch DN 16', 1480, 10, 'D27', 281, 'MACHINE', 36.2],
    ['Larch DN 19', 860, 2, 'D31', 441, 'CATALOGUE', 51.2],
  ];
  expect(findTable(sheetOf(rows), at('A2'))?.block).toEqual(at('A1:G4'));
});

test('a single cell anywhere in the height of the table keeps a column from being written', () => {
  const rows = OTHER_WORDS.map((row, r) => (r === 6 ? [...row, 'mind the bend'] : row));
  expect(planned(sheetOf(rows), 'B5', ['cutLength']).at).toBe('J5:J7');
});

test('a formula that shows nothing counts as data', () => {
  const used = sheetOf(OTHER_WORDS.map((row, r) => (r === 4 ? [...row, ''] : row)));
  const formulas = used.formulas.map((row, r) => row.map((_, c) => (r === 4 && c === 8 ? '=""' : '')));
  expect(planned({ ...used, formulas }, 'B5', ['cutLength']).at).toBe('J5:J7');
});

test('another table of the host is never written into, even where it is empty', () => {
  const hostTables = [at('I4:K9')];
  expect(planned(sheetOf(OTHER_WORDS), 'B5', ['cutLength'], { hostTables }).at).toBe('L5:L7');
});

test('on request one formula a column spills over the rows, never over whole columns', () => {
  const { at: where, formulas } = planned(sheetOf(OTHER_WORDS), 'B5', ['cutLength', 'dieA'], {
    catalogue: { present: true, unit: 'mm' },
    spill: true,
  });
  expect(where).toBe('I5:J5');
  expect(formulas).toEqual([['=HOSE.CUTLENGTH(E5:E7,G5:G7,H5:H7)', '=INDEX(HOSE.CRIMPSETUP(Catalogue,B5:B7,C5:C7),0,1)']]);
});

test('above 2,000 rows one formula a column is written without asking, at 2,000 a formula a row', () => {
  const rows = (count: number) => [
    ['Overall', 'Cut-off A', 'Cut-off B'],
    ...Array.from({ length: count }, (_, i) => [1000 + i, 20, 20]),
  ];
  expect(planned(sheetOf(rows(2001)), 'A2', ['cutLength']).formulas).toEqual([['=HOSE.CUTLENGTH(A2:A2002,B2:B2002,C2:C2002)']]);
  expect(planned(sheetOf(rows(2000)), 'A2', ['cutLength']).formulas).toHaveLength(2000);
});

test('in a table of the host every column is a formula a row by INDEX, even when a spill is asked for', () => {
  const { formulas } = planned(sheetOf(INCHES), 'A2', ['dialA', 'dialB', 'pressure'], {
    catalogue: { present: true, unit: 'in' },
    spill: true,
    hostTables: [at('A1:G3')],
  });
  expect(formulas).toHaveLength(2);
  expect(formulas[0]).toEqual([
    '=INDEX(HOSE.CRIMPSETUP(Catalogue,A2,B2),1,2)',
    '=INDEX(HOSE.CRIMPSETUP(Catalogue,A2,C2),1,2)',
    '=INDEX(HOSE.ASSEMBLY(Catalogue,A2,B2,C2,D2),1,2)',
  ]);
});

test('what is missing is said in words, and columns that need no catalogue stay open', () => {
  const used = sheetOf(OTHER_WORDS);
  const columns = proposeColumns(used, findTable(used, at('B5'))!);
  const reasons = Object.fromEntries(offersFor(columns, NONE).map(offer => [offer.id, offer.reason]));
  expect(reasons.cutLength).toBeUndefined();
  expect(reasons.dieA).toMatch(/named Catalogue/);
  expect(reasons.check).toBe('Needs a column for: Readings, Target diameter, Tolerance.');
  const inches = offersFor(columns, { present: true, unit: 'in' }, 'mm').find(offer => offer.id === 'pressure');
  expect(inches?.reason).toMatch(/lengths are in mm, the catalogue is in in/);
});

test('lengths that became dates are named, and typed length columns are set to text', () => {
  const used = sheetOf(INCHES, { F2: 'd-mmm' });
  const table = findTable(used, at('A2'))!;
  const columns = proposeColumns(used, table);
  expect(datesAmongLengths(used, table, columns)).toEqual(['F2']);
  expect(textFormatChanges(used, table, columns).map(change => 'at' in change && change.at.address)).toEqual([
    'D2:D3',
    'E2:E3',
    'F2:F3',
    'G2:G3',
  ]);
});

test.each([
  ['General', false],
  ['0.00', false],
  ['@', false],
  ['0" days"', false],
  ['[Red]0.0', false],
  ['dd/mm/yyyy', true],
  ['d-mmm', true],
])('the number format %s shows a date: %s', (format, expected) => expect(isDateFormat(format)).toBe(expected));

test.each([
  [
    'Jobs (mm)',
    'A7',
    ['hose', 'fittingA', 'fittingB', 'overall', 'cutOffA', 'cutOffB', 'allowance', 'quantity'],
    '=HOSE.CUTLENGTH(H6,I6,J6,K6)',
  ],
  [
    'Jobs (in)',
    'C6',
    ['hose', 'fittingA', 'fittingB', 'overall', 'cutOffA', 'cutOffB', 'allowance', 'quantity'],
    '=HOSE.CUTLENGTH(H6,I6,J6,K6)',
  ],
])('the sample sheet %s is read', async (sheet, cell, roles, formula) => {
  const used = await sampleSheet(sheet);
  const columns = proposeColumns(used, findTable(used, at(cell))!);
  expect(Object.keys(columns)).toEqual(expect.arrayContaining(roles));
  const { plan, formulas } = planned(used, cell, ['cutLength']);
  expect(formulas[0]).toEqual([formula]);
  expect(plan.at.column).toBe(16);
});

test('the bench record of the samples offers check and next dial over its readings', async () => {
  const used = await sampleSheet('Bench record');
  const table = findTable(used, at('A15'))!;
  const columns = proposeColumns(used, table);
  expect(columns.readings && columns.readings.last - columns.readings.first + 1).toBe(4);
  expect(offersFor(columns, NONE).find(offer => offer.id === 'check')?.reason).toBeUndefined();
});
