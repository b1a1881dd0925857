import { TradeError } from '../core/tradeError';
import { cellOf, type Answer } from './answer';
import { cellErrorOf, passedOn } from './cellError';
import type { Column } from './columns';

type Values<C extends readonly Column<unknown>[]> = { [K in keyof C]: C[K] extends Column<infer T> ? T : never };

function heightOf(columns: readonly Column<unknown>[]): number {
  const tall = columns.filter(column => column.height > 1);
  const height = tall[0]?.height ?? 1;
  const other = tall.find(column => column.height !== height);
  if (other) {
    const advice = 'give columns of the same number of rows, or single values';
    throw new TradeError('shape', '', `${tall[0]!.label} has ${height} rows, ${other.label} has ${other.height}`, advice);
  }
  return height;
}

/**
 * Rows in, rows out: one result row for each row of the arguments; single values are stretched.
 * A row whose readings (without readings: whose first argument) are blank gives a blank row; an error value that came in, or a
 * TradeError of the row, fills that row alone.
 * @param columns the row-wise arguments in order
 * @param width columns of the result
 * @param compute result of one row: one value, or `width` values
 */
export function mapRows<const C extends readonly Column<any>[]>(
  columns: C,
  width: number,
  compute: (...values: Values<C>) => Answer | readonly Answer[],
): any[][] {
  const key = columns.find(column => column.isReadings) ?? columns[0]!;
  const fill = (value: unknown) => Array.from({ length: width }, () => value);

  const rowOf = (row: number): unknown[] => {
    if (key.isBlank(row)) return fill('');
    try {
      const result = compute(...(columns.map(column => column.at(row)) as Values<C>));
      return Array.isArray(result) ? (result as Answer[]).map(cellOf) : [cellOf(result as Answer)];
    } catch (error) {
      // An error value that came in wins over what we found wrong before it; looked for only here, it costs good rows nothing.
      const sender = columns.find(column => column.errorAt(row));
      return fill(sender ? passedOn(sender.errorAt(row)!, sender.label) : cellErrorOf(error));
    }
  };
  const rows: unknown[][] = [];
  const height = heightOf(columns);
  for (let row = 0; row < height; row += 1) rows.push(rowOf(row));
  return rows;
}
