import { useCallback, useEffect, useRef, useState } from 'react';
import { callsCatalogue } from '../../workbook/catalogueFormula';
import type { Workbook } from '../../workbook/workbook';
import { workbookCatalogue, type WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import { errorSentence } from '../../workbook/errorSentence';
import { cellWords } from '../../workbook/cellWords';

/** The catalogue of the workbook as the view knows it. */
export type CatalogueShown =
  | { readonly status: 'loading' }
  | { readonly status: 'failed'; readonly reason: string }
  | { readonly status: 'none' }
  | { readonly status: 'ready'; readonly found: WorkbookCatalogue };

const SETTLED_MS = 300;

/** Whether the Catalogue cell shows something else than when it was read; cheap, for the tables may be long. */
async function hasChanged(workbook: Workbook, known: CatalogueShown): Promise<boolean> {
  if (known.status === 'ready') {
    const { cell, shown, formula } = known.found;
    const [content] = await workbook.read([cell]);
    return content!.formulas[0]![0] !== formula || cellWords(content!.values[0]![0]!) !== cellWords(shown);
  }
  const named = (await workbook.names()).find(({ name }) => name.toLowerCase() === 'catalogue');
  if (!named) return false;
  const [content] = await workbook.read([named.at]);
  return callsCatalogue(content!.formulas[0]![0]);
}

/** Reads the workbook's catalogue, and again when its cell shows another handle. */
export function useWorkbookCatalogue(workbook: Workbook): readonly [CatalogueShown, () => Promise<CatalogueShown>] {
  const [standing, setInSheet] = useState<CatalogueShown>({ status: 'loading' });
  const known = useRef<CatalogueShown>(standing);
  const turns = useRef(0);
  const read = useCallback(async (): Promise<CatalogueShown> => {
    const turn = ++turns.current;
    const next = await workbookCatalogue(workbook).then(
      (found): CatalogueShown => (found ? { status: 'ready', found } : { status: 'none' }),
      (error: unknown): CatalogueShown => ({ status: 'failed', reason: errorSentence(error) }),
    );
    if (turn === turns.current) {
      known.current = next;
      setInSheet(next);
    }
    return next;
  }, [workbook]);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const follow = () => {
      clearTimeout(timer);
      timer = setTimeout(async () => {
        // A cell that is gone is a change as well.
        if (await hasChanged(workbook, known.current).catch(() => true)) await read();
      }, SETTLED_MS);
    };
    void read();
    const stop = workbook.onSelection(follow);
    return () => {
      clearTimeout(timer);
      turns.current += 1;
      stop();
    };
  }, [workbook, read]);
  return [standing, read];
}
