import { useCallback, useEffect, useRef, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { errorSentence } from '../../workbook/errorSentence';

/** A view of the selection before it was read, or where it could not be. */
export type UnreadView =
  { readonly status: 'loading' } | { readonly status: 'failed'; readonly reason: string; readonly error?: unknown };

const SETTLED_MS = 120;

/**
 * Follows the selection: reads what a view shows once the selection has settled, and lets only the newest answer through.
 * @param read gives the view; the same function as long as nothing but the selection changes
 * @param isSame whether a view says the same as the one before, which then stays
 * @returns the view, and how to read it anew
 */
export function useSettledView<V extends { readonly status: string }>(
  workbook: Workbook,
  read: (workbook: Workbook) => Promise<V>,
  isSame?: (before: V, found: V) => boolean,
): { view: V | UnreadView; refresh: () => void } {
  const [view, setView] = useState<V | UnreadView>({ status: 'loading' });
  const newest = useRef(0);
  const refresh = useCallback(() => {
    const turn = ++newest.current;
    setTimeout(async () => {
      if (turn !== newest.current) return;
      const found = await read(workbook).catch((error: unknown): UnreadView => ({
        status: 'failed',
        reason: errorSentence(error),
        error,
      }));
      if (turn === newest.current) setView(before => (isSame?.(before as V, found as V) ? before : found));
    }, SETTLED_MS);
  }, [workbook, read, isSame]);
  useEffect(() => {
    refresh();
    const stop = workbook.onSelection(refresh);
    return () => {
      newest.current += 1;
      stop();
    };
  }, [workbook, refresh]);
  return { view, refresh };
}
