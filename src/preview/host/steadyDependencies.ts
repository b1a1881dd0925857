import type { Univer } from '@univerjs/core';
import { IDependencyManagerService } from '@univerjs/engine-formula';

/** A formula, and the ranges that it reads. */
interface Reader {
  readonly treeId: number;
  readonly rangeList: readonly { readonly unitId: string; readonly sheetId: string; readonly range: object }[];
}

/** The engine's register of which formula reads what; it declares half of it private. */
interface DependencyRegister {
  addDependencyRTreeCache(reader: Reader): void;
  reset(): void;
  _removeDependencyRTreeCache(treeId: number | null | undefined): void;
  _removeDependencyRTreeCacheById(unitId: string, sheetId: string): void;
}

/**
 * Keeps the register of formulas at its size. The engine enters the ranges of every formula again at each calculation and never takes the former
 * ones out, so that a page grows, and gets slower, with every edit; this one enters what is not there.
 */
export function steadyDependencies(univer: Univer): void {
  const register = univer.__getInjector().get(IDependencyManagerService) as unknown as DependencyRegister;
  const entered = new Map<number, string>();
  const [add, reset] = [register.addDependencyRTreeCache.bind(register), register.reset.bind(register)];
  const remove = register._removeDependencyRTreeCache.bind(register);
  const removeSheet = register._removeDependencyRTreeCacheById.bind(register);
  register.addDependencyRTreeCache = reader => {
    const ranges = JSON.stringify(reader.rangeList);
    if (entered.get(reader.treeId) === ranges) return;
    add(reader);
    entered.set(reader.treeId, ranges);
  };
  register.reset = () => {
    entered.clear();
    reset();
  };
  register._removeDependencyRTreeCache = treeId => {
    if (typeof treeId === 'number') entered.delete(treeId);
    remove(treeId);
  };
  // Formulas of other sheets that read this one are entered again, as the engine would do.
  register._removeDependencyRTreeCacheById = (unitId, sheetId) => {
    entered.clear();
    removeSheet(unitId, sheetId);
  };
}
