import { isBlankWorkbook } from '../../src/workbook/isBlankWorkbook';
import { fakeWorkbook, type FakeCell } from './fakeWorkbook';

const far = (value: FakeCell) => [...Array.from({ length: 80 }, () => ['']), ['', value]];

test.each<[string, Readonly<Record<string, readonly (readonly FakeCell[])[]>>, boolean]>([
  ['no cell', { Sheet1: [], Sheet2: [] }, true],
  ['blank cells only', { Sheet1: [['', '']] }, true],
  ['a zero', { Sheet1: [], Sheet2: [[0]] }, false],
  ['an error', { Sheet1: [[{ error: '#N/A' }]] }, false],
  ['one word far down', { Sheet1: far('x') }, false],
  ['blank cells far down', { Sheet1: far('') }, true],
])('a workbook with %s', async (_, sheets, expected) => {
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Sheet1', address: 'A1' });
  expect(await isBlankWorkbook(workbook)).toBe(expected);
});

test('of a filled workbook only the beginnings are read', async () => {
  const { workbook } = fakeWorkbook({ Jobs: [['Hose']] }, { sheet: 'Jobs', address: 'A1' });
  const used = async () => {
    throw new Error('read to its end');
  };
  expect(await isBlankWorkbook({ ...workbook, used })).toBe(false);
});
