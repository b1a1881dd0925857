import type { Cell, Sheets } from './batch';
import { refused } from './refusals';

/** A sheet of the workbook: its id stays when people give it another name. */
export interface BookSheet {
  readonly id: string;
  name: string;
  isProtected: boolean;
  readonly rows: Cell[][];
  /** Number formats by row and column (`2,0`); General elsewhere. */
  readonly formats: Map<string, string>;
}

/** The workbook behind the strict fake: what is written stands in it and is read again. */
export class Book {
  readonly sheets: BookSheet[] = [];
  /** Steps that Excel's own undo would take back; a call that has no undo empties it. */
  readonly undoSteps: string[][] = [];
  /** Whether the worksheet functions are registered: a formula of ours shows #NAME? otherwise. */
  knowsOurs = true;
  private made = 0;

  constructor(sheets: Sheets) {
    for (const [name, rows] of Object.entries(sheets)) this.add(name, rows);
  }

  find(key: string): BookSheet | undefined {
    return this.sheets.find(({ id, name }) => id === key || name.toLowerCase() === key.toLowerCase());
  }

  /** @throws ItemNotFound, as Excel says it, where there is no sheet of that name or id */
  sheet(key: string): BookSheet {
    const found = this.find(key);
    if (!found) throw refused(`no sheet ${key}`, 'ItemNotFound');
    return found;
  }

  add(name: string, rows: readonly (readonly Cell[])[] = []): void {
    if (this.find(name)) throw refused(`a sheet ${name} exists`, 'ItemAlreadyExists');
    this.made += 1;
    this.sheets.push({
      id: `{00000000-0000-0000-0000-00000000000${this.made}}`,
      name,
      isProtected: name === 'Locked',
      rows: rows.map(row => [...row]),
      formats: new Map(),
    });
  }

  remove(key: string): void {
    this.sheets.splice(this.sheets.indexOf(this.sheet(key)), 1);
  }

  cell(key: string, row: number, column: number): Cell {
    return this.find(key)?.rows[row]?.[column] ?? '';
  }

  put(key: string, row: number, column: number, cell: Cell): void {
    const { rows } = this.sheet(key);
    while (rows.length <= row) rows.push([]);
    while (rows[row]!.length <= column) rows[row]!.push('');
    rows[row]![column] = cell;
  }

  /** As Excel takes what is typed: a formula, a number, text behind an apostrophe. A formula shows 0, one of ours #NAME? while it is unknown. */
  type(key: string, row: number, column: number, typed: unknown): void {
    const text = String(typed);
    if (typeof typed !== 'string') this.put(key, row, column, typed as number);
    else if (text.startsWith("'")) this.put(key, row, column, text.slice(1));
    else if (!text.startsWith('=')) this.put(key, row, column, text);
    else this.put(key, row, column, [text, /\bHOSE[._]/.test(text) && !this.knowsOurs ? '#NAME?' : 0]);
  }
}
