import { tQuantile } from '../tQuantile';
import { causeAt, isOfDie, isOfMachine, presentShare, type Cause } from './cause';
import type { CrimpSeries } from './crimpSeries';
import { leastSquares } from './leastSquares';
import type { TimeStretches } from './timeStretches';
import { withinScatter, type WithinScatter } from './withinScatter';

export type Interval = readonly [low: number, high: number];

/** An offset in the unit of the deviations. */
export interface MeasuredOffset {
  readonly offset: number;
  /** Missing where the scatter is not known. */
  readonly interval?: Interval | undefined;
}

/** What is reported of an explanation, in the unit of the deviations. */
export interface CauseNumbers {
  /** Offset of the machine now; undefined where every combination is off by itself. */
  readonly machine: MeasuredOffset | undefined;
  /** Offset of the machine at a crimp (in order of time). */
  readonly machineAt: (crimp: number) => number;
  /** What combinations are off beyond machine and dies; undefined where all their crimps were set aside. */
  readonly combinations: readonly (MeasuredOffset | undefined)[];
  /** What dies are off beyond the machine. */
  readonly dies: readonly (number | undefined)[];
  /** What a crimp is off beyond machine and dies. */
  readonly beyond: (crimp: number) => number;
  readonly scatter: WithinScatter;
}

/** A combination that decides a column of the fit alone has no deviation of its own left. */
const NONE = 1e-9;
/** Offsets are sums of readings; beyond these places they only carry the noise of binary numbers. */
const tidy = (value: number) => Number(value.toFixed(12));

/** Offsets with their intervals: how far they reach for a variance of 1 is the same for all. */
function measuredWith({ scatter, df }: WithinScatter, confidence: number) {
  const unitReach = df > 0 ? tQuantile((1 + confidence) / 2, df) * scatter : NaN;
  return (offset: number, unitVariance: number): MeasuredOffset => {
    if (!(df > 0) || !(unitVariance > NONE)) return { offset: tidy(offset) };
    const reach = unitReach * Math.sqrt(unitVariance);
    return { offset: tidy(offset), interval: [tidy(offset - reach), tidy(offset + reach)] };
  };
}

const meanOf = (values: readonly number[]) => values.reduce((total, value) => total + value, 0) / values.length;

/**
 * Step 11: plain least squares of the machine's and the dies' causes, without crimps set aside and combinations that are off by themselves.
 * @param causes of the best explanation
 */
export function causeNumbers(
  series: CrimpSeries,
  time: TimeStretches,
  causes: readonly Cause[],
  confidence: number,
): CauseNumbers {
  const strays = new Set(causes.flatMap(({ kind, of }) => (kind === 'crimp' ? [of] : [])));
  const own = new Set(causes.flatMap(({ kind, of }) => (kind === 'combination' ? [of] : [])));
  const lines = causes.filter(cause => cause.line && cause.kind !== 'machine');
  const deviations = Float64Array.from(series.crimps, ({ deviation }) => deviation);
  const row = (crimp: number) => [1, ...lines.map(line => causeAt(line, crimp, series, time))];
  const rows = series.crimps.map((_, crimp) => row(crimp));
  const fitOf = (crimps: readonly number[]) => {
    const columns = [1, ...lines].map((_, column) => Float64Array.from(crimps, crimp => rows[crimp]![column]!));
    const values = Float64Array.from(crimps, crimp => deviations[crimp]!);
    const groups = crimps.map(crimp => series.combination[crimp]!);
    return { ...leastSquares(columns, values), within: withinScatter(columns.slice(1), values, groups) };
  };

  const counted = series.crimps.map((_, crimp) => crimp).filter(crimp => !strays.has(crimp));
  const used = counted.filter(crimp => !own.has(series.combination[crimp]!));
  const fit = fitOf(used);
  const measured = measuredWith(fitOf(counted).within, confidence);
  const sumOf = (weights: readonly number[]) =>
    weights.reduce((total, weight, column) => total + weight * fit.coefficients[column]!, 0);
  const ofMachine = (weights: readonly number[]) =>
    weights.map((weight, column) => (column === 0 || isOfMachine(lines[column - 1]!) ? weight : 0));
  const beyond = (crimp: number) => deviations[crimp]! - sumOf(rows[crimp]!);

  const combinations = series.ofCombination.map((all, number) => {
    const crimps = all.filter(crimp => !strays.has(crimp));
    if (crimps.length === 0) return undefined;
    const ofFit = fit.unitVariance([1, ...lines].map((_, column) => meanOf(crimps.map(crimp => rows[crimp]![column]!))));
    // The mean of one that the fit rests on moves the fit along with it.
    const unit = own.has(number) ? 1 / crimps.length + ofFit : 1 / crimps.length - ofFit;
    return measured(meanOf(crimps.map(beyond)), unit);
  });
  const dies = series.dies.map((_, die) => {
    const changes = lines.flatMap((line, index) => (isOfDie(line) && line.of === die ? [fit.coefficients[index + 1]!] : []));
    if (changes.length > 0) return tidy(changes.reduce((total, each) => total + each, 0));
    const ofDie = (crimps: readonly number[]) => crimps.filter(crimp => series.die[crimp] === die);
    const crimps = ofDie(used).length > 0 ? ofDie(used) : ofDie(counted);
    return crimps.length > 0 ? tidy(meanOf(crimps.map(beyond))) : undefined;
  });
  const now = [1, ...lines.map(line => (isOfMachine(line) ? presentShare(line) : 0))];
  return {
    machine: used.length > 0 ? measuredWith(fit.within, confidence)(sumOf(now), fit.unitVariance(now)) : undefined,
    machineAt: crimp => tidy(sumOf(ofMachine(rows[crimp]!))),
    combinations,
    dies,
    beyond: crimp => tidy(beyond(crimp)),
    scatter: fit.within,
  };
}
