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

/** Longer than events are waited for that belong together. */
const silence = () => new Promise(resolve => setTimeout(resolve, 150));
const settled = () => new Promise(resolve => setTimeout(resolve, 0));

test('selection, sheet, change and calculation call the listener; those that follow each other closely once', async () => {
  const { standing } = excelWithEvents();
  const listener = jest.fn();
  listenToSelection(listener);
  await settled();
  expect([...standing.keys()]).toEqual(['selection', 'activated', 'changed', 'calculated']);
  await Promise.all([...standing.values()].map(call => call()));
  expect(listener).not.toHaveBeenCalled();
  await silence();
  expect(listener).toHaveBeenCalledTimes(1);
  await standing.get('changed')!();
  await silence();
  expect(listener).toHaveBeenCalledTimes(2);
});

describe('an arrow key that is held', () => {
  beforeEach(() => jest.useFakeTimers());
  afterEach(() => jest.useRealTimers());

  /** Selects that many cells, one every 33 ms, as a keyboard does that repeats 30 times a second. */
  async function hold(cells: number) {
    const { standing } = excelWithEvents();
    const listener = jest.fn();
    listenToSelection(listener);
    await jest.advanceTimersByTimeAsync(0);
    for (let cell = 0; cell < cells; cell++) {
      await standing.get('selection')!();
      await jest.advanceTimersByTimeAsync(33);
    }
    const onTheWay = listener.mock.calls.length;
    await jest.advanceTimersByTimeAsync(1000);
    return [onTheWay, listener.mock.calls.length];
  }

  test('is answered when it is let go', async () => expect(await hold(10)).toEqual([0, 1]));

  test('and two or three times a second where it is held on', async () => {
    const [onTheWay, all] = await hold(60);
    expect(onTheWay).toBeGreaterThanOrEqual(4);
    expect(all).toBeLessThanOrEqual(6);
  });
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
  await silence();
  expect(state.standing.size).toBe(0);
  expect(listener).not.toHaveBeenCalled();
});

test('stopped before Excel took the events, they are taken away all the same', async () => {
  const { standing } = excelWithEvents();
  listenToSelection(jest.fn())();
  await settled();
  expect(standing.size).toBe(0);
});
