import { abs, max, min } from '../arithmetic';
import { LEAST_PIVOT, TOLERANCE, type Tableau } from './tableau';

/** How far a value is from where it may be: below 0, or anything for a banned column. */
function excess({ basis, values, isBanned }: Tableau, row: number): number {
  const value = values[row]!;
  return value < 0 || isBanned[basis[row]!] ? abs(value) : 0;
}

/** True where every value may be. */
export function isFeasible(tableau: Tableau): boolean {
  for (let i = 0; i < tableau.values.length; i++) if (excess(tableau, i) > TOLERANCE) return false;
  return true;
}

function leavingRow(tableau: Tableau, weight: Float64Array): number {
  let best = -1;
  let bestGain = 0;
  for (let i = 0; i < weight.length; i++) {
    const much = excess(tableau, i);
    if (much > TOLERANCE && much * much > bestGain * weight[i]!) [best, bestGain] = [i, (much * much) / weight[i]!];
  }
  return best;
}

/** The column whose reduced cost falls to 0 first; of those that nearly do, the one with the largest pivot. */
function enteringColumn({ rowEntries, reduced, isBanned, columns }: Tableau, sign: number): number {
  let least = Infinity;
  for (let j = 0; j < columns.count; j++) {
    const entry = sign * rowEntries[j]!;
    if (entry > LEAST_PIVOT && !isBanned[j]) least = min(least, (max(0, reduced[j]!) + TOLERANCE) / entry);
  }
  let best = -1;
  for (let j = 0; j < columns.count; j++) {
    const entry = sign * rowEntries[j]!;
    if (entry <= LEAST_PIVOT || isBanned[j] || max(0, reduced[j]!) / entry > least) continue;
    if (best < 0 || entry > sign * rowEntries[best]!) best = j;
  }
  return best;
}

/** Columns that would still improve count as if they just did not; true where there are such. */
function shifted({ reduced, columns }: Tableau): boolean {
  let isShifted = false;
  for (let j = 0; j < columns.count; j++) {
    if (reduced[j]! < -TOLERANCE) isShifted = true;
    reduced[j] = max(0, reduced[j]!);
  }
  return isShifted;
}

/**
 * Dual simplex with devex pricing, until no value is negative and no banned column is in use. Columns that would still improve are left
 * for the primal simplex.
 * @param enough ends it once no solution is worth less
 * @returns false where the limit of pivots, a bad pivot or the end of the work ended it
 */
export function dualSimplex(tableau: Tableau, enough: number, limit: number): boolean {
  const weight = new Float64Array(tableau.values.length).fill(1);
  tableau.price();
  let isShifted = shifted(tableau);
  for (let count = 0; count < limit; count++) {
    if (tableau.work.over) return false;
    if (tableau.isStale) {
      if (!tableau.refactor()) return false;
      tableau.price();
      isShifted = shifted(tableau);
    }
    if (!isShifted && tableau.objective > enough) return true;
    const row = leavingRow(tableau, weight);
    if (row < 0) return true;
    tableau.readRow(row);
    const entering = enteringColumn(tableau, tableau.values[row]! < 0 ? -1 : 1);
    if (entering < 0) return false;
    tableau.aim(entering);
    if (abs(tableau.direction[row]!) < LEAST_PIVOT) return false;
    weigh(tableau, weight, row);
    tableau.reduced[entering] = max(0, tableau.reduced[entering]!);
    tableau.exchange(row, entering);
  }
  return false;
}

/** How far the reduced costs move when a row leaves, about and squared. */
function weigh({ direction }: Tableau, weight: Float64Array, row: number): void {
  const pivot = direction[row]!;
  const own = weight[row]!;
  for (let i = 0; i < weight.length; i++) {
    if (direction[i] !== 0) weight[i] = max(weight[i]!, (direction[i]! / pivot) ** 2 * own);
  }
  weight[row] = max(own / (pivot * pivot), 1);
}
