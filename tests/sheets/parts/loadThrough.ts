import type { TableName } from '../../../src/core/catalogue/tables/catalogueTables';
import type { Workbook } from '../../../src/workbook/workbook';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { firstOfEach } from '../../../src/sheets/parts/loadedTable';
import { chosenTables, loadedCatalogue, type HeadingMaps } from '../../../src/sheets/parts/loadedCatalogue';
import { partsWorkbook } from '../../../src/sheets/parts/partsWorkbook';
import { planParts } from '../../../src/sheets/parts/planParts';
import { readPartsFile } from '../../../src/host/catalogueFile/readPartsFile';
import { tablesFromFiles } from '../../../src/sheets/parts/tablesFromFiles';

const TODAY = '2026-11-25';

/** The pane's own way from files to a plan, without its looks. */
export async function loadThrough(
  workbook: Workbook,
  files: Readonly<Record<string, Uint8Array>>,
  maps: HeadingMaps = new Map(),
) {
  const picked = Object.entries(files).map(([name, bytes]) => ({ name, bytes: async () => bytes }));
  const { tables, refusals } = await tablesFromFiles(readPartsFile, picked, 1, {});
  const taken: ReadonlyMap<string, TableName> = firstOfEach(tables);
  const standing = await workbookCatalogue(workbook);
  const chosen = chosenTables(tables, taken, maps);
  const loaded = loadedCatalogue(chosen, standing);
  const plan = async () => planParts(chosen, await partsWorkbook(workbook, standing, chosen, TODAY));
  return { tables, refusals, taken, standing, chosen, loaded, plan };
}
