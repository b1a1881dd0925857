import { blockAt, usedBlock } from './address';
import type { Batch } from './batch';
import { chartsOf, shapesOf } from './drawings';
import { guarded } from './guarded';
import { rangeOf } from './rangeOf';
import { refused } from './refusals';
import { tablesOf } from './tablesOf';

const protectionOf = (sheet: string) => ({ protected: sheet === 'Locked' });

function raise(error: Error): never {
  throw error;
}

/** A sheet; a null object where there is none of that name. */
export function worksheetOf(batch: Batch, sheet: string): any {
  const { sheets, written } = batch;
  const properties = () => ({
    name: sheet,
    visibility: sheet === 'Hidden' ? 'Hidden' : 'Visible',
    protection: protectionOf(sheet),
  });
  const used = () => rangeOf(batch, sheet, usedBlock(sheets[sheet]!));
  return guarded(batch.pending, () => (sheet in sheets || written.includes(`add ${sheet}`) ? properties() : undefined), {
    activate: () => batch.note(`activate ${sheet}`),
    delete: () =>
      batch.writes.push(() => {
        // A group of undo that deletes a sheet is refused: Microsoft's "Undo support with the Excel JavaScript API" lists the calls.
        if (batch.isGroup) throw refused('no undo', 'UndoNotSupported');
        written.push(`delete ${sheet}`);
      }),
    getRange: (address: string) => rangeOf(batch, sheet, blockAt(address)),
    tables: tablesOf(batch, sheet),
    charts: chartsOf(batch),
    shapes: shapesOf(batch, sheet),
    getUsedRange: used,
    getUsedRangeOrNullObject: () => {
      const missing = { __load: () => raise(refused(`no sheet ${sheet}`, 'ItemNotFound')) };
      if (!(sheet in sheets)) batch.pending.push(missing);
      return sheets[sheet]?.length ? used() : rangeOf(batch, sheet, undefined);
    },
  });
}

/** The sheets of the workbook. */
export function worksheetsOf(batch: Batch): object {
  const listed = (sheet: string) => Object.assign(worksheetOf(batch, sheet), { name: sheet, protection: protectionOf(sheet) });
  return guarded(batch.pending, () => ({ items: Object.keys(batch.sheets).map(listed) }), {
    getItem: (sheet: string) => worksheetOf(batch, sheet),
    getItemOrNullObject: (sheet: string) => worksheetOf(batch, sheet),
    add: (sheet: string) => batch.note(`add ${sheet}`),
  });
}
