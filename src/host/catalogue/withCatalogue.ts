import type { Catalogue } from '../../core/catalogue/catalogue';
import { isHandle } from '../../core/catalogue/handleText';
import { TradeError } from '../../core/tradeError';
import { answer, answerLater } from '../../cells/answer';
import { quoted, type CellReader } from '../../cells/readers';
import { single, type Cells } from '../../cells/singles';
import { createCatalogueLoader, notLoaded } from './catalogueLoader';
import { hostCatalogueSource } from './hostCatalogueSource';
import { createCatalogueStore } from './catalogueStore';

/** The catalogues of this runtime. */
export const catalogueStore = createCatalogueStore();
const loader = createCatalogueLoader(catalogueStore, hostCatalogueSource);

const readHandle: CellReader<string> = cell => {
  const text = String(cell).trim();
  if (isHandle(text)) return text;
  throw new TradeError(
    'choice',
    'catalogue',
    `is ${quoted(cell)}`,
    'give the cell that holds =HOSE.CATALOGUE(…), named Catalogue',
  );
};

/**
 * Answers a look-up from the catalogue that a handle stands for: at once where it is in memory, else as soon as the host has read its
 * tables again (the block of cells is then a promise of one, which hosts take as well).
 * @param cells the function's first argument
 * @param compute the look-up; its TradeErrors become cell errors
 */
export function withCatalogue<T>(cells: Cells, compute: (catalogue: Catalogue) => T): T {
  return answer(() => {
    const handle = single('catalogue', cells, readHandle);
    const known = catalogueStore.get(handle);
    if (known) return compute(known);
    const loading = loader.load(handle);
    if (!loading) throw notLoaded(handle);
    return answerLater(async () => compute(await loading)) as T;
  });
}
