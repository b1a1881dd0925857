import type { RawTable } from '../../../src/core/catalogue/rawTable';
import { machinesTable } from '../../../src/core/catalogue/tables/machinesTable';
import { hosesTable } from '../../../src/core/catalogue/tables/hosesTable';
import { readPartsFile } from '../../../src/host/catalogueFile/readPartsFile';
import { chosenTables } from '../../../src/sheets/parts/loadedCatalogue';
import { loadedTable } from '../../../src/sheets/parts/loadedTable';
import { mapHeadings } from '../../../src/sheets/parts/mapHeadings';
import { headingFixes, headingText, missingFields, unitsOf, withProposals } from '../../../src/sheets/parts/headingFixes';
import { entriesOf, headingMaps, withHeading } from '../../../src/taskpane/parts/rememberedHeadings';

const none = new Map<string, string>();
const fix = (headings: readonly string[], map: ReadonlyMap<string, string> = none, rows: RawTable = []) =>
  headingFixes(hosesTable, [headings, ...rows], map).map(({ heading, trouble, field, unit }) => [heading, trouble, field, unit]);

test.each<[string, string[], string[][]]>([
  ['known headings need nothing', ['Hose', 'bore (mm)', 'Working-pressure (BAR)', 'Vacuum', 'Shortens (%)'], []],
  [
    'an unknown one is not read',
    ['Schlauch', 'Innen (mm)'],
    [
      ['Schlauch', 'unknown', '', ''],
      ['Innen (mm)', 'unknown', '', ''],
    ],
  ],
  [
    'a unit that is missing or not known',
    ['Bore', 'Bend radius (ell)'],
    [
      ['Bore', 'unit', 'bore', ''],
      ['Bend radius (ell)', 'unit', 'bendRadius', ''],
    ],
  ],
  ['a vacuum needs no unit, but not any', ['Vacuum (torr)'], [['Vacuum (torr)', 'unit', 'vacuum', '']]],
  ['the second of two is told', ['Hose', 'hose '], [['hose', 'twice', 'hose', '']]],
])('%s', (_, headings, expected) => expect(fix(headings)).toEqual(expected));

test('a vacuum needs a unit where numbers stand below it, and can be given one', () => {
  const headings = ['Hose', 'Vacuum'];
  const numbers: RawTable = [
    ['Alder', null],
    ['Birch', '0,6'],
    ['Cedar', 0.6],
  ];
  expect(fix(headings, none, [['Alder', 'yes']])).toEqual([]);
  expect(fix(headings, none, numbers)).toEqual([['Vacuum', 'unit', 'vacuum', '']]);
  expect(fix(headings, new Map([['Vacuum', headingText(hosesTable, 'Vacuum', 'vacuum', 'bar')]]), numbers)).toEqual([
    ['Vacuum', 'unit', 'vacuum', 'bar'],
  ]);
});

test('a mapped heading keeps its own unit, takes another, or is not read at all', () => {
  const map = new Map([
    ['Innen (mm)', headingText(hosesTable, 'Innen (mm)', 'bore', '')],
    ['Druck', headingText(hosesTable, 'Druck', 'workingPressure', 'MPa')],
    ['Hose', headingText(hosesTable, 'Hose', '', '')],
  ]);
  const headings = ['Innen (mm)', 'Druck', 'Hose', 'Schlauch'];
  expect(mapHeadings([headings], map)[0]).toEqual(['Bore (mm)', 'Working pressure (MPa)', 'not used: Hose', 'Schlauch']);
  expect(fix(headings, map)).toEqual([
    ['Innen (mm)', 'unknown', 'bore', 'mm'],
    ['Druck', 'unknown', 'workingPressure', 'MPa'],
    ['Hose', 'none', '', ''],
    ['Schlauch', 'unknown', '', ''],
  ]);
  expect(missingFields(hosesTable, headings, map)).toEqual(['Hose', 'Family']);
});

test('headings of the trade are proposed with their unit; what somebody mapped wins, and a proposal can be refused', () => {
  const headings = ['Part no.', 'Range', 'ID (mm)', 'WP (psi)', 'Min bend', 'Shelf'];
  expect(
    headingFixes(hosesTable, [headings], none).map(({ heading, field, unit, isProposed }) => [heading, field, unit, isProposed]),
  ).toEqual([
    ['Part no.', 'hose', '', true],
    ['Range', 'family', '', true],
    ['ID (mm)', 'bore', 'mm', true],
    ['WP (psi)', 'workingPressure', 'psi', true],
    ['Min bend', 'bendRadius', '', true],
    ['Shelf', '', '', false],
  ]);
  expect(missingFields(hosesTable, headings, none)).toEqual([]);
  const map = new Map([
    ['Part no.', headingText(hosesTable, 'Part no.', '', '')],
    ['Shelf', headingText(hosesTable, 'Shelf', 'hose', '')],
    ['ID (mm)', headingText(hosesTable, 'ID (mm)', 'outsideDiameter', 'mm')],
  ]);
  expect(mapHeadings([headings], withProposals(hosesTable, headings, map))[0]).toEqual([
    'not used: Part no.',
    'Family',
    'Outside diameter (mm)',
    'Working pressure (psi)',
    'Bend radius',
    'Hose',
  ]);
});

test('units are offered where a field has some', () => {
  expect(unitsOf(hosesTable.fields.bore)).toContain('in');
  expect(unitsOf(hosesTable.fields.vacuum)).toContain('bar');
  expect(unitsOf(hosesTable.fields.note)).toEqual([]);
});

describe('what is remembered', () => {
  test('the last mapping of a heading counts, and it can be forgotten', () => {
    const first = withHeading([], 'hoses', 'Schlauch', 'Hose');
    const second = withHeading(first, 'hoses', 'Schlauch', 'Family');
    expect(headingMaps(second).get('hoses')).toEqual(new Map([['Schlauch', 'Family']]));
    expect(withHeading(second, 'hoses', 'Schlauch', '')).toEqual([]);
    expect(
      headingMaps(withHeading(second, 'fittings', '__proto__', 'Fitting'))
        .get('fittings')!
        .get('__proto__'),
    ).toBe('Fitting');
  });

  test.each([[undefined], ['x'], [{ length: 1 }], [[['hoses', 'A']]], [[['__proto__', 'A', 'B']]], [[['hoses', 1, 'B']]]])(
    'a store that holds %j is taken for empty',
    stored => expect(entriesOf(stored)).toEqual([]),
  );
});

test('a heading of yes and no needs no unit', () => {
  const headings = ['Machine', 'Catalogue dials', 'Date'];
  expect(headingFixes(machinesTable, [headings, ['Bench 1', 'yes', 46_000]], none)).toEqual([]);
  expect(unitsOf(machinesTable.fields.catalogueDials)).toEqual([]);
});

test('a foreign heading that is mapped to numbers reads digits in threes as the rest of its file', async () => {
  const text = 'Hose;Family;Bohrung;Bore (mm);Druck\nAlder;Alder;1.250;12,7;1.250\nBirch;Birch;x;19,1;380';
  const sheets = await readPartsFile({ name: 'hoses.csv', bytes: new Uint8Array(Buffer.from(text)) });
  const { table, decimalComma } = sheets.get('')! as { table: RawTable; decimalComma: boolean };
  expect(table[1]).toEqual(['Alder', 'Alder', '1.250', 12.7, '1.250']);
  const loaded = loadedTable('1', 'hoses.csv', 'hoses.csv', { raw: table, row: 0, column: 0, isFile: true, decimalComma });
  const maps = new Map([['hoses' as const, new Map([['Druck', 'Working pressure (psi)']])]]);
  const [chosen] = chosenTables([loaded], new Map([['1', 'hoses']]), maps);
  expect(chosen!.raw[1]).toEqual(['Alder', 'Alder', '1.250', 12.7, 1250]);
});
