import { TradeError } from '../core/tradeError';
import { cellContent, IncomingError } from './cellContent';
import { passedOn } from './cellError';
import type { Column } from './columns';
import type { CellReader, FilledCell } from './readers';
import { cellsOfArgument, type Cells } from './singles';

type Values<C extends readonly Column<unknown>[]> = { [K in keyof C]: C[K] extends Column<infer T> ? T : never };

function inRow(error: unknown, row: number): unknown {
  if (!(error instanceof TradeError)) return error;
  return new TradeError(error.code, `${error.argument} in row ${row + 1}`, error.received, error.advice);
}

function requireEqualHeights(columns: readonly Column<unknown>[]): void {
  const [first] = columns;
  const other = columns.find(column => column.height !== first!.height);
  if (!other) return;
  const received = `${first!.label} has ${first!.height} rows, ${other.label} has ${other.height}`;
  throw new TradeError('shape', '', received, 'give columns of the same number of rows');
}

/**
 * Rows of a list, for functions that answer the list as a whole. Rows that are wholly blank are skipped, and so are rows of zeros,
 * which some hosts make of them (no name and no reading is 0); the first error met, one that came in or one of our own (it then names the
 * row), is thrown.
 * @param required columns of equal height
 * @param optional columns of that height, or single values that hold for the whole list
 */
export function listRows<const R extends readonly Column<any>[], const O extends readonly Column<any>[]>(
  required: R,
  optional: O,
): [...Values<R>, ...Values<O>][] {
  requireEqualHeights([...required, ...optional.filter(column => column.height > 1)]);
  const columns = [...required, ...optional];
  const filled = required.concat(optional.filter(column => column.height > 1));
  const rows: unknown[][] = [];
  for (let row = 0; row < required[0]!.height; row += 1) {
    if (filled.every(column => column.isBlankOrZero(row))) continue;
    const values = columns.map(column => {
      const incoming = column.errorAt(row);
      if (incoming) throw passedOn(incoming, `${column.label} in row ${row + 1}`);
      try {
        return column.at(row);
      } catch (error) {
        throw inRow(error, row);
      }
    });
    rows.push(values);
  }
  return rows as [...Values<R>, ...Values<O>][];
}

/**
 * A block of equal rows, read whole. Rows that are wholly blank are skipped; the first error met is thrown and names its row.
 * @returns the rows that are filled in
 */
export function listBlock<T>(label: string, cells: Cells, read: CellReader<T>): T[][] {
  const rows: T[][] = [];
  cellsOfArgument(cells).forEach((cellsOfRow, row) => {
    const contents = cellsOfRow.map(cellContent);
    if (contents.every(cell => cell === null)) return;
    const name = `${label} in row ${row + 1}`;
    rows.push(
      contents.map(cell => {
        if (cell instanceof IncomingError) throw passedOn(cell, name);
        if (cell === null) throw new TradeError('blank', name, 'has a blank', 'fill in the whole row, or clear it');
        return read(cell as FilledCell, name);
      }),
    );
  });
  return rows;
}
