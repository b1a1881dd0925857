import { UniverWorkbook } from '../../src/preview/univerWorkbook';
import { catalogueState } from '../../src/sheets/catalogue/catalogueState';
import { readCrimpSheet } from '../../src/sheets/crimps/crimpSheet';
import { hostOf, shownWorkbook } from '../../src/workbook/shownWorkbook';
import type { Workbook } from '../../src/workbook/workbook';
import { benchSheets } from '../sheets/crimps/benchSheets';
import { fakeWorkbook } from './fakeWorkbook';

/** A host that keeps what it knows in itself, as a class does. */
class CountingHost {
  readonly host = 'try-out' as const;
  asked = 0;
  async sheets(): Promise<readonly string[]> {
    this.asked += 1;
    return ['Jobs'];
  }
  onSelection(): () => void {
    return () => {};
  }
}

test('what a host keeps in itself is kept in the host, however often it is shown', async () => {
  const host = new CountingHost();
  for (let showing = 0; showing < 2; showing++) await shownWorkbook(host as unknown as Workbook).workbook.sheets();
  expect(host.asked).toBe(2);
});

test('everything a workbook can do, a shown one can do, also apart from it', async () => {
  const { workbook } = fakeWorkbook(benchSheets, { sheet: 'Record', address: 'A6' });
  const { workbook: shown } = shownWorkbook(workbook);
  const ofClass = Object.getOwnPropertyNames(UniverWorkbook.prototype).filter(
    name => !['constructor', 'workbook', 'sheet', 'source', 'content'].includes(name),
  );
  expect(Object.keys(shown).sort()).toEqual(['host', ...ofClass].sort());
  const { selection, read } = shown;
  expect(await selection()).toEqual(await workbook.selection());
  const at = [{ sheet: 'Record', address: 'A1' }];
  expect(await read(at)).toEqual(await workbook.read(at));
  expect([hostOf(shown), hostOf(shownWorkbook(shown).workbook), hostOf(workbook)]).toEqual([workbook, workbook, workbook]);
});

test('what is hidden, merged cells, formats and remembered texts are those of the host', async () => {
  const details = {
    hiddenRows: { Record: [5] },
    hiddenColumns: { Record: [1] },
    hiddenSheets: ['Record'],
    merges: { Record: ['A2:A4'] },
    formats: { Record: { 'A6:A7': 'dd/mm/yyyy' } },
    remembered: { 'unit.Record': 'mm' },
  };
  const { workbook, remembered } = fakeWorkbook(benchSheets, { sheet: 'Record', address: 'A6' }, details);
  const { workbook: shown } = shownWorkbook(workbook);
  expect(await shown.layout('Record')).toEqual({
    hiddenRows: new Set([5]),
    hiddenColumns: new Set([1]),
    isHidden: true,
    merges: [{ row: 1, column: 0, rows: 3, columns: 1 }],
  });
  const [read] = await shown.read([{ sheet: 'Record', address: 'A5:B6' }]);
  expect(read!.formats).toEqual([
    ['General', 'General'],
    ['dd/mm/yyyy', 'General'],
  ]);
  expect(await shown.recall('unit.Record')).toBe('mm');
  await shown.remember('unit.Record', undefined);
  await shown.remember('headings.Record', '{"A":"hose"}');
  expect([...remembered]).toEqual([['headings.Record', '{"A":"hose"}']]);
});

test.each([
  ['Columns', catalogueState],
  ['Readings', readCrimpSheet],
])('%s: the tables of the catalogue are not read again because a view is shown again', async (_, look) => {
  const catalogue = {
    formula: '=HOSE.CATALOGUE(Hoses!A1:B2,Fittings!A1:B2,Crimps!A1:B2)',
    value: 'CAT-00000000 (mm, bar; 0 hoses, 0 fittings, 0 crimps)',
  };
  const sheets = { ...benchSheets, Cover: [[catalogue]], Hoses: [['Hose']], Fittings: [['Fitting']], Crimps: [['Die']] };
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Record', address: 'A6' });
  jest.spyOn(workbook, 'names').mockResolvedValue([{ name: 'Catalogue', at: { sheet: 'Cover', address: 'A1' } }]);
  const read = jest.spyOn(workbook, 'read');
  await look(shownWorkbook(workbook).workbook);
  const first = read.mock.calls.length;
  await look(shownWorkbook(workbook).workbook);
  const second = read.mock.calls.length - first;
  // The cell alone, to see whether it changed.
  expect(second).toBe(1);
  expect(first).toBeGreaterThan(1);
});
