import { useCallback, useEffect, useRef, useState } from 'react';
import { forget, keep, leftBehind } from './keptWorkbooks';
import type { Spreadsheet } from './spreadsheet';

/** Changes that come together are kept once. */
const KEEP_AFTER_MS = 1500;

/** What a person says about changes that stand in no file yet. */
export type Farewell = 'save' | 'drop' | 'stay';
type Left = Awaited<ReturnType<typeof leftBehind>>;

/**
 * Nothing is lost: the browser asks before the page is left with unsaved changes, the page asks before it opens something else, and what
 * was changed is kept in the browser and offered again after a crash.
 */
export function useUnsaved(spreadsheet: Spreadsheet | undefined, title: string) {
  const isUnsaved = useRef(false);
  const isUncounted = useRef(false);
  const [asking, setAsking] = useState<(answer: Farewell) => void>();
  const [left, setLeft] = useState<Left>([]);

  useEffect(() => void leftBehind().then(setLeft), []);

  useEffect(() => {
    const leaving = (event: BeforeUnloadEvent) => isUnsaved.current && event.preventDefault();
    window.addEventListener('beforeunload', leaving);
    return () => window.removeEventListener('beforeunload', leaving);
  }, []);

  const latest = useRef<{ spreadsheet: Spreadsheet; title: string }>(undefined);
  useEffect(() => {
    latest.current = spreadsheet && { spreadsheet, title };
  }, [spreadsheet, title]);

  const keepNow = useCallback(async () => {
    if (!latest.current) return;
    isUnsaved.current = true;
    await keep({ title: latest.current.title, at: Date.now(), opened: latest.current.spreadsheet.snapshot() });
  }, []);

  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(
    () =>
      spreadsheet?.onChanged(() => {
        if (isUncounted.current) return;
        isUnsaved.current = true;
        clearTimeout(timer.current);
        timer.current = setTimeout(() => void keepNow(), KEEP_AFTER_MS);
      }),
    [spreadsheet, keepNow],
  );

  const settled = useCallback(() => {
    isUnsaved.current = false;
    clearTimeout(timer.current);
    void forget();
  }, []);

  /** What the person wants to become of unsaved changes; at once where there are none. */
  const farewell = useCallback((): Promise<Farewell> => {
    if (!isUnsaved.current) return Promise.resolve('drop');
    return new Promise(done => {
      setAsking(() => (answer: Farewell) => {
        setAsking(undefined);
        done(answer);
      });
    });
  }, []);

  /** Changes of the page's own, such as those of a tour, are nothing that a person could lose. */
  const uncounted = useCallback(async (work: () => Promise<void>) => {
    isUncounted.current = true;
    try {
      await work();
    } finally {
      isUncounted.current = false;
    }
  }, []);

  const forgetLeft = useCallback((key: string) => {
    setLeft(all => all.filter(one => one.key !== key));
    void forget(key);
  }, []);

  return { asking, keepNow, farewell, settled, uncounted, left: left[0], forgetLeft };
}
