import { TradeError } from '../core/tradeError';
import { cellContent, IncomingError } from './cellContent';
import { passedOn } from './cellError';
import type { FilledCell } from './readers';
import { cellsOfArgument, type Cells } from './singles';

/**
 * The cells of a block, row by row, blanks (null) included.
 * @throws the cell error of the first error value that came in
 */
export function contentsOf(label: string, cells: Cells): (FilledCell | null)[] {
  return cellsOfArgument(cells)
    .flat()
    .map(cell => {
      const content = cellContent(cell);
      if (content instanceof IncomingError) throw passedOn(content, label);
      return content;
    });
}

/**
 * The cells of a list: one column (or one row) of them, blanks included.
 * @throws TradeError `shape` where it has several rows and columns; as contentsOf
 */
export function list(label: string, cells: Cells): (FilledCell | null)[] {
  const block = cellsOfArgument(cells);
  if (block.length > 1 && block[0]!.length > 1) {
    throw new TradeError('shape', label, `came as ${block.length} × ${block[0]!.length} cells`, 'give one column');
  }
  return contentsOf(label, block);
}
