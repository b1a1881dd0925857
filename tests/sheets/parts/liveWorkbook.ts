import { catalogueFromCells } from '../../../src/cells/catalogueFromCells';
import { callsCatalogue, catalogueReferences } from '../../../src/workbook/catalogueFormula';
import { addressOf, blockOf, overlap, type Block } from '../../../src/workbook/a1';
import { sheetOfChange } from '../../../src/workbook/sheetOfChange';
import type { CellValue, Change, RangeAddress, RangeContent, SheetLayout, Workbook } from '../../../src/workbook/workbook';

type Cell = { value: string | number | boolean; formula: string; format: string };

export type Rows = readonly (readonly (string | number | boolean | null | { readonly formula: string })[])[];

/**
 * A workbook in memory that really changes: batches are checked first and then written whole, texts stay texts, formulas are never run
 * except CATALOGUE, which gives its handle.
 */
export class LiveWorkbook implements Workbook {
  readonly host = 'try-out' as const;
  readonly cells = new Map<string, Map<string, Cell>>();
  readonly defined = new Map<string, RangeAddress>();
  readonly written: (readonly Change[])[] = [];
  /** Called before each batch; what it throws is what the host says no with. */
  beforeWrite: (changes: readonly Change[], turn: number) => void = () => {};
  /** Zero-based numbers of hidden rows, and addresses of merged cells, by sheet. */
  readonly hiddenRows: Record<string, readonly number[]> = {};
  readonly merges: Record<string, readonly string[]> = {};
  /** Texts remembered with the workbook. */
  readonly remembered = new Map<string, string>();
  private readonly listeners = new Set<() => void>();
  /** An object, so that a view of this workbook selects in it and not in itself. */
  private readonly chosen = { at: { sheet: '', address: 'A1' } as RangeAddress };

  constructor(sheets: Readonly<Record<string, Rows>>, names: Readonly<Record<string, RangeAddress>> = {}) {
    for (const [sheet, rows] of Object.entries(sheets)) {
      this.cells.set(sheet, new Map());
      rows.forEach((row, r) =>
        row.forEach((cell, c) => {
          if (cell === null || cell === '') return;
          if (typeof cell === 'object') this.put(sheet, r, c, { value: '', formula: cell.formula });
          else this.put(sheet, r, c, { value: cell });
        }),
      );
    }
    for (const [name, at] of Object.entries(names)) this.defined.set(name, at);
    this.chosen.at = { sheet: Object.keys(sheets)[0] ?? 'Sheet1', address: 'A1' };
  }

  private put(sheet: string, row: number, column: number, cell: Partial<Cell>): void {
    const key = `${row},${column}`;
    const old = this.sheet(sheet).get(key) ?? { value: '', formula: '', format: 'General' };
    this.sheet(sheet).set(key, { ...old, ...cell });
  }

  private sheet(name: string): Map<string, Cell> {
    const found = this.cells.get(name);
    if (!found) throw new Error(`there is no sheet ${name}`);
    return found;
  }

  private usedBlock(sheet: string): Block | undefined {
    const places = [...this.sheet(sheet)]
      .filter(([, { value, formula }]) => value !== '' || formula !== '')
      .map(([key]) => key.split(',').map(Number) as [number, number]);
    if (places.length === 0) return undefined;
    const [rows, columns] = [places.map(([row]) => row), places.map(([, column]) => column)];
    const extreme = (numbers: number[], pick: (a: number, b: number) => number) => numbers.reduce((a, b) => pick(a, b));
    const [row, column] = [extreme(rows, Math.min), extreme(columns, Math.min)];
    return {
      row,
      column,
      rows: extreme(rows, Math.max) - row + 1,
      columns: extreme(columns, Math.max) - column + 1,
    };
  }

  private valueOf({ value, formula }: Cell, sheet: string): CellValue {
    if (!callsCatalogue(formula)) return formula === '' ? value : `shown by ${formula}`;
    try {
      const tables = catalogueReferences(formula, sheet)!.map(reference =>
        reference?.kind === 'range' ? this.content(reference).values.map(row => [...row]) : null,
      );
      return catalogueFromCells(tables as never).handle;
    } catch (error) {
      return { error: '#VALUE!', sentence: (error as Error).message };
    }
  }

  private content({ sheet, address }: RangeAddress): RangeContent {
    const asked = blockOf(address);
    if (!asked) throw new Error(`"${address}" is no range`);
    const used = this.usedBlock(sheet);
    const end = (start: number, size: number, usedEnd: number) => Math.max(start, Math.min(start + size - 1, usedEnd));
    const block = {
      row: asked.row,
      column: asked.column,
      rows: end(asked.row, asked.rows, used ? used.row + used.rows - 1 : 0) - asked.row + 1,
      columns: end(asked.column, asked.columns, used ? used.column + used.columns - 1 : 0) - asked.column + 1,
    };
    const table = <T>(pick: (cell: Cell) => T): T[][] =>
      Array.from({ length: block.rows }, (_, r) =>
        Array.from({ length: block.columns }, (__, c) =>
          pick(this.sheet(sheet).get(`${block.row + r},${block.column + c}`) ?? { value: '', formula: '', format: 'General' }),
        ),
      );
    return {
      sheet,
      address: addressOf(block),
      row: block.row,
      column: block.column,
      values: table(cell => this.valueOf(cell, sheet)),
      formulas: table(cell => cell.formula),
      formats: table(cell => cell.format),
    };
  }

  async sheets() {
    return [...this.cells.keys()];
  }
  async selection() {
    return this.content(this.chosen.at);
  }
  onSelection(listener: () => void) {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
  async read(ranges: readonly RangeAddress[]) {
    return ranges.map(range => this.content(range));
  }
  async used(sheet: string) {
    const block = this.usedBlock(sheet);
    return block && this.content({ sheet, address: addressOf(block) });
  }
  async tables(sheet: string) {
    this.sheet(sheet);
    return [];
  }
  async layout(sheet: string): Promise<SheetLayout> {
    this.sheet(sheet);
    const merges = (this.merges[sheet] ?? []).map(address => blockOf(address)!);
    return { hiddenRows: new Set(this.hiddenRows[sheet]), hiddenColumns: new Set(), isHidden: false, merges };
  }
  async recall(key: string) {
    return this.remembered.get(key);
  }
  async remember(key: string, text: string | undefined) {
    if (text === undefined) this.remembered.delete(key);
    else this.remembered.set(key, text);
  }
  /** Blocks that a formula fills, by sheet; the first cell is the formula's. */
  readonly spills: { sheet: string; address: string }[] = [];
  async spillParent(cell: RangeAddress) {
    const at = blockOf(cell.address)!;
    const spill = this.spills.find(each => each.sheet === cell.sheet && overlap(blockOf(each.address)!, at));
    const own = spill && addressOf({ ...blockOf(spill.address)!, rows: 1, columns: 1 });
    return spill && own !== cell.address ? { sheet: cell.sheet, address: own! } : undefined;
  }
  async names() {
    return [...this.defined].map(([name, at]) => ({ name, at })).filter(({ at }) => this.cells.has(at.sheet));
  }
  async select(at: RangeAddress) {
    this.sheet(at.sheet);
    this.chosen.at = at;
    this.tell();
  }
  async reenterUnknownNames() {
    return 0;
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }

  private check(changes: readonly Change[]): void {
    const sheets = new Set(this.cells.keys());
    for (const change of changes) {
      if (change.kind === 'addSheet') {
        if ([...sheets].some(name => name.toLowerCase() === change.sheet.toLowerCase()))
          throw new Error(`sheet ${change.sheet} is there`);
        if (change.sheet.length > 31) throw new Error(`the name ${change.sheet} is too long`);
        sheets.add(change.sheet);
        continue;
      }
      const sheet = sheetOfChange(change);
      if (!sheets.has(sheet)) throw new Error(`there is no sheet ${sheet}`);
      const cells = change.kind === 'values' ? change.values : change.kind === 'formulas' ? change.formulas : undefined;
      const block = 'at' in change ? blockOf(change.at.address) : undefined;
      if (cells && (cells.length !== block!.rows || cells.some(row => row.length !== block!.columns)))
        throw new Error(`${sheet}: wrong shape`);
    }
  }

  async write(changes: readonly Change[]): Promise<void> {
    this.check(changes);
    this.beforeWrite(changes, this.written.length);
    this.written.push(changes);
    for (const change of changes) this.apply(change);
    this.tell();
  }

  private apply(change: Change): void {
    if (change.kind === 'addSheet') return void this.cells.set(change.sheet, new Map());
    if (change.kind === 'removeSheet') return void this.cells.delete(change.sheet);
    if (change.kind === 'name') return void this.defined.set(change.name, change.refersTo);
    if (change.kind === 'style' || change.kind === 'page' || change.kind === 'chart' || change.kind === 'picture') return;
    const block = blockOf(change.at.address)!;
    for (let r = 0; r < block.rows; r++) {
      for (let c = 0; c < block.columns; c++) {
        const [row, column] = [block.row + r, block.column + c];
        if (change.kind === 'format') this.put(change.at.sheet, row, column, { format: change.numberFormat });
        else if (change.kind === 'values') this.put(change.at.sheet, row, column, { value: change.values[r]![c]!, formula: '' });
        else this.put(change.at.sheet, row, column, { value: '', formula: change.formulas[r]![c]! });
      }
    }
  }

  /** Values of a sheet's used part, for comparing. */
  shown(sheet: string): CellValue[][] | undefined {
    const block = this.usedBlock(sheet);
    return block && this.content({ sheet, address: addressOf(block) }).values.map(row => [...row]);
  }

  formulaAt(sheet: string, address: string): string {
    return this.content({ sheet, address }).formulas[0]![0]!;
  }

  /** All cells of all sheets, for telling whether anything changed. */
  snapshot(): unknown {
    const filled = (cells: Map<string, Cell>) =>
      Object.fromEntries([...cells].filter(([, { value, formula }]) => value !== '' || formula !== ''));
    return Object.fromEntries([...this.cells].map(([sheet, cells]) => [sheet, filled(cells)]));
  }
}
