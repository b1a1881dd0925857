import type { WorkbookCell, CellSet } from './workbookCell';
import { NotNative } from './notNative';
import { requirePortable } from './portable';
import { blockOfReference, referenceText, withReferences } from './references';

/** Copied sheets by their names in the workbook, with their names in the copy; and the cells that are left out of it. */
export interface CopyScope {
  readonly names: ReadonlyMap<string, string>;
  readonly leftOut: CellSet;
}

/**
 * A reference as the copy has it.
 * @param named the sheet, where the formula names it
 * @throws NotNative where the copy does not have what is there
 */
export function referenceInCopy(named: string | undefined, address: string, own: string, { names, leftOut }: CopyScope): string {
  const sheet = named ?? own;
  const inCopy = names.get(sheet);
  if (inCopy === undefined) throw new NotNative(`it reads the sheet ${sheet}, which is not in the copy`);
  if (leftOut.meets(sheet, blockOfReference({ address }))) throw new NotNative('it reads cells that were left out');
  return referenceText(named === undefined ? undefined : inCopy, address);
}

/**
 * A formula of the workbook as the copy has it: sheets by the copy's names, nothing that is not in the copy or not in every program.
 * @throws NotNative
 */
export function finishedFormula(formula: string, { sheet }: Pick<WorkbookCell, 'sheet'>, scope: CopyScope): string {
  requirePortable(formula);
  return withReferences(formula, ({ sheet: named, address }) => referenceInCopy(named, address, sheet, scope));
}
