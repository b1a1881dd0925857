import { excelWorkbook } from '../../../src/host/excel/excelWorkbook';
import { excelApi, excelLayouts, excelSettings, strictExcel } from './strictExcel';

const jobs = Array.from({ length: 30_000 }, (_, row) => [`hose ${row}`, row]);
const open = () => strictExcel({ Jobs: jobs, Empty: [] }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
const nothing = { hiddenRows: new Set(), hiddenColumns: new Set(), isHidden: false };
const merge = (row: number, column: number, rows: number, columns: number) => ({ row, column, rows, columns });

beforeEach(() => (excelApi.supported = ['1.13']));
afterEach(() => {
  excelApi.supported = [];
  delete excelLayouts.Jobs;
  delete excelLayouts.Empty;
  excelSettings.clear();
});

test('a sheet with nothing hidden and nothing merged is told in one question for its rows and one for its merged cells', async () => {
  const excel = open();
  expect(await excelWorkbook().layout('Jobs')).toEqual({ ...nothing, merges: [] });
  // Two of ours, and the closing one of each of the two runs, which sends nothing more.
  expect(excel.syncs).toBe(4);
});

test('rows that are hidden are told by their number in the sheet, also where they are asked for in pieces', async () => {
  open();
  excelLayouts.Jobs = { hiddenRows: [0, 7, 19_999, 20_000, 29_999, 40_000] };
  expect((await excelWorkbook().layout('Jobs')).hiddenRows).toEqual(new Set([0, 7, 19_999, 20_000, 29_999]));
});

test('columns that are hidden are told by their number in the sheet', async () => {
  const wide = [...Array.from({ length: 3 }, () => []), ['', 'hose', 'note', 'price']];
  strictExcel({ Jobs: wide }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
  excelLayouts.Jobs = { hiddenColumns: [2, 3, 7] };
  expect(await excelWorkbook().layout('Jobs')).toEqual({ ...nothing, hiddenColumns: new Set([2, 3]), merges: [] });
});

test.each([
  ['Visible', false],
  ['Hidden', true],
  ['VeryHidden', true],
] as const)('a sheet that is %s, filled or empty: hidden %s', async (visibility, isHidden) => {
  open();
  excelLayouts.Jobs = excelLayouts.Empty = { visibility };
  const workbook = excelWorkbook();
  expect([(await workbook.layout('Jobs')).isHidden, (await workbook.layout('Empty')).isHidden]).toEqual([isHidden, isHidden]);
});

test('every row may be hidden', async () => {
  strictExcel({ Jobs: jobs.slice(0, 2) }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
  excelLayouts.Jobs = { hiddenRows: [0, 1] };
  expect((await excelWorkbook().layout('Jobs')).hiddenRows).toEqual(new Set([0, 1]));
});

test('merged cells are told whole; more than Excel gives at once are asked for by parts of the sheet', async () => {
  const excel = open();
  const merges = [merge(1, 0, 3, 1), merge(9, 0, 1, 2)];
  excelLayouts.Jobs = { merges };
  expect((await excelWorkbook().layout('Jobs')).merges).toEqual(merges);
  expect(excel.syncs).toBeLessThan(6);
  const many = Array.from({ length: 1400 }, (_, index) => merge(2 * index, 0, 2, 1));
  excelLayouts.Jobs = { merges: many };
  expect((await excelWorkbook().layout('Jobs')).merges).toEqual(many);
});

test('an Excel that cannot tell merged cells (before ExcelApi 1.13) tells hidden rows all the same', async () => {
  open();
  excelApi.supported = [];
  excelLayouts.Jobs = { hiddenRows: [3], merges: [merge(1, 0, 2, 1)] };
  expect(await excelWorkbook().layout('Jobs')).toEqual({ ...nothing, hiddenRows: new Set([3]), merges: [] });
});

test('an empty sheet hides nothing; a sheet that is not there is said', async () => {
  open();
  expect(await excelWorkbook().layout('Empty')).toEqual({ ...nothing, merges: [] });
  await expect(excelWorkbook().layout('Gone')).rejects.toThrow('no longer there');
});

test('texts are kept in the settings of the workbook under names of ours, changed and forgotten', async () => {
  open();
  const workbook = excelWorkbook();
  expect(await workbook.recall('unit.Jobs')).toBeUndefined();
  await workbook.remember('unit.Jobs', 'mm');
  await workbook.remember('unit.Jobs', 'in');
  expect(await workbook.recall('unit.Jobs')).toBe('in');
  expect([...excelSettings]).toEqual([['benchrow.unit.Jobs', 'in']]);
  await workbook.remember('unit.Jobs', undefined);
  await workbook.remember('unit.Jobs', undefined);
  expect([await workbook.recall('unit.Jobs'), excelSettings.size]).toEqual([undefined, 0]);
});
