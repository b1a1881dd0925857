import { CommandType } from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';

/** What the engine calls changes of names; its other mutations of formulas are results. */
const OF_NAMES = new Set(['formula.mutation.set-defined-name', 'formula.mutation.remove-defined-name']);

/**
 * Calls the listener after anything of the workbook changed that belongs into a file: entries, looks, rows, sheets, names; not results.
 * @returns how to stop that
 */
export function onChanged(api: FUniver, listener: () => void): () => void {
  const subscription = api.addEvent(api.Event.CommandExecuted, ({ id, type, options }) => {
    if (type !== CommandType.MUTATION || (!id.startsWith('sheet.mutation.') && !OF_NAMES.has(id))) return;
    const { fromFormula, onlyLocal } = (options ?? {}) as { fromFormula?: boolean; onlyLocal?: boolean };
    if (!fromFormula && !onlyLocal) listener();
  });
  return () => subscription.dispose();
}
