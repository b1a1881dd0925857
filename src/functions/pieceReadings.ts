import { TradeError } from '../core/tradeError';
import type { Decimal } from '../core/units/decimal';
import { cellContent, IncomingError } from '../cells/cellContent';
import { passedOn } from '../cells/cellError';
import { number } from '../cells/readers';
import { cellsOfArgument, type Cells } from '../cells/singles';

const read = number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true, hint: 'enter the caliper reading' });

/**
 * All readings of one piece, in a block of any shape. Blank cells are passed over, and so are rows that a host delivers as zeros for blanks.
 * @throws TradeError that names the row of a 0 among readings, or of what is no reading; the cell error of the first error value that came in
 */
export function pieceReadings(cells: Cells): Decimal[] {
  return cellsOfArgument(cells).flatMap((row, index) => {
    const contents = row.map(cellContent);
    const label = `reading in row ${index + 1}`;
    if (contents.every(cell => cell === null || cell === 0)) return [];
    return contents.flatMap(cell => {
      if (cell instanceof IncomingError) throw passedOn(cell, label);
      if (cell === 0) throw new TradeError('blank', label, 'is blank or zero', 'take the reading again, or clear the cell');
      return cell === null ? [] : [read(cell, label)];
    });
  });
}
