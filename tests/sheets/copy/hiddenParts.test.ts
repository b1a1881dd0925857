import { copyFile } from '../../../src/host/copyFile/copyFile';
import { readCopySource } from '../../../src/sheets/copy/copySource';
import type { CopyWishes } from '../../../src/sheets/copy/copyWishes';
import { NothingToCopy, planCopy } from '../../../src/sheets/copy/planCopy';
import { sheetTicks } from '../../../src/sheets/copy/sheetTicks';
import type { CopiedSheet } from '../../../src/workbook/copiedWorkbook';
import { Workbook } from 'exceljs';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const SHEETS: Record<string, FakeCell[][]> = {
  Enquiry: [
    ['Pos.', 'Pcs', 'Hose', 'OAL (mm)', 'Agreed', 'Remark'],
    [10, 4, 'Rowan DN 12', 1250, 31.2, 'ends 90° apart'],
    [20, 2, 'Rowan DN 12', 985, 28.4, 'as sample'],
  ],
  'Supplier discounts': [
    ['Supplier', 'Discount'],
    ['North', 0.32],
  ],
};
const HIDDEN = { hiddenColumns: { Enquiry: [4] }, hiddenRows: { Enquiry: [2] }, hiddenSheets: ['Supplier discounts'] };

const CUSTOMER: CopyWishes = {
  ...{ sheets: Object.keys(SHEETS), kind: 'values', withCosts: false, withParts: false },
  ...{ target: 'file', today: '2026-11-30' },
};
const OFFICE = { kind: 'formulas', withCosts: true, withParts: true } as const;

const source = () => readCopySource(fakeWorkbook(SHEETS, { sheet: 'Enquiry', address: 'A1' }, HIDDEN).workbook);
const planned = async (wishes: Partial<CopyWishes> = {}) => planCopy(await source(), { ...CUSTOMER, ...wishes });
const valuesOf = ({ cells }: CopiedSheet) => cells.map(line => line.map(({ value }) => value));

test('a hidden sheet is marked; for a customer it is not ticked, for an office it is', async () => {
  const ticks = async (kind: CopyWishes['kind']) =>
    sheetTicks(await source(), { kind, withParts: kind === 'formulas', sheets: {} });
  const marked = { name: 'Supplier discounts', isShut: false, remark: 'hidden' };
  expect(await ticks('values')).toMatchObject([
    { name: 'Enquiry', isTicked: true, remark: '' },
    { ...marked, isTicked: false },
  ]);
  expect(await ticks('formulas')).toMatchObject([{ isTicked: true }, { ...marked, isTicked: true }]);
});

test('a hidden column goes empty into values, with its heading, and stays hidden; the report says so', async () => {
  const { copy, leftOut, hidden } = await planned({ sheets: ['Enquiry'] });
  const [, enquiry] = copy.sheets;
  expect(valuesOf(enquiry!)).toEqual([
    ['Pos.', 'Pcs', 'Hose', 'OAL (mm)', '', 'Remark'],
    [10, 4, 'Rowan DN 12', 1250, '', 'ends 90° apart'],
    ['', '', '', '', '', ''],
  ]);
  expect(enquiry).toMatchObject({ hiddenColumns: [4], hiddenRows: [2], isHidden: false });
  expect(leftOut).toEqual([
    'Contents of hidden rows: Enquiry (1).',
    'Contents of hidden columns: Enquiry (E).',
    'Sheets: Supplier discounts (hidden).',
  ]);
  expect(hidden).toEqual([]);
});

test('a hidden sheet that is ticked stays hidden in the file, and the report names it', async () => {
  const { copy, hidden, leftOut } = await planned();
  expect(copy.sheets.map(({ name, isHidden }) => [name, isHidden])).toEqual([
    ['Read first', false],
    ['Enquiry', false],
    ['Supplier discounts', true],
  ]);
  expect(hidden).toEqual(['Copied and still hidden: sheet Supplier discounts.']);
  expect(leftOut.join(' ')).not.toContain('Supplier');
  const file = new Workbook();
  await file.xlsx.load((await copyFile(copy)).slice().buffer as ArrayBuffer);
  expect(file.worksheets.map(({ name, state }) => [name, state])).toEqual([
    ['Read first', 'visible'],
    ['Enquiry', 'visible'],
    ['Supplier discounts', 'hidden'],
  ]);
  expect([2, 3].map(number => file.getWorksheet('Enquiry')!.getRow(number).hidden)).toEqual([false, true]);
  const columns = [5, 6].map(number => file.getWorksheet('Enquiry')!.getColumn(number).hidden);
  expect(columns).toEqual([true, false]);
});

test('among new sheets a hidden one would be seen: for a customer it is left out and reported', async () => {
  const { copy, leftOut } = await planned({ target: 'sheets' });
  expect(copy.sheets.map(({ name }) => name)).toEqual(['Read first', 'Enquiry copy']);
  expect(leftOut.at(-1)).toBe('Sheets: Supplier discounts (hidden).');
  const only = planned({ target: 'sheets', sheets: ['Supplier discounts'] });
  await expect(only).rejects.toThrow(NothingToCopy);
  await expect(only).rejects.toThrow('New sheets would show what is hidden');
});

test('for an office all that is ticked comes with its contents: hidden in the file, and said where new sheets show it', async () => {
  const file = await planned(OFFICE);
  const [, enquiry, discounts] = file.copy.sheets;
  expect(valuesOf(enquiry!)[1]).toEqual(SHEETS.Enquiry![1]);
  expect(valuesOf(enquiry!)[2]).toEqual(SHEETS.Enquiry![2]);
  expect([enquiry!.hiddenColumns, enquiry!.hiddenRows, discounts!.isHidden]).toEqual([[4], [2], true]);
  const what = 'sheet Supplier discounts; rows of Enquiry (1); columns of Enquiry (E).';
  expect(file.hidden).toEqual([`Copied and still hidden: ${what}`]);
  expect(file.leftOut).toEqual([]);
  const sheets = await planned({ ...OFFICE, target: 'sheets' });
  expect(sheets.copy.sheets.map(({ name }) => name)).toContain('Supplier discounts copy');
  expect(sheets.hidden).toEqual([`Hidden in the workbook, visible in the new sheets: ${what}`]);
});

test('a heading that says what the shop buys for is one of cost', async () => {
  const rows: FakeCell[][] = [
    ['Pos.', 'Pcs', 'Hose', 'OAL (mm)', 'Buy price'],
    [10, 4, 'Rowan DN 12', 1250, 31.2],
  ];
  const { workbook } = fakeWorkbook({ Enquiry: rows }, { sheet: 'Enquiry', address: 'A1' });
  const { copy } = planCopy(await readCopySource(workbook), { ...CUSTOMER, sheets: ['Enquiry'] });
  expect(valuesOf(copy.sheets[1]!)[1]).toEqual([10, 4, 'Rowan DN 12', 1250, '']);
});
