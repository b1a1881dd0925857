import type { Cells } from '../cells/singles';
import { excelCatalogueSource } from './excelCatalogueSource';

/** A clock that stands still while the user edits a cell, since a host does not answer then. */
export interface PausableClock {
  pause(): void;
  resume(): void;
}

/** Where the tables named in the workbook's CATALOGUE formulas can be read again. Only ever reads. */
export interface CatalogueSource {
  /**
   * The tables of each CATALOGUE formula of the workbook, in the order of the arguments (null where one is left out); that of the cell
   * named Catalogue first. Cells are as a host passes them to a function.
   * @param clock is paused while the host waits for the user to leave a cell
   */
  calls(clock: PausableClock): AsyncIterable<readonly Cells[]>;
}

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
