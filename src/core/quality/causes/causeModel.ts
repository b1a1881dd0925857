import type { CauseProducts } from './causeProducts';
import { EFFECT, PRIOR_SCATTER, PRIOR_WEIGHT, STRAY_EFFECT } from './causeRule';

/** Causes by number, ascending. */
export type CauseSet = readonly number[];

/** A set of causes solved for: A = X'X + diag(σ²/κ²) as a product of triangles, L. */
export interface SolvedModel {
  readonly causes: CauseSet;
  readonly triangle: readonly Float64Array[];
  /** L⁻¹X'y */
  readonly projected: readonly number[];
  /** ln det(A) + Σ ln(κ²/σ²) */
  readonly logDeterminant: number;
  /** Q: what is left of the squares of the deviations. */
  readonly unexplained: number;
  readonly cost: number;
}

/** Steps 4 and 5: sets of causes, how well they explain the deviations, and what they cost. */
export interface CauseModels {
  solve(causes: CauseSet): SolvedModel;
  /** −2 ln of how well it fits, but for a constant; less is better. */
  fit(model: SolvedModel): number;
  /** fit + cost */
  criterion(model: SolvedModel): number;
  /** Criterion of the model with each cause added that is not in it. */
  additions(model: SolvedModel, visit: (cause: number, criterion: number) => void): void;
  /** Coefficients of the causes. */
  coefficients(model: SolvedModel): Float64Array;
  /** Variance of a sum of coefficients. */
  variance(model: SolvedModel, weights: readonly number[]): number;
}

const NO_MORE = 1e-9;
const PRIOR_SQUARES = PRIOR_WEIGHT * PRIOR_SCATTER ** 2;

/** Solves L·x = b, as far as rows of L go. */
function forward(triangle: readonly Float64Array[], right: (row: number) => number, into: Float64Array): void {
  triangle.forEach((row, index) => {
    let value = right(index);
    for (let column = 0; column < index; column++) value -= row[column]! * into[column]!;
    into[index] = value / row[index]!;
  });
}

export function causeModels(products: CauseProducts, costs: Float64Array): CauseModels {
  const { causes, crimps, scatter, withDeviations, withItself, withAll } = products;
  /** κ²/σ²: how much larger effects may be than the scatter. */
  const prior = Float64Array.from(causes, ({ kind }) => (kind === 'crimp' ? STRAY_EFFECT : EFFECT) ** 2 / scatter);
  const score = (unexplained: number, logDeterminant: number) =>
    (crimps + PRIOR_WEIGHT) * Math.log(PRIOR_SQUARES + Math.max(unexplained, 0)) + logDeterminant;
  const fit = ({ unexplained, logDeterminant }: SolvedModel) => score(unexplained, logDeterminant);

  function solve(set: CauseSet): SolvedModel {
    const triangle: Float64Array[] = [];
    const projected: number[] = [];
    let [logDeterminant, unexplained, cost] = [0, products.deviations, 0];
    for (const cause of set) {
      const row = new Float64Array(set.length);
      const products_ = withAll(cause);
      forward(triangle, index => products_[set[index]!]!, row);
      const size = triangle.length;
      let [rest, value] = [withItself[cause]! + 1 / prior[cause]!, withDeviations[cause]!];
      for (let index = 0; index < size; index++) {
        rest -= row[index]! ** 2;
        value -= row[index]! * projected[index]!;
      }
      row[size] = Math.sqrt(Math.max(rest, 1e-12));
      triangle.push(row);
      projected.push(value / row[size]);
      logDeterminant += 2 * Math.log(row[size]) + Math.log(prior[cause]!);
      unexplained -= projected[size]! ** 2;
      cost += costs[cause]!;
    }
    return { causes: set, triangle, projected, logDeterminant, unexplained, cost };
  }

  function additions(model: SolvedModel, visit: (cause: number, criterion: number) => void): void {
    const { causes: set, triangle, projected } = model;
    const columns = set.map(withAll);
    const row = new Float64Array(set.length);
    // Nearly all time of a search goes in here: plain loops, nothing made anew.
    for (let cause = 0; cause < causes.length; cause++) {
      let rest = withItself[cause]! + 1 / prior[cause]!;
      let value = withDeviations[cause]!;
      for (let index = 0; index < row.length; index++) {
        const ofRow = triangle[index]!;
        let product = columns[index]![cause]!;
        for (let before = 0; before < index; before++) product -= ofRow[before]! * row[before]!;
        const part = product / ofRow[index]!;
        row[index] = part;
        rest -= part * part;
        value -= part * projected[index]!;
      }
      if (rest < NO_MORE) continue;
      const determinant = model.logDeterminant + Math.log(rest * prior[cause]!);
      visit(cause, score(model.unexplained - value ** 2 / rest, determinant) + model.cost + costs[cause]!);
    }
  }

  return {
    solve,
    fit,
    criterion: model => fit(model) + model.cost,
    additions,
    coefficients: ({ triangle, projected }) => {
      const found = new Float64Array(projected.length);
      for (let index = projected.length - 1; index >= 0; index--) {
        let value = projected[index]!;
        for (let later = index + 1; later < found.length; later++) value -= triangle[later]![index]! * found[later]!;
        found[index] = value / triangle[index]![index]!;
      }
      return found;
    },
    variance: ({ triangle, unexplained }, weights) => {
      const parts = new Float64Array(weights.length);
      forward(triangle, index => weights[index]!, parts);
      const left = (PRIOR_SQUARES + Math.max(unexplained, 0)) / (crimps + PRIOR_WEIGHT);
      return left * parts.reduce((total, part) => total + part ** 2, 0);
    },
  };
}
