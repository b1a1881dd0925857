import type { Catalogue } from '../../core/catalogue/catalogue';
import { catalogueFromCells } from '../../cells/catalogueFromCells';
import { deadline } from '../../workbook/deadline';
import { workbookCatalogueSource } from '../../workbook/workbookCatalogueSource';
import type { Workbook } from '../../workbook/workbook';

const LIMIT_MS = 10_000;

/** The catalogue of a workbook: of its `Catalogue` cell, else of the first CATALOGUE formula; undefined where there is none. */
export async function catalogueOfWorkbook(workbook: Workbook): Promise<Catalogue | undefined> {
  const clock = deadline(LIMIT_MS);
  try {
    for await (const cells of workbookCatalogueSource(workbook).calls(clock)) {
      try {
        return catalogueFromCells(cells);
      } catch {
        // Tables that are no catalogue: their own cell says why; another formula may still give one.
      }
    }
    return undefined;
  } finally {
    clock.stop();
  }
}
