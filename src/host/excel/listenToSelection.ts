import { toldOnce } from '../../workbook/toldOnce';
import { run } from './run';

type Handler = { remove(): void; context: Excel.RequestContext };

async function attach(listener: () => Promise<void>): Promise<Handler[]> {
  return run(async context => {
    const { worksheets } = context.workbook;
    const handlers = [
      context.workbook.onSelectionChanged.add(listener),
      worksheets.onActivated.add(listener),
      worksheets.onChanged.add(listener),
      worksheets.onCalculated.add(listener),
    ];
    await context.sync();
    return handlers as unknown as Handler[];
  });
}

async function detach(handlers: readonly Handler[]): Promise<void> {
  const [first] = handlers;
  if (!first) return;
  // In the context that they were added in; after the cell that is being edited, else they would stay for as long as the add-in runs.
  await Excel.run({ delayForCellEdit: true, previousObjects: first.context }, async context => {
    for (const handler of handlers) handler.remove();
    await context.sync();
  });
}

/** Longer than the time between two steps of an arrow key that is held. */
const TOGETHER_MILLISECONDS = 80;

/**
 * Calls the listener when another cell or sheet is selected and when cells change or are calculated; events that follow each other
 * closely make one call, after the last of them.
 * @returns how to stop
 */
export function listenToSelection(listener: () => void): () => void {
  const told = toldOnce(listener, TOGETHER_MILLISECONDS);
  const attached = attach(async () => told.event());
  // A host that has no events leaves the pane readable; its own refresh still works.
  attached.catch(() => undefined);
  return () => {
    told.stop();
    attached.then(detach).catch(() => undefined);
  };
}
