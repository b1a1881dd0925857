import { Decimal } from '../units/decimal';
import { fUpperTail } from './fUpperTail';
import { sum } from './sum';

/** The deviations of one combination. */
export interface CrimpGroup {
  readonly name: string;
  /** Mean − target, one a crimp. */
  readonly deviations: readonly Decimal[];
}

/** A combination with its mean and its sum of squares around it. */
export interface MeasuredGroup {
  readonly group: CrimpGroup;
  readonly count: number;
  readonly mean: Decimal;
  readonly squares: number;
}

/** Combinations together: their scatter and whether they are alike. */
export interface GroupFit {
  readonly crimps: number;
  /** Mean over all crimps. */
  readonly mean: Decimal;
  /** Pooled scatter inside the combinations and its degrees of freedom; NaN without repeats. */
  readonly scatter: number;
  readonly df: number;
  /** One-way F over the combinations and its probability. */
  readonly F: number;
  readonly p: number;
}

const meanOf = (values: readonly Decimal[]) => Decimal.sum(...values).div(values.length);

/** Measures a combination; means are decimals, so that crimps without any scatter have exactly none. */
export function measureGroup(group: CrimpGroup): MeasuredGroup {
  const mean = meanOf(group.deviations);
  const residuals = group.deviations.map(deviation => deviation.minus(mean).toNumber());
  return { group, count: group.deviations.length, mean, squares: sum(residuals.map(residual => residual ** 2)) };
}

/** One-way analysis of variance over combinations. Source: NIST/SEMATECH e-Handbook 7.4.3. */
export function fitGroups(groups: readonly MeasuredGroup[]): GroupFit {
  const crimps = groups.reduce((total, { count }) => total + count, 0);
  const mean = meanOf(groups.flatMap(({ group }) => group.deviations));
  const df = crimps - groups.length;
  const within = sum(groups.map(({ squares }) => squares));
  const between = sum(groups.map(group => group.count * group.mean.minus(mean).toNumber() ** 2));
  const F = between === 0 ? 0 : between / (groups.length - 1) / (within / df);
  const p = df > 0 && groups.length > 1 ? fUpperTail(F, groups.length - 1, df) : NaN;
  return { crimps, mean, scatter: df > 0 ? Math.sqrt(within / df) : NaN, df, F, p };
}

/** A combination against the unweighted mean of the others: difference, and its standard error for a scatter of 1. */
export function againstOthers(groups: readonly MeasuredGroup[], index: number): { difference: number; unitError: number } {
  const others = groups.filter((_, other) => other !== index);
  const { mean, count } = groups[index]!;
  const inverse = sum(others.map(other => 1 / other.count)) / others.length ** 2;
  return {
    difference: mean.minus(meanOf(others.map(other => other.mean))).toNumber(),
    unitError: Math.sqrt(1 / count + inverse),
  };
}
