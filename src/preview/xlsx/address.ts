/** A block of cells, zero-based, ends included. */
export interface CellBlock {
  readonly startRow: number;
  readonly startColumn: number;
  readonly endRow: number;
  readonly endColumn: number;
}

/** Letters of a zero-based column: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26);
  return (rest > 0 ? columnLetters(rest - 1) : '') + String.fromCharCode(65 + (column % 26));
}

/** A1-style address of a zero-based cell. */
export function cellAddress(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** A1-style address of a block: `B2:F20`, or `C7` for one cell. */
export function blockAddress(block: CellBlock): string {
  const first = cellAddress(block.startRow, block.startColumn);
  const last = cellAddress(block.endRow, block.endColumn);
  return first === last ? first : `${first}:${last}`;
}

const CORNER = /^\$?([A-Z]{1,3})\$?([0-9]{1,7})$/i;

function corner(text: string): { row: number; column: number } | undefined {
  const match = CORNER.exec(text.trim());
  if (!match || Number(match[2]) < 1) return undefined;
  const column = [...match[1]!.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(match[2]) - 1, column };
}

/** The block of an A1-style address (dollars allowed, no sheet); undefined where it is none. */
export function blockOf(address: string): CellBlock | undefined {
  const [from, to, ...more] = address.split(':').map(corner);
  const last = address.includes(':') ? to : from;
  if (!from || !last || more.length > 0) return undefined;
  return {
    startRow: Math.min(from.row, last.row),
    startColumn: Math.min(from.column, last.column),
    endRow: Math.max(from.row, last.row),
    endColumn: Math.max(from.column, last.column),
  };
}
