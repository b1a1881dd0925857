import type { MeasureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import { pickedRows } from '../table/pickedRows';
import { NothingToQuote } from '../catalogue/nothingToQuote';
import { jobTable, readQuoteLines, type QuoteLines } from './quoteLine';

/**
 * The selected job lines: selected rows are a choice, one cell stands for the whole table around it.
 * @throws NothingToQuote where there is no job table, or no line that can be used
 */
export async function pickedLines(workbook: Workbook, unit: MeasureUnit): Promise<QuoteLines> {
  const picked = await pickedRows(workbook);
  const table = jobTable(picked.content, picked.near) ?? jobTable(picked.content);
  if (!table) {
    throw new NothingToQuote(
      `Sheet ${picked.sheet} has no table with the columns Hose, Fitting A, Fitting B, Overall length and Quantity. Select your job lines, or one cell of the job table.`,
    );
  }
  const read = readQuoteLines(table, unit, picked.rows);
  if (read.lines.length > 0) return read;
  const why = read.problems.map(({ row, sentence }) => `row ${row}: ${sentence}`).join('; ');
  throw new NothingToQuote(`No line of sheet ${picked.sheet} can be used${why ? `: ${why}` : ''}.`);
}
