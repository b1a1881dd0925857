import type { Catalogue } from '../../core/catalogue/catalogue';
import { TradeError } from '../../core/tradeError';

const KEPT = 16;

/** The catalogues in memory, by handle. */
export interface CatalogueStore {
  /** Keeps a catalogue; beyond the last 16 handles the one that was not used longest is forgotten. */
  put(catalogue: Catalogue): void;
  /**
   * The catalogue of a handle; undefined where it is not in memory.
   * @throws TradeError where two different catalogues happen to have that handle: neither may answer for the other
   */
  get(handle: string): Catalogue | undefined;
  /** Resolves when a catalogue of that handle is kept. */
  arrival(handle: string): Promise<void>;
}

/** A new, empty store. */
export function createCatalogueStore(): CatalogueStore {
  const kept = new Map<string, Catalogue | 'ambiguous'>();
  const waiting = new Map<string, { promise: Promise<void>; resolve: () => void }>();

  const renew = (handle: string, entry: Catalogue | 'ambiguous') => {
    kept.delete(handle);
    kept.set(handle, entry);
  };
  return {
    put(catalogue) {
      const { handle } = catalogue;
      const before = kept.get(handle);
      renew(handle, before === 'ambiguous' || (before && before.digest !== catalogue.digest) ? 'ambiguous' : catalogue);
      if (kept.size > KEPT) kept.delete(kept.keys().next().value!);
      waiting.get(handle)?.resolve();
      waiting.delete(handle);
    },
    get(handle) {
      const found = kept.get(handle);
      if (found === 'ambiguous') {
        const advice = 'change a note in one of them, so that their handles differ';
        throw new TradeError('notFound', 'catalogue', `${handle} stands for two different catalogues`, advice);
      }
      if (found) renew(handle, found);
      return found;
    },
    arrival(handle) {
      let entry = waiting.get(handle);
      if (!entry) {
        let resolve = () => {};
        const promise = new Promise<void>(done => (resolve = done));
        waiting.set(handle, (entry = { promise, resolve }));
      }
      return entry.promise;
    },
  };
}
