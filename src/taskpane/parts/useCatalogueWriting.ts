import { useCallback, useRef, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { workbookCatalogue, type WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import type { LoadedCatalogue } from '../../sheets/parts/loadedCatalogue';
import type { PartsPlan } from '../../sheets/parts/planParts';
import { freshPlan } from './usePartsPlan';
import { writeParts } from '../../sheets/parts/writeParts';
import { errorSentence } from '../../workbook/errorSentence';

/** How the writing goes or went. */
export type CatalogueWriting =
  | { readonly status: 'idle' }
  | { readonly status: 'writing'; readonly share: number | undefined }
  | { readonly status: 'done'; readonly plan: PartsPlan; readonly handle: string }
  | { readonly status: 'failed'; readonly reason: string };

/** Whether a catalogue still stands as it did when the two were compared. */
function isSame(before: WorkbookCatalogue | undefined, now: WorkbookCatalogue | undefined): boolean {
  const text = (found: WorkbookCatalogue | undefined) =>
    found && JSON.stringify([found.cell, found.formula, found.tables.map(({ at, raw }) => [at, raw])]);
  return text(before) === text(now);
}

/** Writes a loaded catalogue into the workbook: looked at again first, for it may have changed since it was compared. */
export function useCatalogueWriting(workbook: Workbook, onWritten: (handle: string) => void, onStale: () => void) {
  const [writing, setWriting] = useState<CatalogueWriting>({ status: 'idle' });
  const stop = useRef<AbortController | undefined>(undefined);
  const write = useCallback(
    async (standing: WorkbookCatalogue | undefined, result: LoadedCatalogue, agreed: readonly string[]) => {
      const controller = new AbortController();
      stop.current = controller;
      setWriting({ status: 'writing', share: undefined });
      try {
        if (!isSame(standing, await workbookCatalogue(workbook))) {
          onStale();
          throw new Error(
            'The parts data in the workbook have changed since they were compared. Look at the changes again. Nothing was written.',
          );
        }
        const plan = await freshPlan(workbook, standing, result);
        if (plan.overwrites.some(sentence => !agreed.includes(sentence))) {
          throw new Error(
            'Cells that would be overwritten have been filled meanwhile. Load the tables again. Nothing was written.',
          );
        }
        const onProgress = (share: number | undefined) => setWriting({ status: 'writing', share });
        await writeParts(workbook, plan, { onProgress, signal: controller.signal });
        const { handle } = result.catalogue!;
        setWriting({ status: 'done', plan, handle });
        onWritten(handle);
      } catch (error) {
        setWriting({ status: 'failed', reason: errorSentence(error) });
      }
    },
    [workbook, onWritten, onStale],
  );
  return { writing, write, cancel: () => stop.current?.abort(), forget: useCallback(() => setWriting({ status: 'idle' }), []) };
}
