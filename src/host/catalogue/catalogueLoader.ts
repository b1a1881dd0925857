import type { Catalogue } from '../../core/catalogue/catalogue';
import { TradeError } from '../../core/tradeError';
import { catalogueFromCells } from '../../cells/catalogueFromCells';
import type { CatalogueSource } from '../../workbook/catalogueSource';
import type { CatalogueStore } from './catalogueStore';
import { deadline, type Deadline } from '../../workbook/deadline';

const TIME_LIMIT_MS = 10_000;

/** Finds a catalogue again whose handle is not in memory, as after a workbook was reopened. */
export interface CatalogueLoader {
  /**
   * Asks the host for the tables of the workbook's CATALOGUE formulas: once for each handle that is not in the store, in one pass for all
   * that wait; never again for one that was not found.
   * @returns undefined where there is no host to ask
   * The promise rejects with a TradeError `notFound` where the tables do not give that handle, or not in time.
   */
  load(handle: string): Promise<Catalogue> | undefined;
}

/** One pass over the host's CATALOGUE formulas. */
interface Reading {
  readonly wanted: Set<string>;
  /** Handles that the tables give now. */
  readonly rebuilt: string[];
  readonly clock: Deadline;
  done: Promise<void>;
}

/** The error of a look-up whose catalogue is not in memory and could not be found again. */
export function notLoaded(handle: string, rebuilt: readonly string[] = []): TradeError {
  const differs = rebuilt.length > 0 ? ` (its tables now give ${rebuilt.join(' and ')})` : '';
  return new TradeError('notFound', 'catalogue', `${handle} is not loaded`, `recalculate the Catalogue cell${differs}`);
}

function rebuild(cells: Parameters<typeof catalogueFromCells>[0]): Catalogue | undefined {
  try {
    return catalogueFromCells(cells);
  } catch {
    // Tables that are no catalogue any more give no handle; their own CATALOGUE cell says why.
    return undefined;
  }
}

/** @param close called as soon as nothing more will be read, so that nobody joins this pass any more */
async function readAll(source: CatalogueSource, store: CatalogueStore, reading: Reading, close: () => void): Promise<void> {
  for await (const cells of source.calls(reading.clock)) {
    const catalogue = rebuild(cells);
    if (!catalogue) continue;
    store.put(catalogue);
    reading.rebuilt.push(catalogue.handle);
    reading.wanted.delete(catalogue.handle);
    if (reading.wanted.size === 0) return close();
  }
}

/** A loader that keeps what it reads in `store` and asks whatever host there is at that time. */
export function createCatalogueLoader(store: CatalogueStore, host: () => CatalogueSource | undefined): CatalogueLoader {
  const asked = new Map<string, Promise<Catalogue>>();
  let current: Reading | undefined;

  const start = (source: CatalogueSource): Reading => {
    const reading: Reading = { wanted: new Set(), rebuilt: [], clock: deadline(TIME_LIMIT_MS), done: Promise.resolve() };
    current = reading;
    const close = () => {
      if (current === reading) current = undefined;
    };
    // A host that fails is as good as one that does not find the catalogue: the look-up says what to do.
    const ended = Promise.resolve()
      .then(() => readAll(source, store, reading, close))
      .catch(() => undefined)
      .finally(() => {
        reading.clock.stop();
        close();
      });
    reading.done = ended;
    return reading;
  };

  const find = async (handle: string, source: CatalogueSource): Promise<Catalogue> => {
    const reading = current ?? start(source);
    reading.wanted.add(handle);
    await Promise.race([reading.done, reading.clock.reached, store.arrival(handle)]);
    const found = store.get(handle);
    if (found) return found;
    throw notLoaded(handle, reading.rebuilt);
  };

  return {
    load(handle) {
      const before = asked.get(handle);
      if (before) return before;
      const source = host();
      if (!source) return undefined;
      const found = find(handle, source);
      asked.set(handle, found);
      // The store alone keeps what was found; a handle that it has forgotten since is asked for again.
      found.then(
        () => asked.delete(handle),
        () => undefined,
      );
      return found;
    },
  };
}
