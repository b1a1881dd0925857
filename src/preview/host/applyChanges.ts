import { ICommandService, IUndoRedoService, type Univer } from '@univerjs/core';
import type { FWorkbook } from '@univerjs/sheets/facade';
import type { Change, RangeAddress } from '../../workbook/workbook';
import { cellBlockOf, type CellBlock } from '../xlsx/address';
import { oneUndoStep } from './oneUndoStep';
import { isCellChange } from '../../workbook/cellChange';
import { type CellTable, ChangeWriter, isStyleChange, sizeOf } from './changeWriter';

/** Refuses the whole batch before anything is written. */
function check(changes: readonly Change[], workbook: FWorkbook): void {
  const sheets = new Set(workbook.getSheets().map(sheet => sheet.getSheetName()));
  const checkSheet = (sheet: string) => {
    if (!sheets.has(sheet)) throw new Error(`there is no sheet ${sheet}`);
  };
  const checkRange = ({ sheet, address }: RangeAddress): CellBlock => {
    checkSheet(sheet);
    const block = cellBlockOf(address);
    if (!block) throw new Error(`"${address}" on sheet ${sheet} is no range`);
    return block;
  };
  const checkTable = (at: RangeAddress, table: CellTable<unknown>) => {
    const [rows, columns] = sizeOf(checkRange(at));
    if (table.length !== rows || table.some(row => row.length !== columns)) {
      throw new Error(`what is to be written to ${at.address} on sheet ${at.sheet} is not ${rows} × ${columns} cells`);
    }
  };
  for (const change of changes) {
    if (change.kind === 'addSheet') {
      if (sheets.has(change.sheet)) throw new Error(`there is already a sheet ${change.sheet}`);
      sheets.add(change.sheet);
    } else if (change.kind === 'removeSheet') {
      checkSheet(change.sheet);
      if (sheets.size === 1) throw new Error(`${change.sheet} is the only sheet and cannot be taken away`);
      sheets.delete(change.sheet);
    } else if (change.kind === 'values') checkTable(change.at, change.values);
    else if (change.kind === 'formulas') checkTable(change.at, change.formulas);
    else if (change.kind === 'page') checkSheet(change.sheet);
    else checkRange(change.kind === 'name' ? change.refersTo : change.at);
  }
}

/** Changes in their order, those of cells, or of looks, that follow one another on one sheet together. */
function together(changes: readonly Change[]): readonly (readonly Change[])[] {
  const groups: Change[][] = [];
  for (const change of changes) {
    const last = groups.at(-1)?.at(-1);
    const goesOn = [isCellChange, isStyleChange].some(
      isOne => last && isOne(last) && isOne(change) && last.at.sheet === change.at.sheet,
    );
    if (goesOn) groups.at(-1)!.push(change);
    else groups.push([change]);
  }
  return groups;
}

/**
 * Writes changes as one undo step.
 * @throws Error with a sentence where a sheet, range or table does not fit; nothing is written then
 */
export function applyChanges(univer: Univer, workbook: FWorkbook, changes: readonly Change[]): void {
  check(changes, workbook);
  const injector = univer.__getInjector();
  const writer = new ChangeWriter(workbook, injector.get(ICommandService));
  const things = together(changes).map(group => () => writer.write(group));
  oneUndoStep(injector.get(IUndoRedoService), injector.get(ICommandService), workbook.getId(), things);
}
