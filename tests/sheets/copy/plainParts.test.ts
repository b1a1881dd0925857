import '../../host/customFunctions';
import * as assemblies from '../../../src/functions/assembly';
import * as parts from '../../../src/functions/parts';
import type { RawTables } from '../../../src/core/catalogue/readCatalogue';
import { shortVerdict } from '../../../src/sheets/copy/native/assembly';
import { readCopySource } from '../../../src/sheets/copy/copySource';
import { planCopy } from '../../../src/sheets/copy/planCopy';
import { catalogueOf } from '../../functions/treeHandle';
import { treeTables, withRows } from '../../core/catalogue/treeCatalogue';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { compareAll, isSame, openElsewhere } from './otherEngine';
import { randomSheet, type Random, type RandomFunction } from './randomSheets';

const one = (value: unknown): any[][] => [[value]];
const SHEETS = ['Hoses', 'Fittings', 'Crimps', 'Machines', 'Rates'] as const;
const CATALOGUE = 'Parts!$A$1';

/** As the workshop's sheets, with rows that CATALOGUE leaves out: a bad one, a part that stands there twice, a pair that does. */
const TABLES = withMany({
  hoses: [
    ['Elm DN 12', 'Elm', null, 'DN 12', 12.7, 'much', 180, -40, 100, null, null, 0.5, 8, null],
    [' Alder DN 20 ', 'Alder', null, 'DN 20', '19,1', 215, 240, -40, 100, null, 'mineral oil', 0.8, '11,5', null],
  ],
  fittings: [
    ['Elm cone DN 12', 'Elm', '24° cone', null, 'L', 0, 'DN 12', 12.7, 20, 26, 250, 0.1, 4],
    ['elm CONE dn 12', 'Elm', '24° cone', null, 'L', 0, 'DN 12', 12.7, 22, 26, 250, 0.1, 4],
    ['Alder cone straight DN 20', 'Alder', '24° cone', null, 'L', 0, 'DN 20', 19.1, 35, null, 250, 0.3, 8],
  ],
  crimps: [
    ['Birch DN 25', 'Elm cone DN 12', null, 'D40', 205, 40.2, 0.2, null, null, null],
    ['Alder DN 20', 'Alder cone straight DN 20', 'Oak ferrule', 'D31', 300, 31.2, 0.2, null, null, 30],
  ],
});

function withMany(rows: { [K in 'hoses' | 'fittings' | 'crimps']: (string | number | null)[][] }): RawTables {
  return Object.entries(rows).reduce<RawTables>(
    (tables, [name, more]) => ({ ...tables, [name]: withRows(name as 'hoses', ...more)[name as 'hoses'] }),
    treeTables,
  );
}

const cellsOf = (name: string): FakeCell[][] =>
  TABLES[name.toLowerCase() as 'hoses']!.map(row => row.map(cell => (cell === null ? '' : (cell as FakeCell))));

let handle: any[][];
beforeAll(() => (handle = catalogueOf(TABLES)));

function workbookWith(sheet: FakeCell[][]) {
  const ranges = SHEETS.map(name => `${name}!A1:Z60`).join(',');
  const sheets = {
    Parts: [[{ formula: `=HOSE.CATALOGUE(${ranges})`, value: String(handle[0]![0]) }]],
    ...Object.fromEntries(SHEETS.map(name => [name, cellsOf(name)])),
    Rows: sheet,
  };
  return fakeWorkbook(sheets, { sheet: 'Rows', address: 'A1' }).workbook;
}

const names = (table: 'hoses' | 'fittings' | 'machines') => [...new Set(TABLES[table]!.slice(1).map(row => String(row[0])))];
const PAIRS: readonly (readonly [string, string])[] = [
  ['Alder DN 12', 'Alder cone straight DN 12'],
  ['Alder DN 12', 'Alder cone elbow DN 12'],
  ['Alder DN 12', 'Alder flare straight DN 12'],
  ['Alder DN 25', 'Alder cone straight DN 25'],
  ['Birch DN 25', 'Birch flange DN 25'],
  ['Alder DN 20', 'Alder cone straight DN 20'],
];

/** A name as people write it: other case, blanks around it. */
const asTyped = (random: Random, name: string) =>
  random.oddly(20, () => name, name.toUpperCase(), ` ${name}  `, name.toLowerCase());
const nameOf = (random: Random, known: readonly string[]) =>
  random.oddly<string | null>(8, () => asTyped(random, random.pick(known)), null, 'Oak DN 8', 'Alder*', 'Alder?DN 12', 'x~');

function pairOf(random: Random): [string | null, string | null] {
  if (random.next() < 0.3) return [nameOf(random, names('hoses')), nameOf(random, names('fittings'))];
  const [hose, fitting] = random.pick(PAIRS);
  return [asTyped(random, hose), asTyped(random, fitting)];
}

function assemblyOf(random: Random): (string | number | null)[] {
  const [hose, a] = pairOf(random);
  const known = PAIRS.filter(([name]) => name === hose).map(([, fitting]) => fitting);
  const b = random.next() < 0.7 ? random.pick(known.length > 0 ? known : [String(a)]) : pairOf(random)[1];
  const overall = random.oddly<string | number | null>(
    12,
    () => random.number(120, 900, 1),
    null,
    0,
    60,
    100,
    '1 1/2',
    'x',
    '300,5',
  );
  return [hose, a, b, overall, random.oddly<string | number | null>(10, () => random.number(1, 40, 0), null, 0, 2.5, 'x')];
}

const FUNCTIONS: readonly RandomFunction[] = [
  ...['bore', 'Working pressure', 'fluids', 'price per length', 'mass per length', 'vacuum', 'note'].map(
    (field): RandomFunction => ({
      id: 'HOSEDATA',
      inputs: r => [nameOf(r, names('hoses'))],
      arguments: r => [CATALOGUE, `A${r}`, `"${field}"`],
      ours: ([a]) => parts.hoseData(handle, one(a), one(field)),
    }),
  ),
  ...['cut-off', 'End form', 'drop', 'price', 'insertion depth'].map((field): RandomFunction => ({
    id: 'FITTINGDATA',
    inputs: r => [nameOf(r, names('fittings'))],
    arguments: r => [CATALOGUE, `A${r}`, `"${field}"`],
    ours: ([a]) => parts.fittingData(handle, one(a), one(field)),
  })),
  {
    id: 'CRIMPSETUP',
    inputs: r => [...pairOf(r), r.oddly<string | null>(30, () => asTyped(r, r.pick(names('machines'))), null, 'Bench 9')],
    arguments: r => [CATALOGUE, `A${r}`, `B${r}`, `C${r}`],
    ours: ([a, b, c]) => assemblies.crimpSetup(handle, one(a), one(b), one(c)),
  },
  {
    id: 'ASSEMBLY',
    inputs: assemblyOf,
    arguments: r => [CATALOGUE, `A${r}`, `B${r}`, `C${r}`, `D${r}`],
    ours: ([a, b, c, d]) => assemblies.assembly(handle, one(a), one(b), one(c), one(d)),
  },
  {
    id: 'UNITCOST',
    inputs: assemblyOf,
    arguments: r => [CATALOGUE, `A${r}`, `B${r}`, `C${r}`, `D${r}`, `E${r}`],
    ours: ([a, b, c, d, e]) => assemblies.unitCost(handle, one(a), one(b), one(c), one(d), one(e)),
  },
];

async function plain(sheet: FakeCell[][], workbook = workbookWith(sheet)) {
  const source = await readCopySource(workbook);
  const sheets = ['Parts', ...SHEETS, 'Rows'];
  return planCopy(source, { sheets, kind: 'formulas', withCosts: true, withParts: true, target: 'file', today: '2026-11-29' });
}

/** Long formulas take the other engine some 30 ms a row. */
const rowsOf = ({ id }: RandomFunction) => (id === 'ASSEMBLY' || id === 'UNITCOST' ? 300 : 1000);

test.each(FUNCTIONS.map((each, index) => [`${each.id} ${each.arguments(1).slice(-1)[0]}`, each, index] as const))(
  'random rows: %s agrees in another engine',
  async (_, each, index) => {
    const ROWS = rowsOf(each);
    const { copy, kept } = await plain(randomSheet(each, 29 + index, ROWS));
    const compared = compareAll(copy);
    expect(compared.filter(({ ours, theirs }) => !isSame(ours, theirs)).slice(0, 5)).toEqual([]);
    expect(kept.filter(({ sheet }) => sheet === 'Rows').map(({ reason }) => reason)).toEqual([]);
    const rows = compared.filter(({ at }) => at.startsWith('Rows'));
    expect(rows.filter(({ ours }) => typeof ours === 'object').length).toBeGreaterThan(ROWS / 20);
    expect(rows.filter(({ ours }) => typeof ours !== 'object').length).toBeGreaterThan(ROWS / 4);
  },
);

test('a row that changes is calculated anew elsewhere: another pair, another machine, a cut-off, and what must not be made', async () => {
  const given: readonly FakeCell[] = ['Alder DN 12', 'Alder cone elbow DN 12', 'Alder cone elbow DN 12', 500, 4, ''];
  const call = (id: string, ...more: string[]) => `=HOSE.${id}(${[CATALOGUE, 'A1', 'B1', ...more].join(',')})`;
  const [hose, a, b, overall, quantity] = given.map(one) as [any, any, any, any, any];
  const filled = (formula: string, values: any[][]): FakeCell[] => [{ formula, value: values[0]![0] }, ...values[0]!.slice(1)];
  const row = [
    ...given,
    ...filled(call('CRIMPSETUP', 'F1'), assemblies.crimpSetup(handle, hose, a, one(null))),
    ...filled(call('ASSEMBLY', 'C1', 'D1'), assemblies.assembly(handle, hose, a, b, overall)),
    ...filled(call('UNITCOST', 'C1', 'D1', 'E1'), assemblies.unitCost(handle, hose, a, b, overall, quantity)),
  ];
  const { copy } = await plain([row]);
  const elsewhere = openElsewhere(copy);
  const shown = (from: number, count: number) => Array.from({ length: count }, (_, at) => elsewhere.value('Rows', 0, from + at));
  expect(shown(6, 6)).toEqual(assemblies.crimpSetup(handle, hose, a, one(null))[0]);
  // Another pair of the table, another length.
  elsewhere.set('Rows', 0, 0, 'birch dn 25');
  elsewhere.set('Rows', 0, 1, 'Birch flange DN 25');
  elsewhere.set('Rows', 0, 2, 'Birch flange DN 25');
  elsewhere.set('Rows', 0, 3, 640);
  const birch = [one('Birch DN 25'), one('Birch flange DN 25')] as const;
  expect(shown(6, 6)).toEqual(assemblies.crimpSetup(handle, ...birch, one(null))[0]);
  expect(shown(12, 4)).toEqual(assemblies.assembly(handle, ...birch, birch[1], one(640))[0]);
  const [cost] = assemblies.unitCost(handle, ...birch, birch[1], one(640), quantity);
  shown(16, 4).forEach((value, index) => expect(value).toBeCloseTo(cost![index], 9));
  // A machine that the catalogue's dials are not for.
  elsewhere.set('Rows', 0, 5, 'Bench 2');
  expect(shown(6, 6)).toEqual(assemblies.crimpSetup(handle, ...birch, one('Bench 2'))[0]);
  expect(shown(11, 1)).toEqual(['NO DIAL']);
  // A cut-off that is corrected in the copy.
  const cutOff = TABLES.fittings![0]!.indexOf('Cut-off (mm)');
  elsewhere.set('Fittings', 5, cutOff, 70);
  expect(shown(12, 1)).toEqual([500]);
  // Families that differ, no crimp data: no cost.
  elsewhere.set('Rows', 0, 2, 'Alder cone straight DN 25');
  expect(shown(15, 1)).toEqual(['families differ; no crimp data: do not assemble']);
  expect(shown(16, 4).map(value => typeof value)).toEqual(['object', 'object', 'object', 'object']);
  elsewhere.close();
});

test("ASSEMBLY's sentences are shortened to the words of the plain formula", () => {
  const kinds = new Set<string>();
  const sheet = randomSheet(
    FUNCTIONS.find(({ id }) => id === 'ASSEMBLY')!,
    5,
    600,
  );
  for (const row of sheet) {
    const verdict = row.at(-1);
    if (row.length === 9 && typeof verdict === 'string' && verdict !== '') kinds.add(shortVerdict(verdict));
  }
  expect([...kinds]).toEqual(
    expect.arrayContaining([
      'OK',
      'rating missing',
      'too short',
      'families differ; sizes differ; no crimp data: do not assemble',
    ]),
  );
});

test('a name with a star or a question mark is found as it is written, and stands for no other', async () => {
  const odd = withMany({
    hoses: [['Oak 1* DN 12', 'Alder', null, 'DN 12', 12.7, 99, 180, -40, 100, null, null, 0.5, 8, null]],
    fittings: [],
    crimps: [],
  });
  const before = TABLES.hoses;
  (TABLES as { hoses: unknown }).hoses = odd.hoses;
  handle = catalogueOf(TABLES);
  try {
    const each: RandomFunction = {
      id: 'HOSEDATA',
      inputs: r => [
        r.pick(['Oak 1* DN 12', 'oak 1* dn 12', 'Oak*', 'Oak ?* DN 12', 'Alder DN 12', 'Alder DN ??', 'Oak 1~* DN 12']),
      ],
      arguments: r => [CATALOGUE, `A${r}`, '"working pressure"'],
      ours: ([a]) => parts.hoseData(handle, one(a), one('working pressure')),
    };
    const { copy } = await plain(randomSheet(each, 3, 60));
    const compared = compareAll(copy).filter(({ at }) => at.startsWith('Rows'));
    expect(compared.filter(({ ours, theirs }) => !isSame(ours, theirs))).toEqual([]);
    expect(new Set(compared.map(({ ours }) => (typeof ours === 'object' ? 'error' : ours)))).toEqual(new Set([99, 275, 'error']));
  } finally {
    (TABLES as { hoses: unknown }).hoses = before;
    handle = catalogueOf(TABLES);
  }
});
