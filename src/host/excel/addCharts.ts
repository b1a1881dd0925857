import type { Change, ChartSeries, ChartSpec } from '../../workbook/workbook';
import { refusalOf } from './run';
import { errorSentence } from '../../workbook/errorSentence';

type Chart = Extract<Change, { kind: 'chart' }>;

const TYPES: Readonly<Record<ChartSeries['looks'], 'XYScatter' | 'XYScatterLines' | 'XYScatterLinesNoMarkers'>> = {
  points: 'XYScatter',
  line: 'XYScatterLinesNoMarkers',
  'points and line': 'XYScatterLines',
};

/** Puts a chart over a block of a sheet, series by series. */
function addChart(worksheet: Excel.Worksheet, address: string, { title, across, up, series }: ChartSpec): void {
  const [first] = series;
  if (!first) return;
  // Excel makes the first series itself, of the range that it is given.
  const chart = worksheet.charts.add(TYPES[first.looks], worksheet.getRange(first.y), 'Columns');
  series.forEach(({ name, x, y, looks }, index) => {
    const made = index === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
    made.name = name;
    made.setXAxisValues(worksheet.getRange(x));
    made.setValues(worksheet.getRange(y));
    // A series without values is not there yet for Excel, so that it takes its looks last.
    if (looks !== first.looks) made.chartType = TYPES[looks];
  });
  chart.title.text = title;
  chart.legend.position = 'Bottom';
  if (across) chart.axes.categoryAxis.title.text = across;
  if (up) chart.axes.valueAxis.title.text = up;
  const [topLeft = address, bottomRight = topLeft] = address.split(':');
  chart.setPosition(topLeft, bottomRight);
}

/**
 * Adds charts, each in a request of its own: one that Excel refuses takes neither the cells nor the other charts with it.
 * @returns why charts are missing, in words; undefined where all are there
 */
export async function addCharts(context: Excel.RequestContext, charts: readonly Chart[]): Promise<string | undefined> {
  const refused: string[] = [];
  for (const { at, chart } of charts) {
    try {
      addChart(context.workbook.worksheets.getItem(at.sheet), at.address, chart);
      await context.sync();
    } catch (error) {
      const reason = refusalOf(error);
      refused.push(`"${chart.title}" (${errorSentence(reason)})`);
    }
  }
  return refused.length > 0 ? `Excel could not make the chart ${refused.join(', ')}.` : undefined;
}
