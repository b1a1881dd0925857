import { writeChanges } from '../../../src/host/excel/writeChanges';
import type { Change, ChartSpec } from '../../../src/workbook/workbook';
import { strictExcel } from './strictExcel';

const chart: ChartSpec = {
  title: 'Deviations',
  across: 'Deviation (mm)',
  up: 'Combination',
  series: [
    { name: 'Larch', x: 'B2:B4', y: 'C2:C4', looks: 'points' },
    { name: 'Zero', x: 'D2:D4', y: 'C2:C4', looks: 'line' },
  ],
};
const changes: readonly Change[] = [{ kind: 'chart', at: { sheet: 'Readings', address: 'F2:N20' }, chart }];
const selected = { sheet: 'Readings', row: 0, column: 0, rows: 1, columns: 1 };
const open = () => strictExcel({ Readings: [['Line', 'x', 'y', 'zero']] }, selected);

test('a chart of the host’s own: one series a range, named, over the block asked for', async () => {
  const excel = open();
  await writeChanges(changes);
  expect(excel.written).toEqual([
    'chart XYScatter of Readings!C2:C4 by Columns',
    'series 0 name = "Larch"',
    'series 0 x Readings!B2:B4',
    'series 0 y Readings!C2:C4',
    'series 1 added Zero',
    'series 1 name = "Zero"',
    'series 1 x Readings!D2:D4',
    'series 1 y Readings!C2:C4',
    'series 1 chartType = "XYScatterLinesNoMarkers"',
    'chart title "Deviations"',
    'chart legend "Bottom"',
    'chart categoryAxis "Deviation (mm)"',
    'chart valueAxis "Combination"',
    'chart over F2 to N20',
  ]);
});

test('a chart that Excel refuses takes neither the cells nor the other charts with it, and is named', async () => {
  const excel = open();
  const far: ChartSpec = { ...chart, title: 'Too far', series: [{ name: 'Far', x: 'B2:B4', y: 'ZZZ2:ZZZ4', looks: 'points' }] };
  const refused: Change = { kind: 'chart', at: { sheet: 'Readings', address: 'F22:N40' }, chart: far };
  const cell: Change = { kind: 'values', at: { sheet: 'Readings', address: 'A2' }, values: [[1]] };
  await expect(writeChanges([refused, ...changes, cell])).rejects.toThrow(
    'Excel could not make the chart "Too far" (Excel did not accept a range or a formula.). All cells are written.',
  );
  expect(excel.written[0]).toBe('values of Readings!A2 = [[1]]');
  expect(excel.written.at(-1)).toBe('chart over F2 to N20');
});
