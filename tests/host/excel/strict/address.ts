import type { Block, Cell } from './batch';

const letters = (column: number): string =>
  (column >= 26 ? letters(Math.floor(column / 26) - 1) : '') + String.fromCharCode(65 + (column % 26));
const name = (row: number, column: number) => `${letters(column)}${row + 1}`;

/** `A1` of a cell, `A1:B3` of more. */
export function addressOf({ row, column, rows, columns }: Block): string {
  const first = name(row, column);
  return rows * columns > 1 ? `${first}:${name(row + rows - 1, column + columns - 1)}` : first;
}

export function blockAt(address: string): Block {
  const [, c1, r1, c2, r2] = /^([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(address)!;
  const number = (text: string) => [...text].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  const [row, column] = [Number(r1) - 1, number(c1!)];
  return { row, column, rows: (r2 ? Number(r2) : Number(r1)) - row, columns: (c2 ? number(c2) : number(c1!)) - column + 1 };
}

/** What stands in a sheet, from A1 on; a sheet with nothing in it has A1. */
export function usedBlock(rows: readonly (readonly Cell[])[] = []): Block {
  return { row: 0, column: 0, rows: Math.max(1, rows.length), columns: Math.max(1, ...rows.map(row => row.length)) };
}

/** The cells that stand in both; undefined = none. */
export function sharedBlock(one: Block, other: Block): Block | undefined {
  const row = Math.max(one.row, other.row);
  const column = Math.max(one.column, other.column);
  const rows = Math.min(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.min(one.column + one.columns, other.column + other.columns) - column;
  return rows > 0 && columns > 0 ? { row, column, rows, columns } : undefined;
}
