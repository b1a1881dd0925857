import type { Catalogue } from './catalogue';
import { fluidRowsFor } from './fluidRows';
import type { Problem } from './problem';
import type { Hose } from './tables/hosesTable';

/** One end of a range of temperatures. */
interface Limit {
  readonly value: number;
  /** It is the fluid's, narrower than the hose's own. */
  readonly byFluid: boolean;
}

/** The temperatures a hose may be used at, in the catalogue's unit. */
export interface TemperatureLimits {
  /** undefined where neither the hose nor the fluid states it. */
  readonly coldest: Limit | undefined;
  readonly hottest: Limit | undefined;
  /** Why the fluid's limits are not known: its row was left out. */
  readonly problem: Problem | undefined;
}

function narrower(own: number | undefined, fluid: readonly number[], pick: (...values: number[]) => number): Limit | undefined {
  const stated = own === undefined ? fluid : [own, ...fluid];
  if (stated.length === 0) return undefined;
  const value = pick(...stated);
  return { value, byFluid: value !== own };
}

/** The narrower of a hose's own range and that of a fluid in it (table Fluids); without a fluid, the hose's own. */
export function temperatureLimits(catalogue: Catalogue, hose: Hose, fluid?: string): TemperatureLimits {
  const rows = fluid === undefined ? [] : fluidRowsFor(catalogue, hose, fluid);
  const stated = (key: 'coldest' | 'hottest') => rows.flatMap(({ entry }) => entry.row?.[key] ?? []);
  return {
    coldest: narrower(hose.coldest, stated('coldest'), Math.max),
    hottest: narrower(hose.hottest, stated('hottest'), Math.min),
    problem: rows.find(({ entry }) => entry.problem)?.entry.problem,
  };
}
