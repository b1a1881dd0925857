import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { insertion, selectedPair, type PartCell } from '../../../src/sheets/parts/insertPart';
import { partSearch } from '../../../src/sheets/parts/partSearch';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { standingWorkbook } from './standingWorkbook';

const { parts } = partSearch(readCatalogue(treeTables));
const elbow = parts.find(({ name }) => name === 'Alder cone elbow DN 12')!;
const lookUp: PartCell = { what: 'lookUp', heading: 'Cut-off' };

async function planned(rows: Parameters<typeof standingWorkbook>[0], address: string, wanted: PartCell) {
  const workbook = standingWorkbook(rows);
  await workbook.select({ sheet: 'Prices', address });
  return insertion(elbow, wanted, await selectedPair(workbook), (await workbookCatalogue(workbook))!);
}

test('a name goes into the selected blank cell', async () => {
  expect(await planned({ Prices: [['x']] }, 'B7', { what: 'name' })).toEqual({
    changes: [{ kind: 'values', at: { sheet: 'Prices', address: 'B7' }, values: [['Alder cone elbow DN 12']] }],
    over: [],
    message: 'Wrote Alder cone elbow DN 12 into Prices!B7.',
  });
});

test('a look-up goes beside a cell that holds the part, and takes the name from there', async () => {
  const { changes, over } = await planned({ Prices: [['alder CONE elbow DN 12 ']] }, 'A1', lookUp);
  expect(over).toEqual([]);
  expect(changes.at(-1)).toEqual({
    kind: 'formulas',
    at: { sheet: 'Prices', address: 'B1' },
    formulas: [['=HOSE.FITTINGDATA(Catalogue,A1,"cut-off")']],
  });
  expect(changes.some(({ kind }) => kind === 'values')).toBe(false);
});

test('filled cells that would be written over are said, formulas by their text', async () => {
  const sheet = { Prices: [['Oak', { formula: '=1+1' }]] };
  expect((await planned(sheet, 'A1', lookUp)).over).toEqual(['A1 holds "Oak"', 'B1 holds the formula =1+1']);
  expect((await planned(sheet, 'A1', { what: 'name' })).over).toEqual(['A1 holds "Oak"']);
});

test('without a name Catalogue the look-up names the cell', async () => {
  const workbook = standingWorkbook({ 'My prices': [['x']] });
  workbook.defined.clear();
  await workbook.select({ sheet: 'My prices', address: 'A3' });
  const { changes } = insertion(
    parts[0]!,
    { what: 'lookUp', heading: 'Bore' },
    await selectedPair(workbook),
    (await workbookCatalogue(workbook))!,
  );
  expect(changes.at(-1)).toMatchObject({ formulas: [['=HOSE.HOSEDATA(Jobs!$C$1,A3,"bore")']] });
});
