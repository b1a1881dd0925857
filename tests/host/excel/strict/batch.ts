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
  readonly sheets: Sheets;
  readonly pending: Loaded[];
  readonly writes: (() => void)[];
  /** What was written, in order, once it was synced. */
  readonly written: string[];
  /** Whether all of it is to be one step of undo. */
  readonly isGroup: boolean;
  /** Writes a line into `written` at the next sync. */
  note(text: string): void;
  worksheet(name: string): any;
}
