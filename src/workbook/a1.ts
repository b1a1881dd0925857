/** A block of cells of one sheet by zero-based numbers. */
export interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Size of a sheet in current workbooks. */
export const SHEET_ROWS = 1_048_576;
export const SHEET_COLUMNS = 16_384;

const CORNER = /^\$?([A-Z]{1,3})?\$?(\d{1,7})?$/i;

/** Letters of a zero-based column: 0 → `A`, 26 → `AA`. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26);
  return (rest > 0 ? columnLetters(rest - 1) : '') + String.fromCharCode(65 + (column % 26));
}

function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

function corner(text: string): { row?: number; column?: number } | undefined {
  const [whole, letters, digits] = CORNER.exec(text) ?? [];
  if (!whole) return undefined;
  const row = digits === undefined ? undefined : Number(digits) - 1;
  const column = letters === undefined ? undefined : columnNumber(letters);
  if (row !== undefined && (row < 0 || row >= SHEET_ROWS)) return undefined;
  if (column !== undefined && column >= SHEET_COLUMNS) return undefined;
  return { row, column };
}

/**
 * Reads an A1 address without sheet: `B2`, `$B$2:F20`, whole columns `A:C`, whole rows `3:5`.
 * @returns the block, or undefined where the text is no address
 */
export function blockOf(address: string): Block | undefined {
  const [firstText = '', lastText = firstText, more] = address.trim().split(':');
  const first = corner(firstText);
  const last = corner(lastText);
  if (!first || !last || more !== undefined) return undefined;
  if ((first.row === undefined) !== (last.row === undefined) || (first.column === undefined) !== (last.column === undefined))
    return undefined;
  if (first.row === undefined && first.column === undefined) return undefined;
  if (!address.includes(':') && (first.row === undefined || first.column === undefined)) return undefined;
  const [top, bottom] = [first.row ?? 0, last.row ?? SHEET_ROWS - 1].sort((a, b) => a - b) as [number, number];
  const [left, right] = [first.column ?? 0, last.column ?? SHEET_COLUMNS - 1].sort((a, b) => a - b) as [number, number];
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** A block as an A1 address without dollars: `B2:F20`, a single cell `C7`. */
export function addressOf({ row, column, rows, columns }: Block): string {
  const first = `${columnLetters(column)}${row + 1}`;
  return rows === 1 && columns === 1 ? first : `${first}:${columnLetters(column + columns - 1)}${row + rows}`;
}

/** A cell by zero-based numbers of its sheet. */
export interface CellPlace {
  readonly row: number;
  readonly column: number;
}

/** A cell as an A1 address without dollars: `C7`. */
export const cellAddress = ({ row, column }: CellPlace): string => addressOf({ row, column, rows: 1, columns: 1 });

/** The part two blocks share; undefined where they do not meet. */
export function overlap(a: Block, b: Block): Block | undefined {
  const row = Math.max(a.row, b.row);
  const column = Math.max(a.column, b.column);
  const rows = Math.min(a.row + a.rows, b.row + b.rows) - row;
  const columns = Math.min(a.column + a.columns, b.column + b.columns) - column;
  return rows > 0 && columns > 0 ? { row, column, rows, columns } : undefined;
}

/** A sheet's name as it stands in a formula: quoted where it has to be. */
export function sheetInFormula(sheet: string): string {
  const plain = /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(sheet) && blockOf(sheet) === undefined && !/^R\d*C\d*$/i.test(sheet);
  return plain ? sheet : `'${sheet.replace(/'/g, "''")}'`;
}

/** Splits `'Job sheet'!$A$1:B2` into sheet and address; the sheet is undefined where none is named. */
export function splitReference(reference: string): { readonly sheet: string | undefined; readonly address: string } {
  const mark = reference.lastIndexOf('!');
  if (mark < 0) return { sheet: undefined, address: reference };
  const name = reference.slice(0, mark);
  const sheet = name.startsWith("'") && name.endsWith("'") ? name.slice(1, -1).replace(/''/g, "'") : name;
  return { sheet, address: reference.slice(mark + 1) };
}

/** Address of a block; rows and columns count from 0. */
export function blockAddress(row: number, column: number, rows: number, columns: number): string {
  return addressOf({ row, column, rows, columns });
}

/** A range as people read it: `Job list!B5`. */
export const rangeText = ({ sheet, address }: { readonly sheet: string; readonly address: string }): string =>
  `${sheet}!${address}`;

/** An address as it stands in a formula of another sheet: `'Job list'!$B$5`. */
export function fixedReference({ sheet, address }: { readonly sheet: string; readonly address: string }): string {
  return `${sheetInFormula(sheet)}!${address.replace(/\$/g, '').replace(/([A-Z]+)(\d+)/g, '$$$1$$$2')}`;
}
