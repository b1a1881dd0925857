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

/** A difference between values of a group that follow each other, with its sign. */
type Step = number;

const LEAST_STEPS = 24;
/** Share of steps from one cluster to the other. */
const LEAST_SHARE = 0.2;
const LEAST_CROSSINGS = 8;
/** Steps of one sign among the crossings: ups and downs take turns. */
const LEAST_OF_A_SIGN = 0.3;
/** The clusters lie so many scatters of a difference apart. */
const CLEAR = 1.8;
/** How much better than one cluster with two scatters (log likelihood). */
const BETTER = 5;
/** Ups and downs come in as many runs as chance gives them; fewer by so many standard deviations mean that they were not at the same time. */
const FEWEST_RUNS = -2.5;
const ROUNDS = 60;
const LEAST_VARIANCE = 1e-6;

function stepsOf(series: readonly GroupedValue[]): Step[] {
  const last = new Map<string, number>();
  return series.flatMap(({ group, value }) => {
    const before = last.get(group);
    last.set(group, value);
    return before === undefined ? [] : [value - before];
  });
}

const density = (x: number, variance: number) => Math.exp((-x * x) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
const total = (values: readonly number[]) => values.reduce((all, each) => all + each, 0);
const leastVariance = (variance: number) => Math.max(variance, LEAST_VARIANCE);

/** Log likelihood of one cluster whose scatter is now small, now large. */
function oneCluster(steps: readonly Step[]): number {
  const mean = total(steps.map(step => step * step)) / steps.length;
  let [share, small, large] = [0.5, leastVariance(mean / 4), leastVariance(mean * 2)];
  const mixed = (step: Step) => (1 - share) * density(step, small) + share * density(step, large);
  for (let round = 0; round < ROUNDS; round++) {
    const belongs = steps.map(step => (share * density(step, large)) / mixed(step));
    const ofLarge = total(belongs);
    const squares = total(steps.map((step, i) => belongs[i]! * step * step));
    const all = total(steps.map(step => step * step));
    [share, small, large] = [
      ofLarge / steps.length,
      leastVariance((all - squares) / Math.max(steps.length - ofLarge, 1e-9)),
      leastVariance(squares / Math.max(ofLarge, 1e-9)),
    ];
  }
  return total(steps.map(step => Math.log(mixed(step))));
}

/** Two clusters `apart`: a step stays in its cluster, or goes up or down by that. */
function twoClusters(steps: readonly Step[]) {
  const sizes = steps.map(Math.abs).sort((a, b) => a - b);
  let apart = sizes[Math.floor(0.85 * sizes.length)]!;
  let variance = leastVariance(sizes[Math.floor(0.3 * sizes.length)]! ** 2 * 2);
  let share = 0.4;
  const crossing = (step: Step) => (share / 2) * (density(step - apart, variance) + density(step + apart, variance));
  const mixed = (step: Step) => (1 - share) * density(step, variance) + crossing(step);
  const belongsOf = () => steps.map(step => crossing(step) / (mixed(step) || Number.MIN_VALUE));
  for (let round = 0; round < ROUNDS; round++) {
    const belongs = belongsOf();
    const crossings = total(belongs);
    apart = total(steps.map((step, i) => belongs[i]! * Math.abs(step))) / Math.max(crossings, 1e-9);
    const squares = steps.map((step, i) => belongs[i]! * (Math.abs(step) - apart) ** 2 + (1 - belongs[i]!) * step * step);
    variance = leastVariance(total(squares) / steps.length);
    share = crossings / steps.length;
  }
  const belongs = belongsOf();
  return {
    apart,
    variance,
    share,
    crossings: steps.filter((_, i) => belongs[i]! > 0.5),
    likelihood: total(steps.map(step => Math.log(mixed(step) || Number.MIN_VALUE))),
  };
}

/** Whether ups and downs come at the same time: a change of all and back gives first the one, then the other. */
function takeTurns(crossings: readonly Step[]): boolean {
  const count = crossings.length;
  const ups = crossings.filter(step => step > 0).length;
  if (count < LEAST_CROSSINGS || Math.min(ups, count - ups) < LEAST_OF_A_SIGN * count) return false;
  const runs = 1 + crossings.filter((step, i) => i > 0 && step > 0 !== crossings[i - 1]! > 0).length;
  const mixedPairs = 2 * ups * (count - ups);
  const expected = mixedPairs / count + 1;
  const variance = (mixedPairs * (mixedPairs - count)) / (count ** 2 * (count - 1));
  return (runs - expected) / Math.sqrt(variance) >= FEWEST_RUNS;
}

/**
 * Whether the values of groups that should be alike lie in two clusters at the same time: two machines under one name.
 * Only steps inside a group count, so that neither what groups differ by nor a change of all is mistaken for it.
 * @param least distance that matters
 * Source, from memory: mixture of normals by expectation and maximization (Dempster, Laird & Rubin 1977); runs test (Wald & Wolfowitz 1940).
 */
export function twoGroups(series: readonly GroupedValue[], least: number): TwoGroups | undefined {
  const steps = stepsOf(series);
  if (steps.length < LEAST_STEPS) return undefined;
  const { apart, variance, share, crossings, likelihood } = twoClusters(steps);
  const isClear = apart >= least && apart >= CLEAR * Math.sqrt(variance) && share >= LEAST_SHARE;
  if (!isClear || !takeTurns(crossings) || likelihood - oneCluster(steps) < BETTER) return undefined;
  return { apart, scatter: Math.sqrt(variance / 2) };
}
