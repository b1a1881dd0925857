import type { Catalogue } from '../../core/catalogue/catalogue';
import { hostOf } from '../../workbook/shownWorkbook';
import type { Workbook } from '../../workbook/workbook';
import { CHOSEN_CATALOGUE, workbookCatalogue } from './workbookCatalogue';

interface KeptCatalogue {
  readonly cell: string;
  readonly catalogue: Catalogue | undefined;
}

const kept = new WeakMap<Workbook, KeptCatalogue>();

/** The workbook's catalogue; read again, through all sheets, only where its cell shows another handle. */
export async function currentCatalogue(workbook: Workbook): Promise<Catalogue | undefined> {
  const [names, chosen] = await Promise.all([workbook.names(), workbook.recall(CHOSEN_CATALOGUE)]);
  const name = names.find(each => each.name.toLowerCase() === 'catalogue');
  const [content] = name ? await workbook.read([name.at]) : [];
  const cell = String(content?.values[0]?.[0] ?? '');
  const before = kept.get(hostOf(workbook));
  // Of several catalogues another cell than the named one may count: then it is read each time.
  if (before && cell !== '' && chosen === undefined && before.cell === cell) return before.catalogue;
  const catalogue = (await workbookCatalogue(workbook))?.catalogue;
  kept.set(hostOf(workbook), { cell, catalogue });
  return catalogue;
}
