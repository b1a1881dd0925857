/** A value of a series: values of one group are alike but for their scatter. In order of time. */
export interface GroupedValue {
  readonly group: string;
  readonly value: number;
}

/** Two clusters of values that take turns. */
export interface TwoGroups {
  /** How far apart they lie. */
  readonly apart: number;
  /** Scatter inside either. */
  readonly scatter: number;
}

const LEAST_VALUES = 30;
/** Share of the smaller cluster. */
const LEAST_SHARE = 0.12;
/** The clusters lie so many scatters apart. */
const CLEAR = 2.4;
/** How much better than one cluster with two scatters (log likelihood). */
const BETTER = 5;
/** The clusters take turns in as many runs as chance gives them; fewer by so many standard deviations mean that they were not at the same time. */
const FEWEST_RUNS = -2.5;
/** Both clusters occur in this share of the groups that have so many values. */
const IN_GROUPS = 0.6;
const OF_VALUES = 5;
const ROUNDS = 80;
const LEAST_VARIANCE = 1e-6;

const total = (values: readonly number[]) => values.reduce((all, each) => all + each, 0);
const density = (x: number, variance: number) => Math.exp((-x * x) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
const leastVariance = (variance: number) => Math.max(variance, LEAST_VARIANCE);
const logSum = (densities: readonly number[]) => total(densities.map(each => Math.log(each || Number.MIN_VALUE)));

/** Values less the mean of their group; groups of one say nothing. */
function residuals(series: readonly GroupedValue[]): GroupedValue[] {
  const groups = new Map<string, number[]>();
  for (const { group, value } of series) groups.set(group, [...(groups.get(group) ?? []), value]);
  return series.flatMap(({ group, value }) => {
    const values = groups.get(group)!;
    // A mean takes part of the scatter with it.
    const share = Math.sqrt(values.length / Math.max(values.length - 1, 1));
    return values.length < 2 ? [] : [{ group, value: (value - total(values) / values.length) * share }];
  });
}

/** Two normal clusters of one scatter around their common mean of 0, by expectation and maximization. */
function twoClusters(values: readonly number[]) {
  const all = total(values.map(value => value * value)) / values.length;
  let [share, low, high, variance] = [0.5, -Math.sqrt(all), Math.sqrt(all), leastVariance(all / 4)];
  const upper = (value: number) => share * density(value - high, variance);
  const both = (value: number) => (1 - share) * density(value - low, variance) + upper(value);
  const belongsOf = () => values.map(value => upper(value) / (both(value) || Number.MIN_VALUE));
  for (let round = 0; round < ROUNDS; round++) {
    const belongs = belongsOf();
    const count = total(belongs);
    const rest = values.length - count;
    high = total(values.map((value, i) => belongs[i]! * value)) / Math.max(count, 1e-9);
    low = total(values.map((value, i) => (1 - belongs[i]!) * value)) / Math.max(rest, 1e-9);
    const squares = values.map((value, i) => belongs[i]! * (value - high) ** 2 + (1 - belongs[i]!) * (value - low) ** 2);
    variance = leastVariance(total(squares) / values.length);
    share = count / values.length;
  }
  return { apart: high - low, variance, share, isUpper: belongsOf().map(each => each > 0.5), fit: logSum(values.map(both)) };
}

/** One cluster whose scatter is now small, now large. */
function oneCluster(values: readonly number[]): number {
  const squares = values.map(value => value * value);
  const all = total(squares);
  const mean = all / values.length;
  let [share, small, large] = [0.5, leastVariance(mean / 4), leastVariance(mean * 2)];
  const both = (value: number) => (1 - share) * density(value, small) + share * density(value, large);
  for (let round = 0; round < ROUNDS; round++) {
    const belongs = values.map(value => (share * density(value, large)) / (both(value) || Number.MIN_VALUE));
    const count = total(belongs);
    const ofLarge = total(squares.map((square, i) => belongs[i]! * square));
    [share, small, large] = [
      count / values.length,
      leastVariance((all - ofLarge) / Math.max(values.length - count, 1e-9)),
      leastVariance(ofLarge / Math.max(count, 1e-9)),
    ];
  }
  return logSum(values.map(both));
}

/** Whether both come at the same time: a change of all and back gives first the one, then the other. */
function takeTurns(isUpper: readonly boolean[]): boolean {
  const count = isUpper.length;
  const ups = isUpper.filter(Boolean).length;
  const runs = 1 + isUpper.filter((each, i) => i > 0 && each !== isUpper[i - 1]).length;
  const pairs = 2 * ups * (count - ups);
  const variance = (pairs * (pairs - count)) / (count ** 2 * (count - 1));
  return variance > 0 && (runs - pairs / count - 1) / Math.sqrt(variance) >= FEWEST_RUNS;
}

/** Whether both occur in most groups: a single group that changed is no second machine. */
function areInMostGroups(series: readonly GroupedValue[], isUpper: readonly boolean[]): boolean {
  const counts = new Map<string, readonly [upper: number, all: number]>();
  series.forEach(({ group }, i) => {
    const [upper, all] = counts.get(group) ?? [0, 0];
    counts.set(group, [upper + (isUpper[i] ? 1 : 0), all + 1]);
  });
  const large = [...counts.values()].filter(([, all]) => all >= OF_VALUES);
  const mixed = large.filter(([upper, all]) => upper > 0 && upper < all);
  return large.length > 0 && mixed.length >= IN_GROUPS * large.length;
}

/**
 * Whether the values of groups that should be alike lie in two clusters at the same time: two machines under one name.
 * Values are held against the mean of their group, so that what groups differ by is no matter; clusters must take turns in time and occur in most
 * groups, so that neither a change of all nor one of a few is mistaken for it.
 * @param least distance that matters
 * Source, from memory: mixture of normals by expectation and maximization (Dempster, Laird & Rubin 1977); runs test (Wald & Wolfowitz 1940).
 */
export function twoGroups(series: readonly GroupedValue[], least: number): TwoGroups | undefined {
  const rest = residuals(series);
  if (rest.length < LEAST_VALUES) return undefined;
  const values = rest.map(({ value }) => value);
  const { apart, variance, share, isUpper, fit } = twoClusters(values);
  const isClear = apart >= least && apart >= CLEAR * Math.sqrt(variance) && Math.min(share, 1 - share) >= LEAST_SHARE;
  if (!isClear || !takeTurns(isUpper) || !areInMostGroups(rest, isUpper)) return undefined;
  return fit - oneCluster(values) < BETTER ? undefined : { apart, scatter: Math.sqrt(variance) };
}
