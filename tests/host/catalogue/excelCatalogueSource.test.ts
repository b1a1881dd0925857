import '../customFunctions';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { catalogueFromCells } from '../../../src/cells/catalogueFromCells';
import { excelCatalogueSource } from '../../../src/host/catalogue/excelCatalogueSource';
import { hoseData } from '../../../src/functions/parts';
import { treeTables, withCell } from '../../core/catalogue/treeCatalogue';
import { strictTables, type FakeBook } from './strictTables';

const { hoses, fittings, crimps, machines, rates } = treeTables;
const derating = treeTables.derating!;
const RANGES = 'Hoses!A1:S60,Fittings!$A$1:$Q$120,Crimps!A1:N400,Machines!A1:L20,Rates!A1:C20,,,Derating!A1:C9';
const one = { row: 0, column: 0, rows: 1, columns: 1 };

const book = (changes: Partial<FakeBook> = {}): FakeBook => ({
  sheets: {
    Jobs: [[null]],
    Hoses: hoses as never,
    Fittings: fittings as never,
    Crimps: crimps as never,
    Machines: machines as never,
    Rates: rates as never,
    Derating: derating as never,
  },
  formulas: { Jobs: [[0, 0, `=HOSE.CATALOGUE(${RANGES})`]] },
  names: { Catalogue: ['Jobs', one] },
  ...changes,
});

const clock = { pause: jest.fn(), resume: jest.fn() };
async function handles(): Promise<string[]> {
  const found: string[] = [];
  for await (const cells of excelCatalogueSource.calls(clock)) found.push(catalogueFromCells(cells).handle);
  return found;
}

const tree = readCatalogue(treeTables).handle;
afterEach(() => delete (globalThis as { Excel?: unknown }).Excel);

test('reads the tables that the cell named Catalogue names, and gives the same handle', async () => {
  strictTables(book());
  expect(await handles()).toEqual([tree]);
});

test('finds a CATALOGUE formula that no name points to, and a second one on another sheet', async () => {
  strictTables(book({ names: {} }));
  expect(await handles()).toEqual([tree]);
  const second = {
    Jobs: book().formulas!.Jobs!,
    Rates: [[9, 4, '=HOSE.CATALOGUE(Hoses!A1:S60,Fittings!A1:Q120,Crimps!A1:N400)'] as const],
  };
  strictTables(book({ formulas: second }));
  expect(await handles()).toEqual([tree, readCatalogue({ hoses, fittings, crimps }).handle]);
});

test('names and whole tables stand for ranges', async () => {
  const block = (table: readonly (readonly unknown[])[]) => ({
    row: 0,
    column: 0,
    rows: table.length,
    columns: table[0]!.length,
  });
  strictTables(
    book({
      formulas: { Jobs: [[0, 0, '=HOSE.CATALOGUE(AllHoses,Parts[#All],Crimps!A1:N400)']] },
      names: { Catalogue: ['Jobs', one], AllHoses: ['Hoses', block(hoses)] },
      tables: { Parts: ['Fittings', block(fittings)] },
    }),
  );
  expect(await handles()).toEqual([readCatalogue({ hoses, fittings, crimps }).handle]);
});

test('an error value in a table is one here as in the function, and large tables come in pieces', async () => {
  const rows = Array.from({ length: 6000 }, (_, i) => [
    'Alder DN 12',
    `Alder part ${i}`,
    null,
    'D23',
    310,
    23.4,
    0.15,
    null,
    null,
    null,
  ]);
  const state = strictTables(
    book({
      sheets: { ...book().sheets, Crimps: [...crimps, ...rows] as never },
      formulas: { Jobs: [[0, 0, '=HOSE.CATALOGUE(Hoses!A1:S60,Fittings!A1:Q120,Crimps!A1:N9000)']] },
    }),
  );
  expect((await handles())[0]).toMatch(/6005 crimps\)$/);
  expect(state.largest).toBeLessThanOrEqual(20_000);
  const tables = withCell('hoses', 1, 'Bore (mm)', '#DIV/0!');
  strictTables(book({ sheets: { ...book().sheets, Hoses: tables.hoses as never } }));
  expect((await handles())[0]).toMatch(/1 row left out$/);
  const asError = withCell('hoses', 1, 'Bore (mm)', { error: '#DIV/0!' });
  expect(await handles()).toEqual([readCatalogue(asError).handle]);
});

test('while a cell is being edited the clock stands still and the reading waits', async () => {
  const state = strictTables(book());
  state.editing = 1;
  expect(await handles()).toEqual([tree]);
  expect([state.waited, clock.pause.mock.calls.length, clock.resume.mock.calls.length]).toEqual([1, 1, 1]);
});

test('a sheet that is gone, or a formula that cannot be followed, gives nothing', async () => {
  strictTables(book({ formulas: { Jobs: [[0, 0, '=HOSE.CATALOGUE(Gone!A1:S60,Fittings!A1:Q120,Crimps!A1:N400)']] } }));
  expect(await handles()).toEqual([]);
});

test('a look-up after reopening answers later, from the tables of the workbook', async () => {
  strictTables(book());
  const result = hoseData([[tree]], [['alder dn 12'], ['Birch DN 25']], [['bore']]) as unknown;
  expect(result).toBeInstanceOf(Promise);
  expect(await result).toEqual([[12.7], [25.4]]);
  expect(hoseData([[tree]], [['Birch DN 25']], [['bore']])).toEqual([[25.4]]);
});
