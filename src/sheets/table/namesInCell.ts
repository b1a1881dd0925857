import { nameOfCell, type SheetCell } from '../../cells/sheetCell';

/** A cell with its names in one line: a line break parts them as a semicolon does. */
export const listOfCell = (cell: SheetCell): string =>
  nameOfCell(typeof cell === 'string' ? cell.trim().replace(/\s*[;,]?\s*[\r\n]+\s*/g, '; ') : cell);

/** Several names in one cell: `Caliper 3; Gauge 7`, `L70 and L71`. */
export const namesIn = (text: string): readonly string[] =>
  text
    .split(/[;,/+&\r\n]|(?<=\s)and(?=\s)/i)
    .map(each => each.trim())
    .filter(Boolean);
