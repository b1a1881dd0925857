import { columnAt, type Cause } from './cause';
import { SPREAD } from './causeRule';
import type { CrimpSeries } from './crimpSeries';
import { lineProduct, stretchMoments } from './stretchMoments';
import type { TimeStretches } from './timeStretches';

/**
 * Products of the candidates' columns with each other and with the deviations, taken where combinations differ by a spread of their own (step 4):
 * <x, y> = Σ xy − Σ over combinations of weight · (Σ x)(Σ y).
 */
export interface CauseProducts {
  readonly causes: readonly Cause[];
  readonly crimps: number;
  /** Variance from crimp to crimp. */
  readonly scatter: number;
  /** Of the deviations with themselves, and of each cause with them and with itself. */
  readonly deviations: number;
  readonly withDeviations: Float64Array;
  readonly withItself: Float64Array;
  /** Of one cause with every cause. */
  readonly withAll: (cause: number) => Float64Array;
}

/** Sums of a column over the combinations in which it is not 0. */
interface CombinationSums {
  readonly combinations: Int32Array;
  readonly sums: Float64Array;
}

const EVERY_DIE = -1;

/** A column's sums, and its plain products with the deviations and itself. */
function walk(cause: Cause, crimps: readonly number[], series: CrimpSeries, time: TimeStretches) {
  const totals = new Float64Array(series.combinations.length);
  const met: number[] = [];
  let withDeviations = 0;
  let withItself = 0;
  for (const crimp of crimps) {
    const value = columnAt(cause, crimp, series, time);
    if (value === 0) continue;
    const combination = series.combination[crimp]!;
    if (totals[combination] === 0) met.push(combination);
    totals[combination]! += value;
    withDeviations += value * series.deviation[crimp]!;
    withItself += value * value;
  }
  const found: CombinationSums = { combinations: Int32Array.from(met), sums: new Float64Array(met.length) };
  met.forEach((combination, index) => (found.sums[index] = totals[combination]!));
  return { found, withDeviations, withItself };
}

/** The crimps at which a cause may be anything but 0. */
function crimpsOf(series: CrimpSeries) {
  const all = series.crimps.map((_, crimp) => crimp);
  const ofDie = series.dies.map((_, die) => all.filter(crimp => series.die[crimp] === die));
  return ({ kind, of }: Cause): readonly number[] => {
    if (kind === 'combination') return series.ofCombination[of]!;
    if (kind === 'crimp') return [of];
    return ofDie[of] ?? all;
  };
}

/** Multiplies columns before combinations are allowed for, but for a combination with any other (their product is a sum that is known). */
function plainProducts(causes: readonly Cause[], series: CrimpSeries, time: TimeStretches) {
  const moments = new Map([[EVERY_DIE, stretchMoments(series, time)]]);
  series.dies.forEach((_, die) => moments.set(die, stretchMoments(series, time, die)));
  return (a: Cause, b: Cause): number => {
    if (a.kind === 'crimp') return columnAt(b, a.of, series, time);
    if (b.kind === 'crimp') return columnAt(a, b.of, series, time);
    if (a.of >= 0 && b.of >= 0 && a.of !== b.of) return 0;
    return lineProduct(a.line!, b.line!, moments.get(Math.max(a.of, b.of))!, time.middle);
  };
}

/** @param scatter variance from crimp to crimp */
export function causeProducts(
  causes: readonly Cause[],
  series: CrimpSeries,
  time: TimeStretches,
  scatter: number,
): CauseProducts {
  const ratio = SPREAD ** 2 / scatter;
  const weights = Float64Array.from(series.ofCombination, ({ length }) => ratio / (1 + length * ratio));
  const totals = new Float64Array(weights.length);
  series.deviation.forEach((deviation, crimp) => (totals[series.combination[crimp]!]! += deviation));
  const less = (plain: number, { combinations, sums }: CombinationSums, others: (combination: number, index: number) => number) =>
    combinations.reduce((rest, each, index) => rest - weights[each]! * sums[index]! * others(each, index), plain);

  const crimps = crimpsOf(series);
  const columns = causes.map(cause => walk(cause, crimps(cause), series, time));
  const plain = plainProducts(causes, series, time);

  /** The product of a combination with any column is that column's sum over it: taken out of the weights here. */
  const withAll = (cause: number): Float64Array => {
    const { kind, of } = causes[cause]!;
    const own = new Float64Array(weights.length);
    columns[cause]!.found.combinations.forEach((each, index) => (own[each] = columns[cause]!.found.sums[index]!));
    const weighted = own.map((each, combination) => each * weights[combination]!);
    const isCombination = kind === 'combination';
    if (isCombination) weighted[of]! -= 1;
    // A search asks for hundreds of these, each with every candidate: plain loops.
    const products = new Float64Array(causes.length);
    for (let index = 0; index < products.length; index++) {
      const other = causes[index]!;
      const { combinations, sums } = columns[index]!.found;
      let product = 0;
      if (!isCombination) product = other.kind === 'combination' ? own[other.of]! : plain(causes[cause]!, other);
      for (let each = 0; each < sums.length; each++) product -= sums[each]! * weighted[combinations[each]!]!;
      products[index] = product;
    }
    return products;
  };
  const kept = new Map<number, Float64Array>();
  return {
    causes,
    crimps: series.crimps.length,
    scatter,
    deviations:
      series.deviation.reduce((total, each) => total + each ** 2, 0) -
      totals.reduce((total, each, index) => total + weights[index]! * each ** 2, 0),
    withDeviations: Float64Array.from(columns, ({ found, withDeviations }) => less(withDeviations, found, each => totals[each]!)),
    withItself: Float64Array.from(columns, ({ found, withItself }) => less(withItself, found, (_, index) => found.sums[index]!)),
    withAll: cause => {
      const known = kept.get(cause) ?? withAll(cause);
      kept.set(cause, known);
      return known;
    },
  };
}
