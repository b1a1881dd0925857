import '../../host/customFunctions';
import type { RawTable } from '../../../src/core/catalogue/rawTable';
import type { RawTables } from '../../../src/core/catalogue/readCatalogue';
import { unitCost } from '../../../src/functions/assembly';
import { readCopySource } from '../../../src/sheets/copy/copySource';
import { planCopy } from '../../../src/sheets/copy/planCopy';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { catalogueOf, one } from '../../functions/treeHandle';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { compareAll, isSame } from './otherEngine';
import { randomSheet } from './randomSheets';

const SHEETS = ['Hoses', 'Fittings', 'Crimps', 'Machines', 'Rates'] as const;
const LINE = ['Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12', 1035.5, 10] as const;

const withoutColumn = (table: RawTable, heading: string): RawTable => {
  const left = table[0]!.indexOf(heading);
  return table.map(row => row.filter((_, column) => column !== left));
};
const withoutRow = (table: RawTable, first: string): RawTable => table.filter(row => row[0] !== first);

/** One line with its cost as a copy with plain formulas has it. */
async function copied(tables: RawTables) {
  const handle = catalogueOf(tables);
  const ranges = SHEETS.map(name => `${name}!A1:Z60`).join(',');
  const cells = (table: RawTable): FakeCell[][] => table.map(row => row.map(cell => (cell ?? '') as FakeCell));
  const cost = {
    id: 'UNITCOST',
    inputs: () => LINE,
    arguments: (r: number) => ['Parts!$A$1', `A${r}`, `B${r}`, `C${r}`, `D${r}`, `E${r}`],
    ours: () => unitCost(handle, one(LINE[0]), one(LINE[1]), one(LINE[2]), one(LINE[3]), one(LINE[4])),
  };
  const sheets = {
    Parts: [[{ formula: `=HOSE.CATALOGUE(${ranges})`, value: String(handle[0]![0]) }]],
    ...Object.fromEntries(SHEETS.map(name => [name, cells(tables[name.toLowerCase() as 'hoses']!)])),
    Rows: randomSheet(cost, 1, 1),
  };
  const source = await readCopySource(fakeWorkbook(sheets, { sheet: 'Rows', address: 'A1' }).workbook);
  const wishes = { kind: 'formulas', withCosts: true, withParts: true, target: 'file', today: '2026-11-29' } as const;
  const { copy, kept } = planCopy(source, { ...wishes, sheets: ['Parts', ...SHEETS, 'Rows'] });
  const rows = compareAll(copy).filter(({ at }) => at.startsWith('Rows'));
  return { rows, kept: kept.filter(({ sheet }) => sheet === 'Rows').map(({ reason }) => reason) };
}

test('a cost whose prices and rates are all there becomes plain formulas', async () => {
  const { rows, kept } = await copied(treeTables);
  expect(kept).toEqual([]);
  // 1035.5 − 30 − 45.5 = 960 mm of hose at 8 a metre with 4 % scrap: 0.96 × 8 / 0.96. Fittings: 4 + 9. Labour: 30/10 + 2 + 2 × 1.5 minutes at 60 an hour.
  expect(rows.map(({ ours }) => ours)).toEqual([8, 13, 8, 29]);
  expect(rows.filter(({ ours, theirs }) => !isSame(ours, theirs))).toEqual([]);
});

test.each<[string, Partial<RawTables>, string]>([
  ['fittings have no prices', { fittings: withoutColumn(treeTables.fittings, 'Price') }, 'a price or rate is missing'],
  ['hoses have no prices', { hoses: withoutColumn(treeTables.hoses, 'Price per length (per m)') }, 'a price or rate is missing'],
  ['an hour has no rate', { rates: withoutRow(treeTables.rates, 'labour per hour') }, 'the rate labour per hour is missing'],
])('where %s, the cost stays as it is, and the copy says why', async (_, without, reason) => {
  const { rows, kept } = await copied({ ...treeTables, ...without });
  expect(rows).toEqual([]);
  expect(new Set(kept)).toEqual(new Set([`UNITCOST: ${reason}`]));
});
