import { max, min } from '../arithmetic';
import { LEAST_PIVOT, TOLERANCE, type Tableau } from './tableau';

/** Weights start anew where one grows beyond this. */
const LARGEST_WEIGHT = 1e7;

/** The column that promises most; after very many pivots simply the first one (Bland), against cycling. */
function enteringColumn(tableau: Tableau, weight: Float64Array, isBland: boolean): number {
  const { reduced, cost, isBanned } = tableau;
  let best = -1;
  let bestGain = 0;
  for (let j = 0, n = tableau.columns.count; j < n; j++) {
    const d = reduced[j]!;
    if (d >= -TOLERANCE || d * d <= bestGain * weight[j]! || d >= -TOLERANCE * (1 + cost[j]!) || isBanned[j]) continue;
    if (isBland) return j;
    bestGain = (d * d) / weight[j]!;
    best = j;
  }
  tableau.work.spendFlops(tableau.columns.count);
  return best;
}

/** The row whose value falls to 0 first; of those that nearly do, the one with the largest pivot. */
function leavingRow({ direction, values }: Tableau): number {
  let least = Infinity;
  for (let i = 0; i < values.length; i++) {
    if (direction[i]! > LEAST_PIVOT) least = min(least, (max(0, values[i]!) + TOLERANCE) / direction[i]!);
  }
  let best = -1;
  for (let i = 0; i < values.length; i++) {
    if (direction[i]! <= LEAST_PIVOT || max(0, values[i]!) / direction[i]! > least) continue;
    if (best < 0 || direction[i]! > direction[best]!) best = i;
  }
  return best;
}

/** How far the basic values move when a column comes in, about and squared (devex; Forrest and Goldfarb 1992). */
function weigh(
  { rowEntries, direction, columns }: Tableau,
  weight: Float64Array,
  row: number,
  entering: number,
  leaving: number,
) {
  const share = weight[entering]! / (direction[row]! * direction[row]!);
  let largest = 0;
  for (let j = 0; j < columns.count; j++) {
    const entry = rowEntries[j]!;
    if (entry === 0) continue;
    weight[j] = max(weight[j]!, entry * entry * share);
    largest = max(largest, weight[j]!);
  }
  weight[leaving] = max(share, 1);
  if (largest > LARGEST_WEIGHT) weight.fill(1);
}

/**
 * Primal simplex with devex pricing, from a basis whose values are not negative.
 * @returns true where the basis is optimal; false where the limit of pivots, a bad pivot or the end of the work ended it
 */
export function primalSimplex(tableau: Tableau, limit: number): boolean {
  const weight = new Float64Array(tableau.columns.count).fill(1);
  let isFresh = false;
  for (let count = 0; count < limit; count++) {
    if (tableau.work.over) return false;
    if (tableau.isStale) {
      if (!tableau.refactor()) return false;
      isFresh = false;
    }
    const entering = enteringColumn(tableau, weight, count > limit / 2);
    if (entering < 0) {
      if (isFresh) return true;
      tableau.price();
      isFresh = true;
      continue;
    }
    isFresh = false;
    tableau.aim(entering);
    const row = leavingRow(tableau);
    if (row < 0) return false;
    tableau.readRow(row);
    const leaving = tableau.basis[row]!;
    weigh(tableau, weight, row, entering, leaving);
    tableau.values[row] = max(0, tableau.values[row]!);
    tableau.exchange(row, entering);
  }
  return false;
}
