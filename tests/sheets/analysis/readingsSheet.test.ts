import { blockOf } from '../../../src/workbook/a1';
import type { CellValue, Change } from '../../../src/workbook/workbook';
import { analysisOf } from '../../../src/sheets/analysis/analysisOf';
import { NO_OPTIONS } from '../../../src/sheets/crimps/crimpReadOptions';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { readingsSheet } from '../../../src/sheets/analysis/readingsSheet';
import { sheetContent } from '../table/sheetContent';
import { sampleSheets } from './sampleSheet';

/** The new sheet's cells by zero-based row and column, as its changes leave them. */
function cellsOf(changes: readonly Change[]) {
  const cells = new Map<string, string | number | boolean>();
  for (const change of changes) {
    if (change.kind !== 'values') continue;
    const { row, column } = blockOf(change.at.address)!;
    change.values.forEach((values, r) => values.forEach((value, c) => cells.set(`${row + r},${column + c}`, value)));
  }
  return cells;
}

async function write(sheet: string) {
  const book = await sampleSheets('measurement-book.xlsx');
  const used = sheetContent(book[sheet] as CellValue[][], sheet);
  const analysed = analysisOf(crimpSheetOf({ used }, blockOf('A8')!), NO_OPTIONS);
  const changes = readingsSheet('Readings', analysed, {
    source: `Sheet ${sheet}`,
    today: '2026-10-12',
  });
  return { changes, cells: cellsOf(changes) };
}

const columnOf = (cells: ReadonlyMap<string, unknown>, address: string) => {
  const { row, column, rows } = blockOf(address)!;
  return Array.from({ length: rows }, (_, r) => cells.get(`${row + r},${column}`));
};

test('counts, finding and every crimp stand on the sheet as values', async () => {
  const { cells } = await write('Week 39');
  const values = [...cells.values()];
  expect(values).toContain('Sheet Week 39; 30 crimps; written 2026-10-12.');
  expect(values.some(value => /^Only Larch DN 16 with 24° cone is off, 0\.17 mm large/.test(String(value)))).toBe(true);
  // Once among the counts, once a crimp in the list of crimps, and once a crimp in that over time.
  expect(values.filter(value => value === 'LOOSE')).toHaveLength(1 + 2 * 6);
  expect(values.filter(value => value === 'OWN SETTING')).toHaveLength(1);
});

test('charts point at their numbers: x and y of one length, every cell a number', async () => {
  const { changes, cells } = await write('Week 40');
  const charts = changes.flatMap(change => (change.kind === 'chart' ? [change] : []));
  expect(charts.map(({ chart }) => chart.title)).toEqual([
    'All crimps: deviations by combination',
    'All crimps: deviations over time',
    'All crimps: deviations by die',
    'All crimps: individual chart',
    'All crimps: moving range chart',
  ]);
  for (const { chart } of charts) {
    for (const { x, y } of chart.series) {
      const [across, up] = [columnOf(cells, x), columnOf(cells, y)];
      expect(across).toHaveLength(up.length);
      expect([...across, ...up].every(value => typeof value === 'number')).toBe(true);
    }
  }
  const [strips] = charts;
  expect(columnOf(cells, strips!.chart.series[0]!.x)).toHaveLength(30);
  expect(strips!.chart.series.map(({ name }) => name)).toEqual([
    'Crimps',
    'Zero',
    'Lower tolerance',
    'Upper tolerance',
    'Machine',
  ]);
  expect(columnOf(cells, strips!.chart.series[2]!.x)).toEqual([-0.12, -0.12]);
});

test('charts do not cover each other or the tables', async () => {
  const { changes } = await write('Week 40');
  const blocks = changes.flatMap(change => (change.kind === 'chart' ? [blockOf(change.at.address)!] : []));
  const widest = Math.max(
    ...changes
      .flatMap(change => (change.kind === 'values' ? [blockOf(change.at.address)!] : []))
      .map(({ column, columns }) => column + columns),
  );
  blocks.forEach((block, index) => {
    expect(block.column).toBeGreaterThanOrEqual(widest);
    const next = blocks[index + 1];
    if (next) expect(next.row).toBeGreaterThanOrEqual(block.row + block.rows);
  });
});
