import { controlLimits, movingRanges, rangeOf, type ChartLimits } from '../../core/quality/controlLimits';
import { mean } from '../../core/quality/mean';
import { runSignals } from '../../core/quality/runSignals';
import { Decimal } from '../../core/units/decimal';
import { deviationOf, type JudgedCrimp } from './judgedCrimp';

/** What a point of a chart is: each crimp, so many crimps made one after the other, or the readings round each crimp. */
export type Subgrouping = 'each' | '2' | '3' | '4' | '5' | 'readings';

/** The choices in the order in which they are offered. */
export const SUBGROUPINGS: readonly (readonly [Subgrouping, string])[] = [
  ['each', 'Individuals: one crimp a point'],
  ['2', 'Mean and range: 2 crimps in a row'],
  ['3', 'Mean and range: 3 crimps in a row'],
  ['4', 'Mean and range: 4 crimps in a row'],
  ['5', 'Mean and range: 5 crimps in a row'],
  ['readings', 'Mean and range: readings of each crimp'],
];

/** One point, with the run rules that it completes. */
export interface ChartPoint {
  /** Place on the chart, from 1. */
  readonly place: number;
  readonly value: number;
  readonly rules: readonly number[];
  /** The crimp, or the last one, that it stands for. */
  readonly crimp: JudgedCrimp;
}

/** One control chart. */
export interface ControlChart {
  readonly limits: ChartLimits;
  readonly points: readonly ChartPoint[];
}

/** Both charts, and how many crimps at the end or of another count did not make a whole subgroup. */
export interface ChartsOfRun {
  readonly charts: readonly ControlChart[];
  readonly leftOut: number;
}

/** The Western Electric rules in words. Source: e-Handbook 6.3.2. */
export const RULE_WORDS: Readonly<Record<number, string>> = {
  1: 'beyond the limits',
  2: 'two of three beyond 2 sigma, same side',
  3: 'four of five beyond 1 sigma, same side',
  4: 'eight in a row on one side',
};

interface Subgroup {
  readonly values: readonly number[];
  readonly crimp: JudgedCrimp;
}

function subgroupsOf(crimps: readonly JudgedCrimp[], by: Subgrouping): Subgroup[] {
  if (by === 'each') return crimps.map(crimp => ({ values: [deviationOf(crimp)], crimp }));
  if (by === 'readings') {
    const size = crimps[0]?.readings.length;
    return crimps
      .filter(({ readings }) => readings.length === size)
      .map(crimp => ({ values: crimp.readings.map(reading => reading.minus(crimp.target).toNumber()), crimp }));
  }
  const size = Number(by);
  return Array.from({ length: Math.floor(crimps.length / size) }, (_, index) => {
    const part = crimps.slice(index * size, (index + 1) * size);
    return { values: part.map(deviationOf), crimp: part.at(-1)! };
  });
}

/** Run rules hold for means and single values; of a range chart only a point beyond the limits is a signal. */
function rulesOf(values: readonly number[], { chart, centre, upper, lower }: ChartLimits): readonly (readonly number[])[] {
  if (chart === 'Range' || chart === 'Moving range') return values.map(value => (value > upper || value < lower ? [1] : []));
  const sigma = (upper - centre) / 3;
  if (!(sigma > 0)) return values.map(() => []);
  return runSignals(
    values.map(value => new Decimal(value)),
    new Decimal(centre),
    new Decimal(sigma),
  );
}

/**
 * Control charts of deviations from target, so that crimps of different combinations stand on one chart.
 * @param crimps in the order they were made
 * @throws TradeError where there are fewer than two subgroups, or more than ten readings a crimp
 */
export function controlCharts(crimps: readonly JudgedCrimp[], by: Subgrouping): ChartsOfRun {
  const subgroups = subgroupsOf(crimps, by);
  const values = subgroups.map(group => group.values);
  const [centreLimits, rangeLimits] = controlLimits(values) as [ChartLimits, ChartLimits];
  const isSingle = by === 'each';
  const centres = isSingle ? values.map(([value]) => value!) : values.map(mean);
  const ranges = isSingle ? movingRanges(centres) : values.map(rangeOf);
  const chartOf = (limits: ChartLimits, heights: readonly number[], first: number): ControlChart => {
    const rules = rulesOf(heights, limits);
    const points = heights.map((value, index) => ({
      place: index + 1 + first,
      value,
      rules: rules[index]!,
      crimp: subgroups[index + first]!.crimp,
    }));
    return { limits, points };
  };
  const used = by === 'each' || by === 'readings' ? subgroups.length : subgroups.length * Number(by);
  return {
    charts: [chartOf(centreLimits, centres, 0), chartOf(rangeLimits, ranges, isSingle ? 1 : 0)],
    leftOut: crimps.length - used,
  };
}
