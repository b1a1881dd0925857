import '../customFunctions';
import type { Catalogue } from '../../../src/core/catalogue/catalogue';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { createCatalogueLoader } from '../../../src/host/catalogue/catalogueLoader';
import type { CatalogueSource, PausableClock } from '../../../src/workbook/catalogueSource';
import { createCatalogueStore } from '../../../src/host/catalogue/catalogueStore';
import { deadline } from '../../../src/workbook/deadline';
import { cellsOf, treeTables, withCell } from '../../core/catalogue/treeCatalogue';

const tree = readCatalogue(treeTables);
const dearer = withCell('hoses', 1, 'Price per length (per m)', 9);
const other = readCatalogue(dearer);

/** A source that counts how often it is asked. */
function sourceOf(...calls: (typeof treeTables | typeof dearer)[]): CatalogueSource & { asked: number; read: number } {
  return {
    asked: 0,
    read: 0,
    async *calls() {
      this.asked += 1;
      for (const tables of calls) {
        this.read += 1;
        yield cellsOf(tables);
      }
    },
  };
}

const sentence = (promise: Promise<Catalogue> | undefined) =>
  promise!.then(
    () => 'found',
    (error: Error) => error.message,
  );

test('the host is asked once for all look-ups that wait, and only as far as needed', async () => {
  const source = sourceOf(treeTables, dearer);
  const store = createCatalogueStore();
  const loader = createCatalogueLoader(store, () => source);
  const found = await Promise.all(Array.from({ length: 100 }, () => loader.load(tree.handle)));
  expect(found.every(catalogue => catalogue?.handle === tree.handle)).toBe(true);
  expect([source.asked, source.read]).toEqual([1, 1]);
  expect(store.get(tree.handle)?.digest).toBe(tree.digest);
});

test('a handle that the store has forgotten since is asked for again, not kept elsewhere', async () => {
  const source = sourceOf(treeTables);
  const store = createCatalogueStore();
  const loader = createCatalogueLoader(store, () => source);
  await loader.load(tree.handle);
  for (let count = 0; count < 16; count += 1) {
    store.put({ ...other, handle: `CAT-0000${(4096 + count).toString(16)}`, digest: String(count) });
  }
  expect(store.get(tree.handle)).toBeUndefined();
  expect((await loader.load(tree.handle))?.handle).toBe(tree.handle);
  expect(source.asked).toBe(2);
});

test('a what-if catalogue in a second cell is found, too', async () => {
  const source = sourceOf(treeTables, dearer);
  const loader = createCatalogueLoader(createCatalogueStore(), () => source);
  expect((await loader.load(other.handle))?.handle).toBe(other.handle);
});

test('tables that changed since give another handle: it says so, and does not ask again', async () => {
  const source = sourceOf(dearer);
  const loader = createCatalogueLoader(createCatalogueStore(), () => source);
  const expected = `catalogue ${tree.handle} is not loaded: recalculate the Catalogue cell (its tables now give ${other.handle})`;
  expect(await sentence(loader.load(tree.handle))).toBe(expected);
  expect(await sentence(loader.load(tree.handle))).toBe(expected);
  expect(source.asked).toBe(1);
});

test('a bare host is not waited for', () => {
  expect(createCatalogueLoader(createCatalogueStore(), () => undefined).load(tree.handle)).toBeUndefined();
});

test('a host that fails, and tables that are no catalogue any more, are answered like one that does not find it', async () => {
  const failing: CatalogueSource = {
    async *calls() {
      throw new Error('the host is busy');
    },
  };
  const expected = `catalogue ${tree.handle} is not loaded: recalculate the Catalogue cell`;
  expect(await sentence(createCatalogueLoader(createCatalogueStore(), () => failing).load(tree.handle))).toBe(expected);
  const broken = sourceOf(withCell('hoses', 0, 'Bore (mm)', 'B') as typeof treeTables);
  expect(await sentence(createCatalogueLoader(createCatalogueStore(), () => broken).load(tree.handle))).toBe(expected);
});

describe('the limit of 10 s', () => {
  beforeEach(() => jest.useFakeTimers());
  afterEach(() => jest.useRealTimers());

  /** A host that never answers, and hands out the clock. */
  function silent(): { source: CatalogueSource; clock: () => PausableClock } {
    let clock: PausableClock | undefined;
    const source: CatalogueSource = {
      async *calls(given) {
        clock = given;
        await new Promise(() => {});
      },
    };
    return { source, clock: () => clock! };
  }

  test('ends the wait of a host that does not answer', async () => {
    const { source } = silent();
    let answer: string | undefined;
    void sentence(createCatalogueLoader(createCatalogueStore(), () => source).load(tree.handle)).then(text => (answer = text));
    await jest.advanceTimersByTimeAsync(9_900);
    expect(answer).toBeUndefined();
    await jest.advanceTimersByTimeAsync(200);
    expect(answer).toBe(`catalogue ${tree.handle} is not loaded: recalculate the Catalogue cell`);
  });

  test('does not count while a cell is being edited', async () => {
    const { source, clock } = silent();
    let answer: string | undefined;
    void sentence(createCatalogueLoader(createCatalogueStore(), () => source).load(tree.handle)).then(text => (answer = text));
    await jest.advanceTimersByTimeAsync(4_000);
    clock().pause();
    await jest.advanceTimersByTimeAsync(60_000);
    clock().resume();
    await jest.advanceTimersByTimeAsync(5_900);
    expect(answer).toBeUndefined();
    await jest.advanceTimersByTimeAsync(200);
    expect(answer).toContain('is not loaded');
  });

  test('the Catalogue cell, calculated meanwhile, ends the wait', async () => {
    const { source } = silent();
    const store = createCatalogueStore();
    const found = createCatalogueLoader(store, () => source).load(tree.handle);
    await jest.advanceTimersByTimeAsync(1_000);
    store.put(tree);
    expect((await found)?.digest).toBe(tree.digest);
  });
});

test('a limit that runs out while the page is busy, just before a pause, still ends', async () => {
  jest.useFakeTimers();
  const clock = deadline(1000);
  // Time passes, but no timer gets its turn.
  jest.setSystemTime(Date.now() + 1500);
  clock.pause();
  clock.resume();
  jest.advanceTimersByTime(0);
  await expect(clock.reached).resolves.toBeUndefined();
  jest.useRealTimers();
});

describe('the store', () => {
  const named = (handle: string, digest = handle) => ({ ...tree, handle, digest });

  test('keeps the last 16 handles; one that is used stays', () => {
    const store = createCatalogueStore();
    for (let i = 0; i < 16; i++) store.put(named(`CAT-${i}`));
    store.get('CAT-0');
    store.put(named('CAT-16'));
    expect([store.get('CAT-0')?.handle, store.get('CAT-1'), store.get('CAT-16')?.handle]).toEqual(['CAT-0', undefined, 'CAT-16']);
  });

  test('two different catalogues of one handle answer for neither', () => {
    const store = createCatalogueStore();
    store.put(named('CAT-1', 'one'));
    store.put(named('CAT-1', 'one'));
    expect(store.get('CAT-1')?.digest).toBe('one');
    store.put(named('CAT-1', 'another'));
    expect(() => store.get('CAT-1')).toThrow(/stands for two different catalogues: change a note/);
  });
});
