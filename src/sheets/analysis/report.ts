import type { ChartSpec } from '../../workbook/workbook';
import { textLines } from '../print/textLines';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';

/** Number formats of diameters and of deviations, in either unit. */
export const DIAMETER = '0.000';
export const SIGNED_DIAMETER = '+0.000;-0.000;0.000';

const LONGEST_LINE = 120;
/** First column of the charts, and what each covers. */
const CHART_COLUMN = 18;
const CHART_ROWS = 18;
const CHART_COLUMNS = 9;

/** Writes block under block and keeps where the next one begins. */
export class Report {
  row = 0;
  /** Row in which the next chart begins. */
  chartRow = 3;

  constructor(
    readonly writer: SheetWriter,
    readonly unit: 'mm' | 'in',
  ) {}

  /** Sentences, broken so that each line fits the page. */
  lines(...sentences: readonly string[]): void {
    const lines = sentences.flatMap(sentence => (sentence === '' ? [''] : textLines(sentence, LONGEST_LINE)));
    this.writer.values(
      this.row,
      0,
      lines.map(line => [line]),
    );
    this.row += lines.length;
  }

  title(text: string): void {
    this.row += 1;
    this.writer.values(this.row, 0, [[text]]).style(this.row, 0, 1, 1, { bold: true, fontSize: 12 });
    this.row += 1;
  }

  /** A table with headings; gives its first row below them. */
  table(
    headings: readonly string[],
    rows: readonly (readonly WrittenCell[])[],
    formats: Readonly<Record<number, string>>,
  ): number {
    const first = this.row + 1;
    this.writer
      .values(this.row, 0, [headings, ...rows])
      .style(this.row, 0, 1, headings.length, { bold: true, fill: HEAD_FILL, wrap: true })
      .style(this.row, 0, rows.length + 1, headings.length, { border: 'all' });
    for (const [at, format] of Object.entries(formats)) this.writer.format(first, Number(at), rows.length, 1, format);
    this.row += rows.length + 2;
    return first;
  }

  chart(chart: ChartSpec): void {
    this.writer.chart(this.chartRow, CHART_COLUMN, CHART_ROWS, CHART_COLUMNS, chart);
    this.chartRow += CHART_ROWS + 1;
  }
}
