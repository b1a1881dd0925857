import { blockAt } from './strict/address';
import type { Batch, Block, Cell, Sheets } from './strict/batch';
import { Book } from './strict/book';
import { guarded } from './strict/guarded';
import { namesOf } from './strict/namesOf';
import { rangeOf } from './strict/rangeOf';
import { excelApi, MOST_REQUEST_BYTES, refusal, refused, structure } from './strict/refusals';
import { settingsOf } from './strict/settingsOf';
import { worksheetOf, worksheetsOf } from './strict/worksheets';

export { excelLayouts } from './strict/layouts';
export { excelSpills } from './strict/rangeOf';
export { answerLimit, excelApi, refusal, structure } from './strict/refusals';
export { excelSettings } from './strict/settingsOf';
export { excelTables } from './strict/tablesOf';

export interface StrictExcel {
  /** How often a batch went to Excel. */
  syncs: number;
  /** What was written, in order, once it was synced. */
  readonly written: string[];
  /** The workbook as it stands. */
  readonly book: Book;
  /** Milliseconds that each batch takes on its way to a slow host. */
  delay: number;
  /** The heaviest request so far, in bytes. */
  heaviest: number;
  /** Before the batch of that number from now on (1 is the next) reaches Excel, somebody else does something in the workbook. */
  meanwhile(batch: number, act: (book: Book) => void): void;
  /** Puts a cell into the workbook, as somebody else would. */
  edit(sheet: string, address: string, cell: Cell): void;
  /**
   * Selects one cell after the other, as a held arrow key does. Excel tells of them once, when it comes to it: those on the way are never
   * heard of, and by then something else may be selected.
   */
  select(sheet: string, ...addresses: readonly string[]): void;
  /** How many listen to events. */
  listeners(): number;
  /** What cells show. */
  shown(sheet: string, address: string): unknown[][];
}

/**
 * A strict fake of Excel's object model: nothing can be read before it was loaded and synced, nothing is written before sync,
 * null objects are known only after sync, sheets are looked for at the sync, what is written stands and is read again, a request has the
 * weight that Excel on the web takes, and everything asked for is counted in syncs. Puts itself into the page's `Excel` and `Office`.
 * @param sheets cells by sheet, from A1 on: value, or [formula, value]
 * @param selected sheet and address of the selection
 */
export function strictExcel(sheets: Sheets, selected: Block & { sheet: string }): StrictExcel {
  const book = new Book(sheets);
  const selection = { ...selected };
  const listeners = new Set<Listener>();
  const others = new Map<number, (book: Book) => void>();
  const state: StrictExcel = {
    ...{ syncs: 0, written: [], book, delay: 0, heaviest: 0 },
    meanwhile: (batch, act) => void others.set(state.syncs + batch, act),
    edit: (sheet, address, cell) => {
      const { row, column } = blockAt(address);
      book.put(sheet, row, column, cell);
    },
    select: (sheet, ...addresses) => {
      for (const address of addresses) Object.assign(selection, { sheet, ...blockAt(address) });
      for (const listener of listeners) void listener({});
    },
    listeners: () => listeners.size,
    shown: (sheet, address) => {
      const { row, column, rows, columns } = blockAt(address);
      const shown = (cell: Cell) => (typeof cell === 'object' ? cell[1] : cell);
      return Array.from({ length: rows }, (_, r) =>
        Array.from({ length: columns }, (__, c) => shown(book.cell(sheet, row + r, column + c))),
      );
    },
  };
  const run = async (options: RunOptions, work: (context: unknown) => Promise<unknown>) => {
    const batch = newBatch(book, state.written, options.mergeUndoGroup === true);
    const made = {
      workbook: workbookOf(batch, selection),
      sync: async () => {
        if (state.delay > 0) await new Promise(resolve => setTimeout(resolve, state.delay));
        state.syncs += 1;
        others.get(state.syncs)?.(book);
        state.heaviest = Math.max(state.heaviest, batch.bytes);
        sync(batch);
      },
    };
    // Events are taken away in the context only that they were added in.
    const context = options.previousObjects ?? made;
    Object.assign(made.workbook, eventsOf(batch, listeners, context));
    const result = await work(context);
    await context.sync();
    return result;
  };
  const isSetSupported = (_: string, version: string) => excelApi.supported.includes(version);
  const createWorkbook = async (base64?: string) => {
    if (refusal.of[0]?.test('createWorkbook')) throw refused('refused', refusal.code);
    // Excel takes the file itself, without the address that FileReader puts before it.
    if (base64 !== undefined && !isZip(Buffer.from(base64, 'base64'), base64)) throw refused('no file', 'InvalidArgument');
    state.written.push(`createWorkbook of ${base64 === undefined ? 'nothing' : Buffer.from(base64, 'base64').length} bytes`);
  };
  Object.assign(globalThis, { Excel: { run, createWorkbook }, Office: { context: { requirements: { isSetSupported } } } });
  return state;
}

/** Every .xlsx is a zip archive: its first bytes are `PK`, and base64 has no other signs than its own. */
const isZip = (bytes: Buffer, base64: string) => /^[A-Za-z\d+/]+=*$/.test(base64) && bytes.toString('latin1', 0, 2) === 'PK';

type Listener = (event: object) => Promise<void> | void;
type Context = { readonly workbook: object; sync(): Promise<void> };
type RunOptions = { readonly mergeUndoGroup?: boolean; readonly previousObjects?: Context };

/** The selection event of the workbook: a listener hears it after the sync that added it. */
function eventsOf({ writes }: Batch, listeners: Set<Listener>, context: Context): object {
  const add = (listener: Listener) => {
    writes.push(() => listeners.add(listener));
    return { context, remove: () => writes.push(() => listeners.delete(listener)) };
  };
  return { onSelectionChanged: { add } };
}

/** Events of the sheets, which no test here lets come. */
const SILENT = { add: () => ({ remove: () => undefined }) };

function newBatch(book: Book, written: string[], isGroup: boolean): Batch {
  const writes: (() => void)[] = [];
  const batch: Batch = {
    ...{ book, written, isGroup, writes, pending: [], bytes: 0, clearsUndo: false },
    note: (text, act = () => {}) =>
      writes.push(() => {
        const line = typeof text === 'string' ? text : text();
        if (refusal.of[0]?.test(line)) {
          refusal.of.shift();
          throw refused('refused', refusal.code);
        }
        act();
        written.push(line);
      }),
    worksheet: key => worksheetOf(batch, key),
  };
  return batch;
}

function workbookOf(batch: Batch, selected: Block & { sheet: string }): object {
  return {
    worksheets: Object.assign(worksheetsOf(batch), { onActivated: SILENT, onChanged: SILENT, onCalculated: SILENT }),
    names: namesOf(batch),
    settings: settingsOf(batch),
    protection: guarded(batch.pending, () => ({ ...structure }), {}),
    getSelectedRange: () => rangeOf(batch, selected.sheet, () => selected),
    getActiveCell: () => rangeOf(batch, selected.sheet, () => ({ ...selected, rows: 1, columns: 1 })),
  };
}

/** Reads what was asked for, then writes; what is refused ends the batch, and what came before it stands. Each batch is a step of undo. */
function sync(batch: Batch): void {
  const { book, pending, writes, written } = batch;
  const before = written.length;
  const bytes = batch.bytes;
  batch.bytes = 0;
  if (bytes > MOST_REQUEST_BYTES) {
    writes.length = 0;
    throw refused('too large', 'RequestPayloadSizeLimitExceeded');
  }
  for (const load of pending.splice(0)) load.__load();
  try {
    for (const write of writes.splice(0)) write();
  } finally {
    if (written.length > before) book.undoSteps.push(written.slice(before));
    if (batch.clearsUndo) book.undoSteps.length = 0;
    batch.clearsUndo = false;
  }
}
