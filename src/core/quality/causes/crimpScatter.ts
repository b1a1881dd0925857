import { median } from '../median';
import { PRIOR_SCATTER, PRIOR_WEIGHT } from './causeRule';
import type { CrimpSeries } from './crimpSeries';

/** With so many differences their median tells which of them are too large to be scatter. */
const ENOUGH = 6;
const LEAST_SCATTER = 0.02;

/**
 * Step 2: variance of the scatter from crimp to crimp, from differences of successive crimps of a combination, so that neither settings nor slow changes count;
 * no difference counts more than three robust scatters.
 * Source, from memory: von Neumann et al. 1941.
 */
export function crimpScatter({ deviation, ofCombination }: CrimpSeries): number {
  const differences = ofCombination.flatMap(crimps =>
    crimps.slice(1).map((crimp, before) => Math.abs(deviation[crimp]! - deviation[crimps[before]!]!) / Math.SQRT2),
  );
  const most = differences.length < ENOUGH ? Infinity : 3 * Math.max(1.4826 * median(differences), LEAST_SCATTER);
  const squares = differences.reduce((total, difference) => total + Math.min(difference, most) ** 2, 0);
  return (PRIOR_WEIGHT * PRIOR_SCATTER ** 2 + squares) / (PRIOR_WEIGHT + differences.length);
}
