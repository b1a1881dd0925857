import type { Batch, Block, Sheets } from './strict/batch';
import { guarded } from './strict/guarded';
import { namesOf } from './strict/namesOf';
import { rangeOf } from './strict/rangeOf';
import { excelApi, refusal, refused, structure } from './strict/refusals';
import { settingsOf } from './strict/settingsOf';
import { worksheetOf, worksheetsOf } from './strict/worksheets';

export { excelLayouts } from './strict/layouts';
export { answerLimit, excelApi, refusal, structure } from './strict/refusals';
export { excelSettings } from './strict/settingsOf';
export { excelTables } from './strict/tablesOf';

export interface StrictExcel {
  /** How often a batch went to Excel. */
  syncs: number;
  /** What was written, in order, once it was synced. */
  readonly written: string[];
}

/**
 * A strict fake of Excel's object model: nothing can be read before it was loaded and synced, nothing is written before sync,
 * null objects are known only after sync, and everything asked for is counted in syncs. Puts itself into the page's `Excel`
 * and `Office`.
 * @param sheets cells by sheet, from A1 on: value, or [formula, value]
 * @param selected sheet and address of the selection
 */
export function strictExcel(sheets: Sheets, selected: Block & { sheet: string }): StrictExcel {
  const state: StrictExcel = { syncs: 0, written: [] };
  const run = async (options: { mergeUndoGroup?: boolean }, work: (context: unknown) => Promise<unknown>) => {
    const batch = newBatch(sheets, state.written, options.mergeUndoGroup === true);
    const context = {
      workbook: workbookOf(batch, selected),
      sync: async () => {
        state.syncs += 1;
        sync(batch);
      },
    };
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

function newBatch(sheets: Sheets, written: string[], isGroup: boolean): Batch {
  const writes: (() => void)[] = [];
  const batch: Batch = {
    ...{ sheets, written, isGroup, writes, pending: [] },
    note: text => writes.push(() => written.push(text)),
    worksheet: name => worksheetOf(batch, name),
  };
  return batch;
}

function workbookOf(batch: Batch, selected: Block & { sheet: string }): object {
  return {
    worksheets: worksheetsOf(batch),
    names: namesOf(batch),
    settings: settingsOf(batch),
    protection: guarded(batch.pending, () => structure, {}),
    getSelectedRange: () => rangeOf(batch, selected.sheet, selected),
    getActiveCell: () => rangeOf(batch, selected.sheet, { ...selected, rows: 1, columns: 1 }),
  };
}

/** Reads what was asked for, then writes; what is refused ends the batch. */
function sync({ pending, writes, written }: Batch): void {
  for (const load of pending.splice(0)) load.__load();
  for (const write of writes.splice(0)) {
    const before = written.length;
    write();
    if (!refusal.of[0]?.test(written.slice(before).join(' '))) continue;
    written.length = before;
    refusal.of.shift();
    throw refused('refused', refusal.code);
  }
}
