import { useCallback, useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Workbook } from '../../workbook/workbook';
import { workbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import { useOnSheets } from './useOnSheets';
import { errorSentence } from '../../workbook/errorSentence';

/** The workbook's parts data as far as they are known. */
export type CatalogueView =
  | { readonly status: 'loading' | 'none' }
  | { readonly status: 'failed'; readonly reason: string }
  | { readonly status: 'ready'; readonly catalogue: Catalogue };

async function look(workbook: Workbook): Promise<CatalogueView> {
  try {
    const catalogue = (await workbookCatalogue(workbook))?.catalogue;
    return catalogue ? { status: 'ready', catalogue } : { status: 'none' };
  } catch (error) {
    return { status: 'failed', reason: errorSentence(error) };
  }
}

/** Reads the catalogue when the pane opens, when sheets come or go, and when asked to. */
export function useCatalogue(workbook: Workbook): readonly [CatalogueView, () => Promise<CatalogueView>] {
  const [view, setView] = useState<CatalogueView>({ status: 'loading' });
  const read = useCallback(async () => {
    const found = await look(workbook);
    setView(found);
    return found;
  }, [workbook]);
  useOnSheets(workbook, read);
  return [view, read];
}
