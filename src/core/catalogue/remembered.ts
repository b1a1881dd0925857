import { TradeError } from '../tradeError';
import type { Catalogue } from './catalogue';

/** Keys kept a catalogue; beyond them it is begun anew. */
const KEPT = 50_000;

/**
 * Remembers what was worked out for a catalogue, errors of the trade included: rows of a sheet name the same few parts again and again.
 * @returns a function that answers from memory or, the first time, by `work`
 */
export function remembered<T>(): (catalogue: Catalogue, key: string, work: () => T) => T {
  const known = new WeakMap<Catalogue, Map<string, T | TradeError>>();
  const answerOf = (work: () => T): T | TradeError => {
    try {
      return work();
    } catch (error) {
      if (error instanceof TradeError) return error;
      throw error;
    }
  };
  return (catalogue, key, work) => {
    let answers = known.get(catalogue);
    if (!answers) known.set(catalogue, (answers = new Map()));
    let answer = answers.get(key);
    if (answer === undefined) {
      if (answers.size >= KEPT) answers.clear();
      answers.set(key, (answer = answerOf(work)));
    }
    if (answer instanceof TradeError) throw answer;
    return answer;
  };
}
