import { blockAt, usedBlock } from './address';
import type { Batch } from './batch';
import { chartsOf, shapesOf } from './drawings';
import { guarded } from './guarded';
import { excelLayouts } from './layouts';
import { rangeOf } from './rangeOf';
import { refused, structure } from './refusals';
import { tablesOf } from './tablesOf';

/** A sheet by its name or id; a null object where there is none. */
export function worksheetOf(batch: Batch, key: string): any {
  const { book } = batch;
  const properties = () => {
    const { id, name, isProtected } = book.sheet(key);
    const visibility = excelLayouts[name]?.visibility ?? (name === 'Hidden' ? 'Hidden' : 'Visible');
    return { id, name, visibility, protection: { protected: isProtected } };
  };
  const used = () => rangeOf(batch, key, () => usedBlock(book.sheet(key).rows));
  return guarded(batch.pending, () => (book.find(key) ? properties() : undefined), {
    activate: () => batch.note(() => `activate ${book.sheet(key).name}`),
    delete: () =>
      batch.note(
        () => `delete ${book.sheet(key).name}`,
        () => {
          // Microsoft's "Undo support with the Excel JavaScript API": Worksheet.delete has none; a group is refused, all steps before are gone.
          if (batch.isGroup) throw refused('no undo', 'UndoNotSupported');
          book.remove(key);
          batch.clearsUndo = true;
        },
      ),
    getRange: (address: string) => rangeOf(batch, key, () => blockAt(address)),
    get tables() {
      return tablesOf(batch, key);
    },
    charts: chartsOf(batch),
    shapes: shapesOf(batch, key),
    getUsedRange: used,
    getUsedRangeOrNullObject: () =>
      rangeOf(batch, key, () => {
        const { rows } = book.sheet(key);
        return rows.length > 0 ? usedBlock(rows) : undefined;
      }),
  });
}

/** The sheets of the workbook. */
export function worksheetsOf(batch: Batch): object {
  const { book } = batch;
  const listed = () =>
    book.sheets.map(({ id, name, isProtected }) =>
      Object.assign(worksheetOf(batch, id), { id, name, protection: { protected: isProtected } }),
    );
  return guarded(batch.pending, () => ({ items: listed() }), {
    getItem: (key: string) => worksheetOf(batch, key),
    getItemOrNullObject: (key: string) => worksheetOf(batch, key),
    add: (sheet: string) => {
      batch.note(`add ${sheet}`, () => {
        if (structure.protected) throw refused('the structure is protected', 'AccessDenied');
        book.add(sheet);
      });
    },
  });
}
