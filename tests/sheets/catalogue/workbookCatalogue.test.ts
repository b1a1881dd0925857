import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { catalogueState } from '../../../src/sheets/catalogue/catalogueState';
import { usableCatalogue } from '../../../src/sheets/catalogue/usableCatalogue';
import { chooseCatalogue, workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { demoQuotes } from '../quote/demoQuotes';

const { handle } = readCatalogue(treeTables);
const WHAT_IF: FakeCell[][] = [
  ['With the rise', { formula: '=HOSE.CATALOGUE(Hoses!A1:P40,Fittings!A1:P40,Crimps!A1:P40)', value: handle }],
];

function book(sheets: Record<string, FakeCell[][]>, named?: { sheet: string; address: string }) {
  const { workbook, remembered } = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'A1' });
  if (named) jest.spyOn(workbook, 'names').mockResolvedValue([{ name: 'Catalogue', at: named }]);
  return { workbook, remembered };
}

test('one cell: it counts, and nothing is asked', async () => {
  const { workbook } = book(demoQuotes(), { sheet: 'Parts', address: 'B1' });
  const found = (await workbookCatalogue(workbook))!;
  expect(found).toMatchObject({ cell: { sheet: 'Parts', address: 'B1' }, reference: 'Catalogue', others: [], isAsked: false });
  expect(found.catalogue!.handle).toBe(handle);
  expect((await usableCatalogue(workbook)).catalogue.handle).toBe(handle);
});

test('of two cells the one named Catalogue is proposed and used; an answer is remembered with the workbook and holds for all', async () => {
  const { workbook, remembered } = book({ 'What-if': WHAT_IF, ...demoQuotes() }, { sheet: 'Parts', address: 'B1' });
  expect(await workbookCatalogue(workbook)).toMatchObject({
    cell: { sheet: 'Parts', address: 'B1' },
    others: [{ sheet: 'What-if', address: 'B1' }],
    isAsked: true,
  });
  expect((await catalogueState(workbook)).reference).toBe('Catalogue');
  await chooseCatalogue(workbook, { sheet: 'What-if', address: 'B1' });
  expect([...remembered]).toEqual([['catalogue', 'What-if!B1']]);
  const reference = "'What-if'!$B$1";
  expect(await workbookCatalogue(workbook)).toMatchObject({ cell: { sheet: 'What-if' }, isAsked: false, reference });
  expect((await usableCatalogue(workbook)).reference).toBe(reference);
  expect((await catalogueState(workbook)).reference).toBe(reference);
});

test('without a name the first is proposed; an answer about a cell that is gone is asked again', async () => {
  const { workbook } = book({ 'What-if': WHAT_IF, ...demoQuotes() });
  await chooseCatalogue(workbook, { sheet: 'Old', address: 'C9' });
  expect(await workbookCatalogue(workbook)).toMatchObject({ cell: { sheet: 'What-if' }, isAsked: true });
});

test('tables that are no catalogue: the reason comes as a sentence', async () => {
  const { workbook } = book({ ...demoQuotes(), Hoses: [['Tube']] });
  expect(await workbookCatalogue(workbook)).toMatchObject({ catalogue: undefined, reason: expect.stringMatching(/Hose/) });
  await expect(usableCatalogue(workbook)).rejects.toThrow(/^The catalogue cannot be read: /);
});

test('a workbook without a CATALOGUE cell has none', async () => {
  const { workbook } = book({ Jobs: demoQuotes().Jobs! });
  expect(await workbookCatalogue(workbook)).toBeUndefined();
  expect(await catalogueState(workbook)).toEqual({ present: false });
});
