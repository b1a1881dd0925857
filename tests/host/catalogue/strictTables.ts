/* A strict fake of the part of Excel's object model that the catalogue is read through: nothing can be read before load and sync, and a
   batch is refused while a cell is being edited. */

type Cell = string | number | boolean | null;

export interface FakeBook {
  readonly sheets: Readonly<Record<string, readonly (readonly Cell[])[]>>;
  /** Formula cells by sheet, as [row, column, formula]. */
  readonly formulas?: Readonly<Record<string, readonly (readonly [number, number, string])[]>>;
  /** Defined names: sheet and block. */
  readonly names?: Readonly<Record<string, readonly [string, Block]>>;
  readonly tables?: Readonly<Record<string, readonly [string, Block]>>;
}

export interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export interface FakeState {
  syncs: number;
  /** Batches that are refused because a cell is being edited. */
  editing: number;
  /** Batches that waited for the end of editing. */
  waited: number;
  /** Most cells in one loaded piece. */
  largest: number;
}

/** An object whose values are known only after they were loaded and the context was synced. */
function guarded(pending: (() => void)[], values: () => Record<string, unknown>, methods: object): any {
  const wanted = new Set<string>();
  let known: Record<string, unknown> | undefined;
  return new Proxy(methods, {
    get(target, property) {
      if (typeof property === 'symbol' || property === 'then') return undefined;
      if (property === 'load') {
        return (names: string) => {
          for (const name of names.split(',')) wanted.add(name.trim().split('/')[0]!);
          pending.push(() => (known = values()));
        };
      }
      if (property in target) return (target as Record<string, unknown>)[property];
      if (!known || !wanted.has(property)) throw new Error(`${property} was read before load and sync`);
      if (known.isNullObject && property !== 'isNullObject') throw new Error(`${property} of a null object`);
      return known[property];
    },
  });
}

const letters = (text: string) => [...text].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

/** Puts the fake into the page as `Excel`; gives what happened to it. */
export function strictTables(book: FakeBook): FakeState {
  const state: FakeState = { syncs: 0, editing: 0, waited: 0, largest: 0 };

  const contextOf = () => {
    const pending: (() => void)[] = [];
    const cellAt = (sheet: string, row: number, column: number): Cell => book.sheets[sheet]?.[row]?.[column] ?? '';
    const formulaAt = (sheet: string, row: number, column: number) =>
      book.formulas?.[sheet]?.find(([r, c]) => r === row && c === column)?.[2] ?? cellAt(sheet, row, column);
    /** Nothing may be asked of it but whether it is there. */
    const nothing = () => guarded(pending, () => ({ isNullObject: true }), {});
    const grid = <T>({ row, column, rows, columns }: Block, pick: (row: number, column: number) => T) =>
      Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (__, c) => pick(row + r, column + c)));

    const usedIn = (sheet: string, { row, column, rows, columns }: Block): Block | undefined => {
      const filled: (readonly [number, number])[] = [];
      book.sheets[sheet]?.forEach((cells, r) =>
        cells.forEach((cell, c) => {
          if (cell === null || cell === '' || r < row || r >= row + rows || c < column || c >= column + columns) return;
          filled.push([r, c]);
        }),
      );
      if (filled.length === 0) return undefined;
      const [top, left] = [Math.min(...filled.map(([r]) => r)), Math.min(...filled.map(([, c]) => c))];
      const [bottom, right] = [Math.max(...filled.map(([r]) => r)), Math.max(...filled.map(([, c]) => c))];
      return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
    };

    const rangeOf = (sheet: string, block: Block): any =>
      guarded(
        pending,
        () => ({
          isNullObject: false,
          rowIndex: block.row,
          rowCount: block.rows,
          columnCount: block.columns,
          get values() {
            state.largest = Math.max(state.largest, block.rows * block.columns);
            return grid(block, (r, c) => cellAt(sheet, r, c) ?? '');
          },
          get valueTypes() {
            return grid(block, (r, c) => (/^#[A-Z/0]+[!?]?$/.test(String(cellAt(sheet, r, c))) ? 'Error' : 'String'));
          },
          get formulas() {
            return grid(block, (r, c) => formulaAt(sheet, r, c));
          },
        }),
        {
          worksheet: guarded(pending, () => ({ name: sheet }), {}),
          getCell: (r: number, c: number) =>
            rangeOf(sheet, { row: block.row + r, column: block.column + c, rows: 1, columns: 1 }),
          getRow: (r: number) => rangeOf(sheet, { ...block, row: block.row + r, rows: 1 }),
          getResizedRange: (r: number, c: number) =>
            rangeOf(sheet, { ...block, rows: block.rows + r, columns: block.columns + c }),
          getUsedRangeOrNullObject: () => {
            const used = usedIn(sheet, block);
            return used ? rangeOf(sheet, used) : nothing();
          },
          getSpecialCellsOrNullObject: () => {
            if (block.rows === whole.rows) throw new Error('Excel on the desktop looks very long through all cells of a sheet');
            const cells = book.formulas?.[sheet] ?? [];
            if (cells.length === 0) return nothing();
            const items = () => cells.map(([row, column]) => loaded(rangeOf(sheet, { row, column, rows: 1, columns: 1 })));
            return guarded(pending, () => ({ isNullObject: false, areas: { items: items() } }), {});
          },
        },
      );
    /** Loaded with its parent: `areas/items/rowCount`. */
    const loaded = (range: any) => {
      range.load('rowCount,columnCount');
      pending.splice(0).forEach(load => load());
      return range;
    };
    const parse = (address: string): Block => {
      const [, c1, r1, c2, r2] = /^([A-Z]+)(\d+):([A-Z]+)(\d+)$/.exec(address)!;
      const row = Number(r1) - 1;
      return { row, column: letters(c1!), rows: Number(r2) - row, columns: letters(c2!) - letters(c1!) + 1 };
    };
    const whole: Block = { row: 0, column: 0, rows: 1_048_576, columns: 16_384 };
    const sheetOf = (name: string) =>
      name in book.sheets
        ? guarded(pending, () => ({ isNullObject: false, name }), {
            getRange: (address?: string) => rangeOf(name, address ? parse(address) : whole),
          })
        : nothing();
    const named = (list: FakeBook['names'], name: string) => {
      const found = Object.entries(list ?? {}).find(([key]) => key.toLowerCase() === name.toLowerCase())?.[1];
      if (!found) return nothing();
      const [sheet, block] = found;
      return guarded(pending, () => ({ isNullObject: false }), {
        getRangeOrNullObject: () => rangeOf(sheet, block),
        getRange: () => rangeOf(sheet, block),
        getDataBodyRange: () => rangeOf(sheet, { ...block, row: block.row + 1, rows: block.rows - 1 }),
      });
    };
    const sheetNames = Object.keys(book.sheets);
    const items = () =>
      sheetNames.map(name => ({
        name,
        getUsedRange: () => rangeOf(name, usedIn(name, whole) ?? { row: 0, column: 0, rows: 1, columns: 1 }),
      }));
    return {
      workbook: {
        worksheets: guarded(pending, () => ({ items: items() }), { getItemOrNullObject: sheetOf }),
        names: { getItemOrNullObject: (name: string) => named(book.names, name) },
        tables: { getItemOrNullObject: (name: string) => named(book.tables, name) },
      },
      sync: async () => {
        state.syncs += 1;
        for (const load of pending.splice(0)) load();
      },
    };
  };

  const run = async (first: unknown, second?: (context: unknown) => Promise<unknown>) => {
    const batch = (second ?? first) as (context: unknown) => Promise<unknown>;
    if (second && (first as { delayForCellEdit?: boolean }).delayForCellEdit) {
      state.waited += 1;
      state.editing = 0;
    } else if (state.editing > 0) {
      throw Object.assign(new Error('a cell is being edited'), { code: 'InvalidOperationInCellEditMode' });
    }
    return batch(contextOf());
  };
  Object.assign(globalThis, { Excel: { run, SpecialCellType: { formulas: 'Formulas' }, RangeValueType: { error: 'Error' } } });
  return state;
}
