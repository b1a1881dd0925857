import { listenToSelection } from '../../../src/host/excel/listenToSelection';

type Listener = () => Promise<void>;

/** Events that stand once they were synced and go in the context only that they came in; a batch may be refused in a cell being edited. */
function excelWithEvents() {
  const standing = new Map<string, Listener>();
  const state = { standing, editing: false };
  const contextOf = () => {
    const waiting: (() => void)[] = [];
    const context: any = {
      sync: async () => waiting.splice(0).forEach(act => act()),
    };
    const event = (name: string) => ({
      add: (listener: Listener) => {
        waiting.push(() => standing.set(name, listener));
        return { context, remove: () => waiting.push(() => standing.delete(name)) };
      },
    });
    const worksheets = { onActivated: event('activated'), onChanged: event('changed'), onCalculated: event('calculated') };
    return Object.assign(context, { workbook: { worksheets, onSelectionChanged: event('selection') } });
  };
  const run = async (
    options: { delayForCellEdit?: boolean; previousObjects?: unknown },
    batch: (context: any) => Promise<unknown>,
  ) => {
    if (state.editing && !options.delayForCellEdit) throw new Error('a cell is being edited');
    return batch(options.previousObjects ?? contextOf());
  };
  Object.assign(globalThis, { Excel: { run } });
  return state;
}

const settled = () => new Promise(resolve => setTimeout(resolve, 0));

test('selection, sheet, change and calculation call the listener; those of one moment once', async () => {
  const { standing } = excelWithEvents();
  const listener = jest.fn();
  listenToSelection(listener);
  await settled();
  expect([...standing.keys()]).toEqual(['selection', 'activated', 'changed', 'calculated']);
  await Promise.all([...standing.values()].map(call => call()));
  expect(listener).toHaveBeenCalledTimes(1);
  await standing.get('changed')!();
  expect(listener).toHaveBeenCalledTimes(2);
});

test.each([false, true])('stopped, no event stands any more (while a cell is being edited: %s)', async editing => {
  const state = excelWithEvents();
  const listener = jest.fn();
  const stop = listenToSelection(listener);
  await settled();
  state.editing = editing;
  const [late] = state.standing.values();
  stop();
  await late!();
  await settled();
  expect(state.standing.size).toBe(0);
  expect(listener).not.toHaveBeenCalled();
});

test('stopped before Excel took the events, they are taken away all the same', async () => {
  const { standing } = excelWithEvents();
  listenToSelection(jest.fn())();
  await settled();
  expect(standing.size).toBe(0);
});
