import { readFileSync } from 'node:fs';
import { blockOf } from '../../../src/workbook/a1';
import type { HostBlock } from '../../../src/workbook/hostTable';
import type { CellValue, RangeContent } from '../../../src/workbook/workbook';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { isDateFormat } from '../../../src/core/units/sheetDate';
import { tableView } from '../../../src/sheets/columns/columnsView';
import { datesAmongLengths, textFormatChanges } from '../../../src/sheets/columns/dateLengths';
import { missingFormulas } from '../../../src/sheets/columns/missingFormulas';
import { findTables, tableAt } from '../../../src/sheets/table/findTables';
import { SheetCells } from '../../../src/sheets/table/sheetCells';
import { NO_ANSWERS, type TableAnswers } from '../../../src/sheets/table/tableAnswers';
import type { CatalogueState } from '../../../src/sheets/catalogue/catalogueState';
import type { OfferOptions } from '../../../src/sheets/columns/offer';
import { offersFor } from '../../../src/sheets/columns/offers';
import type { FormulaForm } from '../../../src/sheets/columns/formulaForm';
import { planColumns } from '../../../src/sheets/columns/planColumns';
import { NO_SETTINGS, offerOptions } from '../../../src/sheets/columns/offerSettings';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { INCHES, OTHER_WORDS, sheetOf, TWO_TABLES } from './jobSheets';

const NONE: CatalogueState = { present: false };
const at = (address: string) => blockOf(address)!;

const NO_TABLES: readonly HostBlock[] = [];

function viewOf(used: RangeContent, cell: string, catalogue = NONE, hostTables = NO_TABLES, answers: TableAnswers = NO_ANSWERS) {
  const cells = new SheetCells(used);
  const table = tableAt(findTables(cells, hostTables), at(cell))!;
  return tableView(cells, table, catalogue, answers, hostTables);
}

const blockAt = (used: RangeContent, cell: string) => viewOf(used, cell).table.block;

function planned(
  used: RangeContent,
  cell: string,
  ids: readonly string[],
  {
    catalogue = NONE,
    form = undefined as FormulaForm | undefined,
    hostTables = NO_TABLES,
    options = {} as OfferOptions,
    answers = NO_ANSWERS,
  } = {},
) {
  const view = viewOf(used, cell, catalogue, hostTables, answers);
  const offers = offersFor(view, { spill: form === 'column', ...options }).filter(offer => ids.includes(offer.id));
  const plan = planColumns(view, offers, { form });
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
  expect(blockAt(used, 'B7')).toEqual(at('A4:H7'));
  expect(blockAt(used, 'A1')).toEqual(at('A4:H7'));
  expect(planned(used, 'B5', ['cutLength'])).toMatchObject({
    at: 'I5:I7',
    formulas: [['=HOSE.CUTLENGTH(E5,G5,H5)'], ['=HOSE.CUTLENGTH(E6,G6,H6)'], ['=HOSE.CUTLENGTH(E7,G7,H7)']],
  });
});

test('inch fractions as text are taken, with the allowance, and the heading carries the unit', () => {
  const { plan, formulas } = planned(sheetOf(INCHES), 'A2', ['cutLength']);
  expect(formulas[0]).toEqual(['=HOSE.CUTLENGTH(D2,E2,F2,G2)']);
  expect(plan.changes[1]).toMatchObject({ values: [['Cut length (in)']] });
  expect(plan.message).toContain('column H, rows 2 to 3');
});

test('of two tables side by side the selected one is taken, and the new columns jump over the other', () => {
  const used = sheetOf(TWO_TABLES);
  expect(blockAt(used, 'A2')).toEqual(at('A1:B3'));
  expect(blockAt(used, 'F3')).toEqual(at('D1:L3'));
  expect(planned(used, 'F3', ['check', 'deviation', 'nextDial'], { form: 'cell' }).formulas[1]).toEqual([
    '=HOSE.CRIMPCHECK(E3:H3,I3,J3)',
    '=INDEX(HOSE.CRIMPDETAIL(E3:H3,I3,J3),1,2)',
    '=HOSE.NEXTDIAL(K3,E3:H3,I3,J3,L3)',
  ]);
  const columns = { overall: { first: 0, last: 0 }, cutOffA: { first: 1, last: 1 }, cutOffB: { first: 1, last: 1 } };
  const left = { ...viewOf(used, 'A2'), columns };
  const plan = planColumns(left, offersFor(left).slice(0, 1));
  // Column M stays free: beside the other table the new one would be taken for a part of it.
  expect(plan.at).toEqual(at('N1:N3'));
});

test('a table below another one ends it', () => {
  const rows = [['Hose', 'Qty'], ['Alder', 1], [], ['Hose', 'Qty', 'OAL'], ['Larch', 2, 900]];
  expect(blockAt(sheetOf(rows), 'A2')).toEqual(at('A1:B2'));
  expect(blockAt(sheetOf(rows), 'A5')).toEqual(at('A4:C5'));
});

test('a row of data with words of ours in it (a die D27, a dial from the MACHINE) does not end the table', () => {
  const rows = [
    ['Hose', 'Overall', 'Quantity', 'Die', 'Dial', 'Dial from', 'Cost'],
    ['Larch DN 12', 840, 1, 'D23', 412, 'CATALOGUE', 31.5],
    ['Larch DN 16', 1480, 10, 'D27', 281, 'MACHINE', 36.2],
    ['Larch DN 19', 860, 2, 'D31', 441, 'CATALOGUE', 51.2],
  ];
  expect(blockAt(sheetOf(rows), 'A2')).toEqual(at('A1:G4'));
});

test('a single cell anywhere in the height of the table keeps a column from being written', () => {
  const rows = OTHER_WORDS.map((row, r) => (r === 6 ? [...row, 'mind the bend'] : row));
  expect(planned(sheetOf(rows), 'B5', ['cutLength']).at).toBe('K5:K7');
});

test('a formula that shows nothing counts as data', () => {
  const used = sheetOf(OTHER_WORDS.map((row, r) => (r === 4 ? [...row, ''] : row)));
  const formulas = used.formulas.map((row, r) => row.map((_, c) => (r === 4 && c === 8 ? '=""' : '')));
  expect(planned({ ...used, formulas }, 'B5', ['cutLength']).at).toBe('K5:K7');
});

test('another table of the host is never written into, even where it is empty', () => {
  const hostTables = [at('I4:K9')];
  expect(planned(sheetOf(OTHER_WORDS), 'B5', ['cutLength'], { hostTables }).at).toBe('M5:M7');
});

test('cells that are merged, or that a formula beside them fills, are no room for columns', async () => {
  const rows = [
    ['Readings', '', 'Target', 'Tol.', '', ''],
    [34.11, 34.15, 34.1, 0.2, '', ''],
  ];
  const merges = { Jobs: ['F2:G2'] };
  const { workbook } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address: 'A2' }, { merges });
  const roles = { readings: { first: 0, last: 1 }, target: { first: 2, last: 2 }, tolerance: { first: 3, last: 3 } };
  const cells = new SheetCells((await workbook.used('Jobs'))!, await workbook.layout('Jobs'));
  const table = { sheet: 'Jobs', block: at('A1:D2'), headings: ['Readings', '', 'Target', 'Tol.'], hostTable: false, below: [] };
  const view = { cells, table, columns: roles, hostTables: [], catalogue: NONE };
  const offers = offersFor({ columns: roles, catalogue: NONE }).filter(({ id }) => id === 'check' || id === 'deviation');
  const plan = planColumns(view, offers);
  expect(plan.at).toEqual(at('I1:J2'));
  await workbook.write(plan.changes);
  const { values, formulas } = (await workbook.read([{ sheet: 'Jobs', address: 'I2:J2' }]))[0]!;
  expect([values[0]![0], formulas[0]![0]]).toEqual(['', '=CHOOSECOLS(HOSE.CRIMPDETAIL(A2:B2,C2,D2),4,2)']);
  expect(await workbook.spillParent({ sheet: 'Jobs', address: 'J2' })).toEqual({ sheet: 'Jobs', address: 'I2' });
  // Written where something is in its way, Excel would refuse it.
  const blocked = [{ kind: 'formulas', at: { sheet: 'Jobs', address: 'E2' }, formulas: [[formulas[0]![0]!]] }] as const;
  await workbook.write(blocked);
  expect((await workbook.read([{ sheet: 'Jobs', address: 'E2' }]))[0]!.values).toEqual([[{ error: '#SPILL!' }]]);
});

test('on request one formula a column spills over the rows, never over whole columns', () => {
  const { at: where, formulas } = planned(sheetOf(OTHER_WORDS), 'B5', ['cutLength', 'dieA'], {
    catalogue: { present: true, unit: 'mm' },
    form: 'column',
  });
  expect(where).toBe('I5:J5');
  expect(formulas).toEqual([['=HOSE.CUTLENGTH(E5:E7,G5:G7,H5:H7)', '=INDEX(HOSE.CRIMPSETUP(Catalogue,B5:B7,C5:C7),0,1)']]);
});

test('a new column is as wide as the longest word of its heading; where something else stands in it, its width stays', () => {
  const catalogue: CatalogueState = { present: true, unit: 'mm', pressureUnit: 'bar' };
  const widths = (rows: typeof OTHER_WORDS) => {
    const { plan } = planned(sheetOf(rows), 'B5', ['cutLength', 'pressure', 'assembly'], { catalogue });
    return plan.changes.flatMap(change =>
      change.kind === 'style' && change.style.columnWidth !== undefined ? [[change.at.address, change.style.columnWidth]] : [],
    );
  };
  // "pressure" has eight letters; the check of the assembly answers in sentences.
  expect(widths(OTHER_WORDS)).toEqual([
    ['I4', 60],
    ['J4', 64],
    ['K4', 160],
  ]);
  const titled = OTHER_WORDS.map((row, index) => (index === 0 ? [...row, '', '', '', '', '', '', '', '', 'Week 40'] : row));
  expect(widths(titled).map(([address]) => address)).toEqual(['I4', 'K4']);
});

test('means and money are shown with the digits that are read', () => {
  const formats = (catalogue: CatalogueState, cell: string, ids: readonly string[]) => {
    const used = sheetOf(TWO_TABLES);
    const { plan } = planned(used, cell, ids, { catalogue });
    return plan.changes.flatMap(change => (change.kind === 'format' ? [[change.at.address, change.numberFormat]] : []));
  };
  expect(formats(NONE, 'F2', ['check', 'deviation'])).toEqual([
    ['M1:N3', 'General'],
    ['N2:N3', '0.000'],
  ]);
});

test('above 500 rows one formula for all rows is written without asking, at 500 a formula a row', () => {
  const rows = (count: number) => [
    ['Overall', 'Cut-off A', 'Cut-off B'],
    ...Array.from({ length: count }, (_, i) => [1000 + i, 20, 20]),
  ];
  expect(planned(sheetOf(rows(501)), 'A2', ['cutLength']).formulas).toEqual([['=HOSE.CUTLENGTH(A2:A502,B2:B502,C2:C502)']]);
  expect(planned(sheetOf(rows(500)), 'A2', ['cutLength']).formulas).toHaveLength(500);
});

test('in a table of the host every column is a formula a row by INDEX, even when a spill is asked for', () => {
  const { formulas } = planned(sheetOf(INCHES), 'A2', ['dialA', 'dialB', 'pressure'], {
    catalogue: { present: true, unit: 'in' },
    form: 'column',
    hostTables: [at('A1:G3')],
  });
  expect(formulas).toHaveLength(2);
  expect(formulas[0]).toEqual([
    '=INDEX(HOSE.CRIMPSETUP(Catalogue,A2,B2),1,2)',
    '=INDEX(HOSE.CRIMPSETUP(Catalogue,A2,C2),1,2)',
    '=INDEX(HOSE.ASSEMBLY(Catalogue,A2,B2,C2,D2),1,2)',
  ]);
});

test.each([
  ['Target\nmm', 34.1, 'target', 'mm'],
  ['Finished length, in', 50, 'overall', 'in'],
  ['Length [mm]', 1250, 'overall', 'mm'],
  ['Tol.\r\n(inch)', 0.01, 'tolerance', 'in'],
] as const)('heading %j is read as %s in %s', (heading, value, role, unit) => {
  const { columns, units } = viewOf(
    sheetOf([
      ['Hose', 'Qty', heading],
      ['Alder DN 25', 3, value],
    ]),
    'A2',
  );
  expect([columns[role]?.first, role === 'overall' ? units.overall : units.diameter]).toEqual([2, unit]);
});

test('a row of totals of a host table gets no formula, belongs to it when selected, and is never written into', () => {
  const used = sheetOf([
    ['Hose', 'Overall length (mm)', 'Cut-off A', 'Cut-off B'],
    ['Alder DN 25', 1250, 30, 41],
    ['Larch DN 12', 840, 22, 22],
    ['Total', 2090, '', ''],
  ]);
  const own = { ...at('A1:D3'), hasTotals: true };
  expect(planned(used, 'A2', ['cutLength'], { hostTables: [own] }).at).toBe('E2:E3');
  expect(viewOf(used, 'B4', NONE, [own]).table.block).toEqual(at('A1:D3'));
  const beside = { ...at('E5:F5'), row: 0, rows: 1, hasTotals: true };
  expect(planned(used, 'A2', ['cutLength'], { hostTables: [own, beside] }).at).toBe('H2:H3');
});

test('what is missing is said in words, and columns that need no catalogue stay open', () => {
  const used = sheetOf(OTHER_WORDS);
  const reasons = Object.fromEntries(offersFor(viewOf(used, 'B5')).map(offer => [offer.id, offer.reason]));
  expect(reasons.cutLength).toBeUndefined();
  expect(reasons.dieA).toMatch(/holds =HOSE.CATALOGUE/);
  expect(reasons.pressure).toBe(reasons.dieA);
  expect(reasons.check).toBe('Needs a column for: Readings, Target diameter, Tolerance.');
});

test('lengths that became dates are named, and typed length columns are set to text', () => {
  const used = sheetOf(INCHES, { F2: 'd-mmm' });
  const view = viewOf(used, 'A2');
  expect(datesAmongLengths(view)).toEqual(['F2']);
  expect(textFormatChanges(view).map(change => 'at' in change && change.at.address)).toEqual([
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
  expect(Object.keys(viewOf(used, cell).columns)).toEqual(expect.arrayContaining(roles));
  const { plan, formulas } = planned(used, cell, ['cutLength']);
  expect(formulas[0]).toEqual([formula]);
  expect(plan.at.column).toBe(16);
});

test('the bench record of the samples offers check and next dial over its readings', async () => {
  const used = await sampleSheet('Bench record');
  const view = viewOf(used, 'A15');
  const { columns } = view;
  expect(columns.readings && columns.readings.last - columns.readings.first + 1).toBe(4);
  expect(offersFor(view).find(offer => offer.id === 'check')?.reason).toBeUndefined();
});

const MACHINES: CatalogueState['machines'] = {
  sheet: 'Our machines',
  body: { row: 1, column: 0, rows: 30, columns: 11 },
  columns: { machine: 0, step: 5, lowest: 7, highest: 8, largestMove: 9 },
  stepUnit: 'mm',
  machines: [
    { name: 'Gate', row: 1, states: new Set(['step', 'lowest', 'highest', 'largestMove'] as const), isFirst: true },
    { name: 'Van', row: 2, states: new Set(['step', 'lowest', 'highest'] as const), isFirst: true },
  ],
};
const WORKSHOP: CatalogueState = {
  present: true,
  unit: 'mm',
  diameterUnit: 'mm',
  pressureUnit: 'bar',
  machines: MACHINES,
  isMachine: name => name === 'Gate' || name === 'Van',
};

/** Readings, hose and coupling, but neither target nor tolerance nor step. */
const BENCH = [
  ['Hose', 'Coupling', 'Machine', 'Dial set', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
  ['Alder DN 25', 'Alder cone', 'Gate', 412, 34.11, 34.15, 34.12, 34.14],
  ['Alder DN 25', 'Alder cone', 'Van', 318, 34.31, 34.35, 34.32, 34.34],
];

test('target and tolerance come from the catalogue where the table has none', () => {
  const first = (ids: string[]) => planned(sheetOf(BENCH), 'A2', ids, { catalogue: WORKSHOP }).formulas[0];
  const setUp = 'HOSE.CRIMPSETUP(Catalogue,A2,B2,C2)';
  expect(first(['check'])).toEqual([`=HOSE.CRIMPCHECK(E2:H2,INDEX(${setUp},1,3),INDEX(${setUp},1,4))`]);
  // What is written beside it is not looked up again.
  expect(first(['check', 'toleranceA'])).toEqual([`=INDEX(${setUp},1,4)`, `=HOSE.CRIMPCHECK(E2:H2,INDEX(${setUp},1,3),I2)`]);
});

test("next dial takes change per digit and limits from the chosen machine's row; what the row does not state is left out", () => {
  const call = (machine: string) =>
    planned(sheetOf(BENCH), 'A2', ['nextDial'], { catalogue: WORKSHOP, options: { machine } }).formulas[0]![0]!;
  expect(call('Gate')).toMatch(
    /,1,4\),'Our machines'!\$F\$2,'Our machines'!\$H\$2,'Our machines'!\$I\$2,'Our machines'!\$J\$2\)$/,
  );
  expect(call('Gate')).toContain('HOSE.CRIMPSETUP(Catalogue,A2,B2,"Gate")');
  expect(call('Van')).toMatch(/,'Our machines'!\$F\$3,'Our machines'!\$H\$3,'Our machines'!\$I\$3\)$/);
});

test('by the column of the machine the limits are looked up by its name, where every machine states them', () => {
  const used = sheetOf(BENCH);
  const offer = (catalogue: CatalogueState, spill = false) =>
    offersFor(viewOf(used, 'A2', catalogue), { spill }).find(({ id }) => id === 'nextDial')!;
  expect(offer(WORKSHOP).reason).toMatch(/^Not every machine states its largest move/);
  const all = {
    ...MACHINES!,
    machines: MACHINES!.machines.map(machine => ({ ...machine, states: MACHINES!.machines[1]!.states })),
  };
  const { formulas } = planned(used, 'A2', ['nextDial'], { catalogue: { ...WORKSHOP, machines: all } });
  const found = "MATCH(C2,'Our machines'!$A$2:$A$31,0)";
  expect(formulas[0]![0]).toContain(`INDEX('Our machines'!$F$2:$F$31,${found}),INDEX('Our machines'!$H$2:$H$31,${found})`);
  expect(offer({ ...WORKSHOP, machines: all }, true).reason).toMatch(/takes the limits of one machine/);
  const below = { ...all, machines: all.machines.map(machine => ({ ...machine, isFirst: machine.name === 'Van' })) };
  expect(offer({ ...WORKSHOP, machines: below }).reason).toMatch(/another row comes before the one that describes Gate/);
});

test('readings in another unit than the catalogue are refused', () => {
  const used = sheetOf([[...BENCH[0]!.slice(0, 4), 'R1 (in)', 'R2 (in)', 'R3 (in)', 'R4 (in)'], ...BENCH.slice(1)]);
  const reason = offersFor(viewOf(used, 'A2', WORKSHOP)).find(({ id }) => id === 'check')!.reason;
  expect(reason).toBe('The readings and targets are in inches, the catalogue is in mm: they must be the same.');
});

test('the price takes the margin that is asked for, or the column of the table', () => {
  const rows = (more: string[]) => [
    ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Qty', ...more],
    ['Alder DN 25', 'x', 'y', 1200, 2, ...more.map(() => 0.3)],
  ];
  const price = (more: string[], options: OfferOptions) =>
    planned(sheetOf(rows(more)), 'A2', ['price'], { catalogue: WORKSHOP, options }).formulas[0]![0];
  const cost = 'HOSE.UNITCOST(Catalogue,A2,B2,C2,D2,E2)';
  expect(price([], { margin: '0.4' })).toBe(`=HOSE.SELLPRICE(INDEX(${cost},1,4),0.4)`);
  expect(price([], { margin: '0.4', minimum: '15' })).toBe(`=HOSE.SELLPRICE(INDEX(${cost},1,4),0.4,,15)`);
  expect(price(['Margin'], { roundTo: '0.5' })).toBe(`=HOSE.SELLPRICE(INDEX(${cost},1,4),F2,0.5)`);
  expect(() => price([], {})).toThrow('Choose at least one column');
});

test('columns that name parts of the catalogue are told by what stands in them', () => {
  const rows = [
    ['Order', 'Remark', 'What', 'Left', 'Right', 'OAL'],
    ['17', 'Elm', 'Alder DN 25', 'Alder cone', 'Alder flange', 1200],
  ];
  const isHose = (name: string) => name === 'Alder DN 25';
  const isFitting = (name: string) => /cone|flange/.test(name);
  const used = sheetOf(rows);
  const { columns } = viewOf(used, 'A2', { present: true, isHose, isFitting });
  expect(columns).toMatchObject({ hose: { first: 2 }, fittingA: { first: 3 }, fittingB: { first: 4 }, overall: { first: 5 } });
});

test.each([
  ['0.4', '0.4'],
  ['40 %', '0.4'],
  ['0,35', '0.35'],
  ['40', undefined],
  ['1', undefined],
  ['0.4"', undefined],
  ['-0.1', undefined],
  ['x', undefined],
])('a margin typed as %s is %s in the formula', (typed, expected) =>
  expect(offerOptions({ ...NO_SETTINGS, margin: typed }, false).margin).toBe(expected),
);

describe('what the hose is for is no crimper', () => {
  const rows = [
    ['Hose', 'Coupling', 'Coupling B', 'Overall length mm', 'Qty', 'Machine'],
    ['Alder DN 25', 'x', 'y', 1200, 2, 'Beet harvester 3'],
    ['Alder DN 25', 'x', 'y', 1400, 2, 'Gate'],
    ['Alder DN 25', 'x', 'y', 1500, 2, 'Topper'],
  ];
  const dial = (machine: string) =>
    planned(sheetOf(rows.map((row, r) => (r === 0 ? row : [...row.slice(0, 5), machine]))), 'A2', ['dialA'], {
      catalogue: WORKSHOP,
    }).formulas[0]![0];

  test('a column Machine that names no crimpers goes into no formula', () =>
    expect(dial('Beet harvester 3')).toBe('=INDEX(HOSE.CRIMPSETUP(Catalogue,A2,B2),1,2)'));
  test('one that names machines of the catalogue does', () =>
    expect(dial('Gate')).toBe('=INDEX(HOSE.CRIMPSETUP(Catalogue,A2,B2,F2),1,2)'));
});

test('a heading without a unit is asked about; what goes to the catalogue waits for the answer', () => {
  const used = sheetOf([
    ['Hose', 'Fitting A', 'Fitting B', 'Overall length', 'Cut-off A', 'Cut-off B'],
    ['Alder DN 25', 'x', 'y', 48, 1, 1],
  ]);
  const view = viewOf(used, 'A2', WORKSHOP);
  expect(view.questions.map(({ asked, heading }) => [asked, heading])).toContainEqual(['unit', 'Overall length']);
  const reason = (of: typeof view, id: string) => offersFor(of).find(offer => offer.id === id)!.reason;
  expect(reason(view, 'pressure')).toBe('Say first which unit the overall lengths are in.');
  expect(reason(view, 'cutLength')).toBeUndefined();
  const said = { ...NO_ANSWERS, unit: new Map(['overall length', 'cut-off a', 'cut-off b'].map(heading => [heading, 'mm'])) };
  const answered = viewOf(used, 'A2', WORKSHOP, NO_TABLES, said);
  expect([answered.questions, reason(answered, 'pressure')]).toEqual([[], undefined]);
});

test('what somebody said of a heading holds', () => {
  const role = new Map([
    ['deduction 2', 'cutOffA'],
    ['deduction 1', 'cutOffB'],
  ]);
  const { formulas } = planned(sheetOf(OTHER_WORDS), 'B5', ['cutLength'], { answers: { ...NO_ANSWERS, role } });
  expect(formulas[0]).toEqual(['=HOSE.CUTLENGTH(E5,H5,G5)']);
});

test('a total below the lines and a remark get no formula', () => {
  const used = sheetOf([
    ['Hose', 'Overall length (mm)', 'Cut-off A (mm)', 'Cut-off B (mm)'],
    ['Alder DN 25', 1250, 30, 41],
    ['Sum of the week', 1250, '', ''],
    ['Larch DN 12', 840, 22, 22],
    ['Total', 2090, '', ''],
  ]);
  expect(planned(used, 'A2', ['cutLength']).formulas).toEqual([
    ['=HOSE.CUTLENGTH(B2,C2,D2)'],
    [''],
    ['=HOSE.CUTLENGTH(B4,C4,D4)'],
  ]);
});

describe('rows that were appended', () => {
  const HEAD = ['Hose', 'Overall length (mm)', 'Cut-off A (mm)', 'Cut-off B (mm)', 'Cut length (mm)'];
  const lines = (count: number) => Array.from({ length: count }, (_, i) => ['Larch DN 12', 800 + i, 22, 22]);
  const withFormulas = (rows: CellValue[][], formulas: Record<string, string>) => {
    const used = sheetOf(rows);
    const filled = used.formulas.map((row, r) => row.map((_, c) => formulas[`${String.fromCharCode(65 + c)}${r + 1}`] ?? ''));
    return viewOf({ ...used, formulas: filled }, 'A2');
  };

  test('lack the formulas of our columns: they go on, and no second set of columns is offered', () => {
    const rows = [HEAD, ...lines(2).map(line => [...line, 756]), ...lines(3), ['Larch DN 12', 900, 22, 22, 850]];
    const view = withFormulas(rows, { E2: '=HOSE.CUTLENGTH(B2,C2,D2)', E3: '=HOSE.CUTLENGTH(B3,C3,D3)' });
    const { rows: lacking, headings, changes } = missingFormulas(view);
    expect([lacking, headings]).toEqual([[4, 5, 6], ['Cut length (mm)']]);
    // What somebody typed into row 7 stays.
    expect(changes.flatMap(change => (change.kind === 'formulas' ? change.formulas.flat() : []))).toEqual([
      '=HOSE.CUTLENGTH(B4,C4,D4)',
      '=HOSE.CUTLENGTH(B5,C5,D5)',
      '=HOSE.CUTLENGTH(B6,C6,D6)',
    ]);
    expect(offersFor(view)[0]!.reason).toBe('The table has it: column E.');
  });

  test('a column that a formula further left fills is there already, whatever its unit in brackets; one that was typed is not', () => {
    const head = ['Hose', 'Fitting A', 'Fitting B', 'Die A', 'Dial A (digits)', 'Checked', 'Crimp diameter A'];
    const rows = [
      head,
      ['Larch DN 12', 'Larch JIC', '', 'D22', 455, '', 21.9],
      ['Larch DN 10', 'Larch JIC', '', 'D19', 380, '', 18.4],
    ];
    const view = withFormulas(rows, { D2: '=CHOOSECOLS(HOSE.CRIMPSETUP(Catalogue,A2:A3,B2:B3),1,2)' });
    const reasons = (id: string) => offersFor(view).find(offer => offer.id === id)?.reason;
    expect([reasons('dieA'), reasons('dialA')]).toEqual(['The table has it: column D.', 'The table has it: column E.']);
    expect(reasons('diameterA')).not.toMatch(/has it/);
  });

  test('one formula a column is made to reach the last line', () => {
    const rows = [HEAD, ...lines(2).map(line => [...line, 756]), ...lines(2)];
    const { rows: lacking, changes } = missingFormulas(withFormulas(rows, { E2: '=HOSE.CUTLENGTH(B2:B3,C2:C3,D2:D3)' }));
    expect(lacking).toEqual([4, 5]);
    expect(changes).toEqual([
      { kind: 'formulas', at: { sheet: 'Jobs', address: 'E2' }, formulas: [['=HOSE.CUTLENGTH(B2:B5,C2:C5,D2:D5)']] },
    ]);
  });

  test('a hose alone lacks no formula that takes couplings, nor a price that goes by such a one', () => {
    const head = ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Bore (mm)', 'Cost', 'Price'];
    const rows = [
      head,
      ['Larch DN 12', 'x', 'y', 800, 12.7, 30, 50],
      ['Larch DN 10', '', '', 2500, '', '', ''],
      ['Larch DN 12', 'x', 'y', 900, '', '', ''],
    ];
    const view = withFormulas(rows, {
      E2: '=HOSE.HOSEDATA(Catalogue,A2,"bore")',
      F2: '=HOSE.UNITCOST(Catalogue,A2,B2,C2,D2,1)',
      G2: '=HOSE.SELLPRICE(F2,0.4)',
    });
    const formulas = missingFormulas(view).changes.flatMap(change => (change.kind === 'formulas' ? change.formulas.flat() : []));
    expect(formulas.filter(formula => formula.includes('3'))).toEqual(['=HOSE.HOSEDATA(Catalogue,A3,"bore")']);
    expect(formulas).toContain('=HOSE.SELLPRICE(F4,0.4)');
  });

  test('a total, a blank row and formulas of somebody’s own are left alone', () => {
    const rows = [HEAD, ...lines(1).map(line => [...line, 756]), [], ['Total', 800, '', '']];
    expect(missingFormulas(withFormulas(rows, { E2: '=HOSE.CUTLENGTH(B2,C2,D2)' })).rows).toEqual([]);
    expect(missingFormulas(withFormulas([HEAD, ...lines(2)], { E2: '=B2-C2-D2' })).rows).toEqual([]);
  });
});

// 1 in = 25.4 mm exactly. Source: NIST SP 811, appendix B.
describe('a table in another unit than the catalogue', () => {
  const rows = (unit: string, overall: CellValue) =>
    sheetOf([
      ['Hose', 'Fitting A', 'Fitting B', `Overall length (${unit})`, 'Qty'],
      ['Alder DN 25', 'x', 'y', overall, 2],
    ]);

  test.each([
    ['in', 50, '*25.4'],
    ['m', 1.25, '*1000'],
    ['mm', 1250, ''],
  ])('lengths in %s go to it converted, and the answer is in its unit', (unit, overall, turn) => {
    const { plan, formulas } = planned(rows(unit, overall), 'A2', ['cutLength', 'cost'], { catalogue: WORKSHOP });
    expect(formulas[0]).toEqual([
      `=INDEX(HOSE.ASSEMBLY(Catalogue,A2,B2,C2,D2${turn}),1,1)`,
      `=INDEX(HOSE.UNITCOST(Catalogue,A2,B2,C2,D2${turn},E2),1,4)`,
    ]);
    expect(plan.message).toContain('Cut length (mm)');
  });

  test('what is typed as text cannot be converted by a formula, and is said', () => {
    const view = viewOf(rows('in', '27 1/2'), 'A2', WORKSHOP);
    expect(offersFor(view).find(({ id }) => id === 'pressure')!.reason).toBe(
      'The overall lengths are in inches and typed as text, the catalogue is in mm: type them as numbers, or in mm.',
    );
  });

  test('numbers below a row of units are no text', () => {
    const used = sheetOf([
      ['Hose', 'Fitting A', 'Fitting B', 'Overall length', 'Qty'],
      ['', '', '', 'in', ''],
      ['Alder DN 25', 'x', 'y', 50, 2],
    ]);
    expect(offersFor(viewOf(used, 'A3', WORKSHOP)).find(({ id }) => id === 'pressure')!.reason ?? '').not.toMatch(
      /typed as text/,
    );
  });

  test('the look-up names the catalogue’s cell where that is not called Catalogue', () => {
    const catalogue = { ...WORKSHOP, reference: "'What-if'!$B$1" };
    const { formulas } = planned(rows('mm', 1250), 'A2', ['pressure'], { catalogue });
    expect(formulas[0]).toEqual(["=INDEX(HOSE.ASSEMBLY('What-if'!$B$1,A2,B2,C2,D2),1,2)"]);
  });
});

/** Job lines with a temperature in another unit than the catalogue's, a fluid and a guard. */
const HOT_LINES = [
  ['Hose', 'Fitting A', 'Fitting B', 'Overall (mm)', 'Qty', 'Temperature (°F)', 'Fluid', 'Guard'],
  ['Alder DN 25', 'cone', 'flare', 1250, 2, 176, 'HLP 46', 'woven sleeve 42'],
  ['Alder DN 25', 'cone', 'cone', 840, 1, '', '', ''],
];
const HOT_CATALOGUE: CatalogueState = { present: true, unit: 'mm', pressureUnit: 'bar', temperatureUnit: '°C' };

test('rating and check are those at the row’s temperature, in the catalogue’s unit, and with its fluid', () => {
  const { formulas, plan } = planned(sheetOf(HOT_LINES), 'A2', ['pressure', 'assembly', 'mass'], { catalogue: HOT_CATALOGUE });
  // 176 °F = 80 °C: by definition (t − 32) ÷ 1.8.
  const call = 'HOSE.ASSEMBLY(Catalogue,A2,B2,C2,D2,IF(LEN(F2)=0,"",(F2-32)/1.8),G2)';
  expect(formulas[0]).toEqual([`=CHOOSECOLS(${call},2,3,4)`]);
  const cells = planned(sheetOf(HOT_LINES), 'A2', ['pressure', 'mass'], { catalogue: HOT_CATALOGUE, form: 'cell' }).formulas;
  expect(cells[0]).toEqual([`=INDEX(${call},1,2)`, '=INDEX(HOSE.ASSEMBLY(Catalogue,A2,B2,C2,D2),1,3)']);
  expect(plan.changes[1]).toMatchObject({ values: [['Working pressure (bar)', 'Mass', 'Assembly check']] });
  const offer = offersFor(viewOf(sheetOf(HOT_LINES), 'A2', HOT_CATALOGUE)).find(({ id }) => id === 'pressure')!;
  expect(offer.takes).toBe('Catalogue, Hose, Fitting A, Fitting B, Overall length, Temperature, Fluid');
});

test('a temperature in the catalogue’s unit goes as it is; one without a unit is asked about first', () => {
  const [first, ...lines] = HOT_LINES;
  const rest = first!.slice(6);
  const headed = (heading: string) => sheetOf([[...HOT_LINES[0]!.slice(0, 5), heading, ...rest], ...lines]);
  const { formulas } = planned(headed('Temp. (°C)'), 'A2', ['assembly'], { catalogue: HOT_CATALOGUE });
  expect(formulas[0]).toEqual(['=INDEX(HOSE.ASSEMBLY(Catalogue,A2,B2,C2,D2,F2,G2),1,4)']);
  const open = viewOf(headed('Temperature'), 'A2', HOT_CATALOGUE);
  expect(open.questions).toMatchObject([{ asked: 'unit', heading: 'Temperature', proposal: '°C' }]);
  const reasons = Object.fromEntries(offersFor(open, { margin: '0.4' }).map(({ id, reason }) => [id, reason]));
  expect(reasons.pressure).toBe('Say first which unit the temperatures are in.');
  expect(reasons.assembly).toBe(reasons.pressure);
  expect([reasons.cutLength, reasons.price, reasons.mass]).toEqual([undefined, undefined, undefined]);
});

test('costs and prices take the row’s guard, as UNITCOST does', () => {
  const { formulas } = planned(sheetOf(HOT_LINES), 'A2', ['cost', 'price'], {
    catalogue: HOT_CATALOGUE,
    options: { margin: '0.4' },
  });
  const cost = 'INDEX(HOSE.UNITCOST(Catalogue,A2,B2,C2,D2,E2,H2),1,4)';
  expect(formulas[0]).toEqual([`=${cost}`, '=HOSE.SELLPRICE(I2,0.4)']);
});
