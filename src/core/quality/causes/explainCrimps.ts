import { causeCosts } from './causeCosts';
import { causeModels } from './causeModel';
import { causeProducts } from './causeProducts';
import { causeSearch } from './causeSearch';
import { candidateCauses } from './candidateCauses';
import { crimpScatter } from './crimpScatter';
import type { CrimpSeries } from './crimpSeries';
import { explanations, type Explanation } from './presentState';
import { timeless, timeStretches, type TimeStretches } from './timeStretches';

/** What may explain the crimps, best first. */
export interface ExplainedCrimps {
  readonly all: readonly Explanation[];
  readonly time: TimeStretches;
  /** Variance from crimp to crimp. */
  readonly scatter: number;
}

function explainAt(series: CrimpSeries, time: TimeStretches, scatter: number): Explanation[] {
  const causes = candidateCauses(series, time, scatter);
  const models = causeModels(causeProducts(causes, series, time, scatter), causeCosts(causes, series.crimps.length));
  return explanations(causeSearch({ causes, models, dies: series.dies.length }), causes, models);
}

/**
 * Steps 2 to 7: the fewest causes that explain the crimps, and all explanations nearly as good.
 * Of very many dates some are searched first, then those near the boundaries that were chosen.
 */
export function explainCrimps(series: CrimpSeries): ExplainedCrimps {
  const scatter = crimpScatter(series);
  const dates = series.time;
  const time = dates ? timeStretches(dates) : timeless(series.crimps.length);
  const all = explainAt(series, time, scatter);
  const chosen = all[0]!.causes.flatMap(({ boundary }) => (boundary ? [boundary] : []));
  if (!dates || !time.thinned || chosen.length === 0) return { all, time, scatter };
  const closer = timeStretches(dates, chosen);
  return { all: explainAt(series, closer, scatter), time: closer, scatter };
}
