import type { FUniver } from '@univerjs/core/facade';
import { toldOnce } from '../../workbook/toldOnce';

/** What the engine calls the moments at which a selection, or what stands in it, changes. */
const MOMENTS = new Set([
  'sheet.operation.set-selections',
  'sheet.operation.set-worksheet-active',
  'sheet.mutation.set-range-values',
  'formula.mutation.set-array-formula-data',
]);
const TOGETHER_MILLISECONDS = 40;

/**
 * Calls the listener after the selection or a cell's content changed; changes that come together are told once.
 * @returns how to stop that
 */
export function onContent(api: FUniver, listener: () => void): () => void {
  const told = toldOnce(listener, TOGETHER_MILLISECONDS);
  const subscription = api.addEvent(api.Event.CommandExecuted, ({ id }) => {
    if (MOMENTS.has(id)) told.event();
  });
  return () => {
    told.stop();
    subscription.dispose();
  };
}
