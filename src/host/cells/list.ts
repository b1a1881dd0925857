import { TradeError } from '../../core/tradeError';
import { cellContent, IncomingError, type CellContent } from './cellContent';
import { passedOn } from './cellError';
import { blockOf, type Cells } from './singles';

/**
 * The cells of a list: one column (or one row) of them, blanks included.
 * @throws TradeError `shape` where it has several rows and columns; the cell error of the first error value that came in
 */
export function list(label: string, cells: Cells): Exclude<CellContent, IncomingError>[] {
  const block = blockOf(cells);
  if (block.length > 1 && block[0]!.length > 1) {
    throw new TradeError('shape', label, `came as ${block.length} × ${block[0]!.length} cells`, 'give one column');
  }
  return block.flat().map(cell => {
    const content = cellContent(cell);
    if (content instanceof IncomingError) throw passedOn(content, label);
    return content;
  });
}
