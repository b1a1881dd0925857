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

/**
 * Calls the listener when another cell or sheet is selected and when cells change or are calculated; several events of one
 * moment make one call.
 * @returns how to stop
 */
export function listenToSelection(listener: () => void): () => void {
  let waiting = false;
  let stopped = false;
  const once = async () => {
    if (waiting || stopped) return;
    waiting = true;
    await Promise.resolve();
    waiting = false;
    if (!stopped) listener();
  };
  const attached = attach(once);
  // A host that has no events leaves the pane readable; its own refresh still works.
  attached.catch(() => undefined);
  return () => {
    stopped = true;
    attached.then(detach).catch(() => undefined);
  };
}
