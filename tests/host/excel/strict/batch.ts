import type { Book } from './book';

export interface Loaded {
  __load(): void;
}

/** A cell: its value, or [formula, value]. */
export type Cell = string | number | readonly [string, string | number];

/** Cells by sheet, from A1 on. */
export type Sheets = Readonly<Record<string, readonly (readonly Cell[])[]>>;

export interface Block {
  row: number;
  column: number;
  rows: number;
  columns: number;
}

/** What one `Excel.run` asked for and has not been given yet. */
export interface Batch {
  readonly book: Book;
  readonly pending: Loaded[];
  readonly writes: (() => void)[];
  /** What was written, in order, once it was synced. */
  readonly written: string[];
  /** Whether all of it is to be one step of undo. */
  readonly isGroup: boolean;
  /** Bytes of what waits to be sent. */
  bytes: number;
  /** Whether something was done that Excel's undo does not know, and that empties it. */
  clearsUndo: boolean;
  /** At the next sync does something, unless the line is refused, and writes the line into `written`; a function is asked for it then. */
  note(text: string | (() => string), act?: () => void): void;
  /** A sheet by its name or id. */
  worksheet(key: string): any;
}
