import type { CatalogueSource } from '../../workbook/catalogueSource';
import { excelCatalogueSource } from './excelCatalogueSource';

/**
 * What a host other than Excel leaves on the page before functions.js is used:
 * `globalThis.benchrowHost = { catalogueSource: workbookCatalogueSource(workbook) }`.
 */
export interface BenchrowHost {
  readonly catalogueSource?: CatalogueSource;
}

/** The source of the host that this page stands in; undefined in a bare runtime. */
export function hostCatalogueSource(): CatalogueSource | undefined {
  const globals = globalThis as { benchrowHost?: BenchrowHost; Excel?: { run?: unknown } };
  if (globals.benchrowHost?.catalogueSource) return globals.benchrowHost.catalogueSource;
  return typeof globals.Excel?.run === 'function' ? excelCatalogueSource : undefined;
}
