import { useCallback, useState } from 'react';
import { errorSentence } from '../../workbook/errorSentence';

/** What became of the last thing asked for. */
export type Outcome<T> =
  | { readonly status: 'idle' | 'busy' }
  | { readonly status: 'done'; readonly result: T }
  | { readonly status: 'failed'; readonly reason: string };

/** Runs one thing at a time and keeps what became of it. */
export function useRun<T>(): readonly [outcome: Outcome<T>, run: (work: () => Promise<T>) => Promise<void>] {
  const [outcome, setOutcome] = useState<Outcome<T>>({ status: 'idle' });
  const run = useCallback(async (work: () => Promise<T>) => {
    setOutcome({ status: 'busy' });
    try {
      setOutcome({ status: 'done', result: await work() });
    } catch (error) {
      setOutcome({ status: 'failed', reason: errorSentence(error) });
    }
  }, []);
  return [outcome, run];
}
