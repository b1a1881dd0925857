import type { ChartSeries, ChartSpec } from '../workbook';

const TYPES: Readonly<Record<ChartSeries['looks'], 'XYScatter' | 'XYScatterLines' | 'XYScatterLinesNoMarkers'>> = {
  points: 'XYScatter',
  line: 'XYScatterLinesNoMarkers',
  'points and line': 'XYScatterLines',
};

/**
 * Puts a chart over a block of a sheet, where this Excel can make one series by series (ExcelApi 1.7).
 * @param address block the chart covers
 */
export function addChart(worksheet: Excel.Worksheet, address: string, { title, across, up, series }: ChartSpec): void {
  const [first] = series;
  if (!first || !Office.context.requirements.isSetSupported('ExcelApi', '1.7')) return;
  // Excel makes the first series itself, of the range that it is given.
  const chart = worksheet.charts.add(TYPES[first.looks], worksheet.getRange(first.y), 'Columns');
  series.forEach(({ name, x, y, looks }, index) => {
    const made = index === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
    made.name = name;
    made.chartType = TYPES[looks];
    made.setXAxisValues(worksheet.getRange(x));
    made.setValues(worksheet.getRange(y));
  });
  chart.title.text = title;
  chart.legend.position = 'Bottom';
  if (across) chart.axes.categoryAxis.title.text = across;
  if (up) chart.axes.valueAxis.title.text = up;
  const [topLeft = address, bottomRight = topLeft] = address.split(':');
  chart.setPosition(topLeft, bottomRight);
}
