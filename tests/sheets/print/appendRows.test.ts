import { appendRows } from '../../../src/sheets/print/appendRows';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const growth = (rows: readonly (readonly (string | number)[])[]) => ({
  sheet: 'Log',
  columns: [
    { heading: 'Date', width: 60, format: 'yyyy-mm-dd' },
    { heading: 'Machine', width: 60 },
    { heading: 'Turns', width: 60 },
  ],
  rows,
});

async function after(
  sheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>>,
  rows: readonly (readonly (string | number)[])[],
) {
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'A1' });
  const exists = (await workbook.sheets()).includes('Log');
  const appended = appendRows(growth(rows), exists ? await workbook.used('Log') : undefined, exists);
  await workbook.write(appended.changes);
  const filled = (await workbook.used('Log'))!.values;
  await workbook.write(appended.undo);
  return { appended, filled, undone: (await workbook.used('Log'))!.values };
}

test('a sheet that is not there is made with its headings', async () => {
  const { appended, filled, undone } = await after({ Jobs: [['x']] }, [[45000, 'Gate', 0.5]]);
  expect(appended).toMatchObject({ row: 2, isNewSheet: true });
  expect(filled).toEqual([
    ['Date', 'Machine', 'Turns'],
    [45000, 'Gate', 0.5],
  ]);
  expect(undone.flat().every(cell => cell === '')).toBe(true);
});

test('rows go under what stands, whatever the order of the headings; a missing heading is added on the right', async () => {
  const standing = [['My log'], ['Machine', 'Mine', 'date'], ['Gate', 'keep', 44000]];
  const { appended, filled, undone } = await after({ Jobs: [['x']], Log: standing }, [[45000, 'Van', -0.25]]);
  expect(appended).toMatchObject({ row: 4, isNewSheet: false });
  expect(filled).toEqual([
    ['My log', '', '', ''],
    ['Machine', 'Mine', 'date', 'Turns'],
    ['Gate', 'keep', 44000, ''],
    ['Van', '', 45000, -0.25],
  ]);
  expect(undone.slice(0, 3).map(row => row.slice(0, 3))).toEqual(filled.slice(0, 3).map(row => row.slice(0, 3)));
  expect(undone.flat()).not.toContain('Turns');
});

test('a sheet that holds something else is not touched', async () => {
  await expect(after({ Jobs: [['x']], Log: [['Shopping', 'list']] }, [[45000, 'Van', 1]])).rejects.toThrow(
    /holds something else/,
  );
});

test.each([
  ['a few columns are printed on one page’s width', 3, { fitWidth: true }],
  // 40 columns of 60 points are 2400; Letter lying, the narrower paper, is 792 wide.
  // Nine points at least, of the sheet's eleven: 9/11 = 82 %.
  [
    'forty columns on several pages, each with the first column, at a size that can be read',
    40,
    { scale: 82, titleColumns: 'A:A' },
  ],
])('%s', (_, count, page) => {
  const columns = Array.from({ length: count }, (__, at) => ({ heading: `Column ${at}`, width: 60 }));
  const { changes } = appendRows({ sheet: 'Log', columns, rows: [] }, undefined, false);
  expect(changes.find(({ kind }) => kind === 'page')).toEqual({
    kind: 'page',
    sheet: 'Log',
    page: { orientation: 'landscape', margin: 18, titleRows: '1:1', ...page },
  });
});

test('columns get their widths before their headings, to which a host fits the row when they are wrapped', () => {
  const { changes } = appendRows(growth([]), undefined, false);
  const kinds = changes.map(change =>
    change.kind === 'style' && change.style.columnWidth !== undefined ? 'width' : change.kind,
  );
  expect(kinds).toEqual(['addSheet', 'width', 'width', 'width', 'values', 'style', 'page']);
});

test.each<[string, (string | number)[][], string]>([
  ['a new sheet', [], 'A2:A3'],
  [
    'a sheet that stands, under its heading',
    [
      ['Machine', 'Date', 'Turns'],
      ['Van', 44000, 1],
      ['Van', 44001, 1],
    ],
    'B4:B5',
  ],
])('dates look like dates on %s', async (_, standing, address) => {
  const { workbook } = fakeWorkbook({ Log: standing }, { sheet: 'Log', address: 'A1' });
  const rows = [
    [45000, 'Gate', 0.5],
    [45001, 'Gate', 0.5],
  ];
  const { changes } = appendRows(growth(rows), await workbook.used('Log'), true);
  expect(changes.filter(({ kind }) => kind === 'format')).toEqual([
    { kind: 'format', at: { sheet: 'Log', address }, numberFormat: 'yyyy-mm-dd' },
  ]);
});
