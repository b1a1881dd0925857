import { nameOfCell, type SheetCell } from '../../cells/sheetCell';

const DITTO = /^(?:["″”“〃]|''|[-–—] ?["″”“〃] ?[-–—]|ditto|do\.|idem|same|same as above|as above)$/i;

/** A mark that stands for what is written in the cell above it. */
export const isDitto = (cell: SheetCell): boolean => typeof cell === 'string' && DITTO.test(nameOfCell(cell));
