/**
 * A strict fake of Excel's object model: nothing can be read before it was loaded and synced, nothing is written before sync,
 * null objects are known only after sync, and everything asked for is counted in syncs.
 */

type Loaded = { __load(): void };

/** Cells that fit into one answer; Infinity = no limit, as in Excel on the desktop. */
export const answerLimit = { cells: Infinity, code: 'ResponsePayloadSizeLimitExceeded' };

/** Excel tables by sheet; `rows` counts headings and totals, as Excel's own range of a table does. */
export const excelTables: Record<
  string,
  readonly {
    name: string;
    row: number;
    column: number;
    rows: number;
    columns: number;
    showHeaders: boolean;
    showTotals: boolean;
  }[]
> = {};

/** Excel refuses what matches the first of these, then the next; what stood before it in the batch is written, what stands behind it is not. */
export const refusal: { of: RegExp[]; code: string } = { of: [], code: 'AccessDenied' };

/** Whether sheets may be added and removed. */
export const structure = { protected: false };

/** An object whose properties throw until they were loaded and the context synced. */
function guarded<T extends object>(
  pending: Loaded[],
  read: () => Record<string, unknown> | undefined,
  methods: T,
): T & { isNullObject: boolean; load(names: string): void } {
  const wanted = new Set<string>();
  let known: Record<string, unknown> | undefined;
  let synced = false;
  const load = (names: string) => {
    // Too many cells with all that is asked of them do not fit into one answer of Excel on the web.
    if (names.includes('numberFormat') && (methods as { __cells?: () => number }).__cells) {
      pending.push({
        __load: () => {
          if ((methods as unknown as { __cells: () => number }).__cells() <= answerLimit.cells) return;
          throw Object.assign(new Error('too large'), { code: answerLimit.code });
        },
      });
    }
    for (const name of names.split(',')) wanted.add(name.trim().split('/')[0]!);
    pending.push({
      __load: () => {
        known = read();
        synced = true;
      },
    });
  };
  return new Proxy(methods as T & { isNullObject: boolean; load(names: string): void }, {
    get(target, property) {
      if (typeof property === 'symbol' || property === 'then') return undefined;
      if (property === 'load') return load;
      if (property in target) return (target as Record<string, unknown>)[property];
      if (property === 'isNullObject') {
        if (!synced) throw new Error('isNullObject read before sync');
        return known === undefined;
      }
      if (!synced || !wanted.has(property)) throw new Error(`${property} read before load and sync`);
      if (known === undefined) throw new Error(`${property} of a null object`);
      if (!(property in known)) throw new Error(`${property} is not of this object`);
      return known[property];
    },
    set(target, property, value) {
      (target as Record<string | symbol, unknown>)[property] = value;
      return true;
    },
  });
}

export interface StrictExcel {
  /** How often a batch went to Excel. */
  syncs: number;
  /** What was written, in order, once it was synced. */
  readonly written: string[];
}

/**
 * Puts the fake into the page's `Excel` and `Office`.
 * @param sheets cells by sheet, from A1 on: value, or [formula, value]
 * @param selected sheet and address of the selection
 */
export function strictExcel(
  sheets: Readonly<Record<string, readonly (readonly (string | number | readonly [string, string | number])[])[]>>,
  selected: { sheet: string; row: number; column: number; rows: number; columns: number },
): StrictExcel {
  const state: StrictExcel = { syncs: 0, written: [] };
  // A group of undo that deletes a sheet is refused: Microsoft's "Undo support with the Excel JavaScript API" lists the calls.
  let isGroup = false;
  const letters = (column: number): string =>
    (column >= 26 ? letters(Math.floor(column / 26) - 1) : '') + String.fromCharCode(65 + (column % 26));
  const name = (row: number, column: number) => `${letters(column)}${row + 1}`;

  function rangeOf(
    pending: Loaded[],
    writes: (() => void)[],
    sheet: string,
    block: { row: number; column: number; rows: number; columns: number } | undefined,
  ): any {
    const rows = sheets[sheet] ?? [];
    const at = (r: number, c: number) => rows[r]?.[c] ?? '';
    const table = <T>(pick: (cell: ReturnType<typeof at>) => T) =>
      Array.from({ length: block!.rows }, (_, r) =>
        Array.from({ length: block!.columns }, (__, c) => pick(at(block!.row + r, block!.column + c))),
      );
    const value = (cell: ReturnType<typeof at>) => (Array.isArray(cell) ? cell[1] : cell);
    const used = { row: 0, column: 0, rows: Math.max(1, rows.length), columns: Math.max(1, ...rows.map(row => row.length)) };
    const address = () =>
      `${sheet}!${name(block!.row, block!.column)}${block!.rows * block!.columns > 1 ? `:${name(block!.row + block!.rows - 1, block!.column + block!.columns - 1)}` : ''}`;
    const range = guarded(
      pending,
      () =>
        block && {
          address: address(),
          rowIndex: block.row,
          columnIndex: block.column,
          rowCount: block.rows,
          columnCount: block.columns,
          get values() {
            return table(value);
          },
          get valueTypes() {
            return table(cell =>
              /^#[A-Z/0]+[!?]?$/.test(String(value(cell))) ? 'Error' : typeof value(cell) === 'number' ? 'Double' : 'String',
            );
          },
          get formulas() {
            return table(cell => (Array.isArray(cell) ? cell[0] : cell));
          },
          get numberFormat() {
            return table(() => 'General');
          },
          // Columns of 48 and rows of 15 points.
          left: 48 * block.column,
          top: 15 * block.row,
          width: 48 * block.columns,
          height: 15 * block.rows,
        },
      {
        get worksheet() {
          return sheetOf(pending, writes, sheet);
        },
        getIntersectionOrNullObject: () => {
          const row = Math.max(block!.row, used.row);
          const column = Math.max(block!.column, used.column);
          const rowCount = Math.min(block!.row + block!.rows, used.rows) - row;
          const columnCount = Math.min(block!.column + block!.columns, used.columns) - column;
          const shared = rowCount > 0 && columnCount > 0 ? { row, column, rows: rowCount, columns: columnCount } : undefined;
          return rangeOf(pending, writes, sheet, shared);
        },
        getCell: (r: number, c: number) =>
          rangeOf(pending, writes, sheet, { row: block!.row + r, column: block!.column + c, rows: 1, columns: 1 }),
        select: () => writes.push(() => state.written.push(`select ${address()}`)),
        format: { font: {}, fill: {}, borders: bordersOf(writes, block) },
        __address: address,
        __cells: () => (block ? block.rows * block.columns : 0),
      },
    );
    return new Proxy(range, {
      set(_, property, content) {
        writes.push(() => state.written.push(`${String(property)} of ${address()} = ${JSON.stringify(content)}`));
        return true;
      },
    });
  }

  /** As in Excel's older object model, a line between rows (columns) is refused where there is one row (column) only. */
  function bordersOf(writes: (() => void)[], block: { rows: number; columns: number } | undefined): object {
    const getItem = (edge: string) => ({
      set style(style: string) {
        const isMissing =
          (edge === 'InsideHorizontal' && block?.rows === 1) || (edge === 'InsideVertical' && block?.columns === 1);
        if (isMissing) throw Object.assign(new Error(`no ${edge} here`), { code: 'InvalidArgument' });
        writes.push(() => state.written.push(`${edge} ${style}`));
      },
    });
    return { getItem };
  }

  /** Charts can only be made here, never read: whatever is asked for besides is undefined and throws. */
  function chartsOf(writes: (() => void)[]): object {
    const note = (text: string) => writes.push(() => state.written.push(text));
    const seriesOf = (index: number) => ({
      set name(name: string) {
        note(`series ${index} name = ${JSON.stringify(name)}`);
      },
      set chartType(type: string) {
        note(`series ${index} chartType = ${JSON.stringify(type)}`);
      },
      setXAxisValues: (range: { __address(): string }) => note(`series ${index} x ${range.__address()}`),
      setValues: (range: { __address(): string }) => note(`series ${index} y ${range.__address()}`),
    });
    const titled = (what: string, property: string) =>
      Object.defineProperty({}, property, { set: (text: string) => note(`chart ${what} ${JSON.stringify(text)}`) });
    const add = (type: string, range: { __address(): string }, by: string) => {
      // No sheet of Excel is as wide as that.
      writes.push(() => {
        if (range.__address().includes('!ZZZ')) throw Object.assign(new Error('no such range'), { code: 'InvalidArgument' });
      });
      note(`chart ${type} of ${range.__address()} by ${by}`);
      let count = 1;
      return {
        series: {
          getItemAt: (index: number) => seriesOf(index),
          add: (name: string) => {
            note(`series ${count} added ${name}`);
            return seriesOf(count++);
          },
        },
        title: titled('title', 'text'),
        legend: titled('legend', 'position'),
        axes: {
          categoryAxis: { title: titled('categoryAxis', 'text') },
          valueAxis: { title: titled('valueAxis', 'text') },
        },
        setPosition: (from: string, to: string) => note(`chart over ${from} to ${to}`),
      };
    };
    return { add };
  }

  /** Drawings can only be added; every property set on one is noted. */
  function shapesOf(writes: (() => void)[], sheet: string): object {
    const note = (text: string) => writes.push(() => state.written.push(text));
    return {
      addImage: (image: string) => {
        note(`picture ${image} on ${sheet}`);
        return new Proxy(
          {},
          { set: (_, property, value) => (note(`picture ${String(property)} = ${JSON.stringify(value)}`), true) },
        );
      },
    };
  }

  const protectionOf = (sheet: string) => ({ protected: sheet === 'Locked' });

  function sheetOf(pending: Loaded[], writes: (() => void)[], sheet: string): any {
    const exists = () => sheet in sheets || state.written.includes(`add ${sheet}`);
    const parse = (address: string) => {
      const [, c1, r1, c2, r2] = /^([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(address)!;
      const number = (text: string) => [...text].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
      const [row, column] = [Number(r1) - 1, number(c1!)];
      return { row, column, rows: (r2 ? Number(r2) : Number(r1)) - row, columns: (c2 ? number(c2) : number(c1!)) - column + 1 };
    };
    const used = () => ({
      row: 0,
      column: 0,
      rows: Math.max(1, sheets[sheet]!.length),
      columns: Math.max(1, ...sheets[sheet]!.map(row => row.length)),
    });
    return guarded(
      pending,
      () =>
        exists()
          ? { name: sheet, visibility: sheet === 'Hidden' ? 'Hidden' : 'Visible', protection: protectionOf(sheet) }
          : undefined,
      {
        activate: () => writes.push(() => state.written.push(`activate ${sheet}`)),
        delete: () =>
          writes.push(() => {
            if (isGroup) throw Object.assign(new Error('no undo'), { code: 'UndoNotSupported' });
            state.written.push(`delete ${sheet}`);
          }),
        getRange: (address: string) => rangeOf(pending, writes, sheet, parse(address)),
        tables: guarded(
          pending,
          () => ({
            items: (excelTables[sheet] ?? []).map(table =>
              Object.assign(
                guarded(pending, () => ({ ...table }), {}),
                { ...table, getRange: () => rangeOf(pending, writes, sheet, table) },
              ),
            ),
          }),
          {},
        ),
        charts: chartsOf(writes),
        shapes: shapesOf(writes, sheet),
        getUsedRange: () => rangeOf(pending, writes, sheet, used()),
        getUsedRangeOrNullObject: () => rangeOf(pending, writes, sheet, sheets[sheet]!.length > 0 ? used() : undefined),
      },
    );
  }

  const run = async (options: { mergeUndoGroup?: boolean }, batch: (context: unknown) => Promise<unknown>) => {
    isGroup = options.mergeUndoGroup === true;
    const pending: Loaded[] = [];
    const writes: (() => void)[] = [];
    const worksheets = guarded(
      pending,
      () => ({
        items: Object.keys(sheets).map(sheet =>
          Object.assign(sheetOf(pending, writes, sheet), { name: sheet, protection: protectionOf(sheet) }),
        ),
      }),
      {
        getItem: (sheet: string) => {
          if (!(sheet in sheets) && !state.written.includes(`add ${sheet}`)) writes.push(() => void 0);
          return sheetOf(pending, writes, sheet);
        },
        getItemOrNullObject: (sheet: string) => sheetOf(pending, writes, sheet),
        add: (sheet: string) => writes.push(() => state.written.push(`add ${sheet}`)),
      },
    );
    const names = guarded(
      pending,
      () => ({
        items: [
          { name: 'Catalogue', type: 'Range', formula: '=Jobs!$B$1' },
          { name: 'Rate', type: 'Double', formula: '=0.2' },
          { name: 'Copied', type: 'Range', formula: "='Parts (2), o''clock'!$A$1:$C$9" },
          { name: 'Columns', type: 'Range', formula: '=Jobs!$A:$B' },
          { name: 'Grown', type: 'Range', formula: '=OFFSET(Jobs!$A$1,0,0,2,2)' },
          { name: 'Through', type: 'Range', formula: "='Jobs:Empty'!$A$1" },
          { name: 'Elsewhere', type: 'Range', formula: "='[other.xlsx]Jobs'!$A$1" },
        ],
      }),
      {
        add: (defined: string) => writes.push(() => state.written.push(`name ${defined}`)),
        getItemOrNullObject: (defined: string) =>
          guarded(
            pending,
            () => (defined === 'Catalogue' || state.written.includes(`name ${defined}`) ? { name: defined } : undefined),
            { delete: () => writes.push(() => state.written.push(`delete name ${defined}`)) },
          ),
        getItem: (defined: string) => ({
          set formula(formula: string) {
            writes.push(() => state.written.push(`name ${defined} ${formula}`));
          },
        }),
      },
    );
    const context = {
      workbook: {
        worksheets,
        names,
        protection: guarded(pending, () => structure, {}),
        getSelectedRange: () => rangeOf(pending, writes, selected.sheet, selected),
        getActiveCell: () => rangeOf(pending, writes, selected.sheet, { ...selected, rows: 1, columns: 1 }),
      },
      sync: async () => {
        state.syncs += 1;
        for (const load of pending.splice(0)) load.__load();
        for (const write of writes.splice(0)) {
          const before = state.written.length;
          write();
          if (!refusal.of[0]?.test(state.written.slice(before).join(' '))) continue;
          state.written.length = before;
          refusal.of.shift();
          throw Object.assign(new Error('refused'), { code: refusal.code });
        }
      },
    };
    const result = await batch(context);
    await context.sync();
    return result;
  };
  Object.assign(globalThis, { Excel: { run }, Office: { context: { requirements: { isSetSupported: () => false } } } });
  return state;
}
