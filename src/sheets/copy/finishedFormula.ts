import type { Block } from '../../workbook/a1';
import type { CellPlace, CellSet } from './cellPlace';
import { NotNative } from './native/nativeFunction';
import { requirePortable } from './portable';
import { blockOfReference, referenceText, referencesIn, withReferences } from './references';

/** Copied sheets by their names in the workbook, with their names in the copy; and the cells that are left out of it. */
export interface CopyScope {
  readonly names: ReadonlyMap<string, string>;
  readonly leftOut: CellSet;
}

function readsLeftOut({ leftOut }: CopyScope, sheet: string, { row, column, rows, columns }: Block): boolean {
  for (const place of leftOut.all()) {
    const isIn = place.row >= row && place.row < row + rows && place.column >= column && place.column < column + columns;
    if (place.sheet === sheet && isIn) return true;
  }
  return false;
}

/**
 * A formula as the copy has it: sheets by the copy's names, nothing that is not in the copy or not in every program.
 * @throws NotNative
 */
export function finishedFormula(formula: string, { sheet }: Pick<CellPlace, 'sheet'>, scope: CopyScope): string {
  requirePortable(formula);
  const inCopy = new Set(scope.names.values());
  for (const reference of referencesIn(formula)) {
    const of = reference.sheet ?? sheet;
    if (!scope.names.has(of) && !inCopy.has(of)) throw new NotNative(`it reads the sheet ${of}, which is not in the copy`);
    if (readsLeftOut(scope, of, blockOfReference(reference))) throw new NotNative('it reads cells that were left out');
  }
  return withReferences(formula, ({ sheet: of, address }) =>
    referenceText(of === undefined ? undefined : (scope.names.get(of) ?? of), address),
  );
}
