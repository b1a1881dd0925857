import { nameOfCell, type SheetCell } from '../../cells/sheetCell';

const DITTO = /^(?:["″”“〃]|''|[-–—] ?["″”“〃] ?[-–—]|ditto|dto\.?|do\.|idem|same|same as above|as above)$/i;

/** The longest of these, with a blank or two. */
const LONGEST = 16;

/** A mark that stands for what is written in the cell above it. */
export const isDitto = (cell: SheetCell): boolean =>
  typeof cell === 'string' && cell.length <= LONGEST && DITTO.test(nameOfCell(cell));
