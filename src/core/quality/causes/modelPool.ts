import type { CauseSet } from './causeModel';
import { KEPT_WITHIN, MOST_MODELS } from './causeRule';

/** A set of causes and how good an explanation it is: less is better. */
export interface RatedSet {
  readonly causes: CauseSet;
  readonly criterion: number;
}

/** Every model met that is nearly as good as the best. */
export interface ModelPool {
  readonly best: number;
  /** True for a model nearly as good as the best so far. */
  wants(criterion: number): boolean;
  note(causes: CauseSet, criterion: number): void;
  /** Best first; of equals the one met first. */
  sorted(): RatedSet[];
}

export function modelPool(): ModelPool {
  const met = new Map<string, RatedSet>();
  let best = Infinity;
  const wants = (criterion: number) => criterion <= best + KEPT_WITHIN;
  return {
    get best() {
      return best;
    },
    wants,
    note: (causes, criterion) => {
      if (!wants(criterion)) return;
      const key = causes.join();
      if (!met.has(key)) met.set(key, { causes, criterion });
      if (criterion < best) best = criterion;
    },
    sorted: () =>
      [...met.values()]
        .filter(({ criterion }) => wants(criterion))
        .sort((a, b) => a.criterion - b.criterion)
        .slice(0, MOST_MODELS),
  };
}
