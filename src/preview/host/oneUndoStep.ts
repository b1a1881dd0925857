import type { ICommandService, IUndoRedoItem, IUndoRedoService } from '@univerjs/core';

/** The engine's stack of steps that can be undone; it declares it protected. */
interface UndoStacks {
  _getUndoStack(unitId: string, createAsNeeded: true): IUndoRedoItem[];
}

/**
 * Does several things so that one undo takes all of them back; where one throws, all are taken back at once.
 * (The engine's own batching undoes them in the order they were done, which fails for a sheet that was added and then filled.)
 * @param things each a few commands
 */
export function oneUndoStep(
  undoRedo: IUndoRedoService,
  commands: ICommandService,
  unitID: string,
  things: readonly (() => void)[],
): void {
  const stack = (undoRedo as unknown as UndoStacks)._getUndoStack(unitID, true);
  const before = stack.splice(0);
  const steps: IUndoRedoItem[] = [];
  const backwards = () => [...steps].reverse().flatMap(step => step.undoMutations);
  try {
    for (const thing of things) {
      thing();
      // The stack drops its oldest steps when it is long: nothing may stay on it.
      steps.push(...stack.splice(0));
    }
  } catch (error) {
    steps.push(...stack.splice(0));
    for (const { id, params } of backwards()) commands.syncExecuteCommand(id, params);
    steps.length = 0;
    throw error;
  } finally {
    stack.push(...before);
    const redoMutations = steps.flatMap(step => step.redoMutations);
    if (steps.length > 0) undoRedo.pushUndoRedo({ unitID, undoMutations: backwards(), redoMutations });
  }
}
