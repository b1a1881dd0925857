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
  /** Sum of the deviations. */
  readonly total: Decimal;
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

/** Exact sum of any number of decimals. */
const totalOf = (values: readonly Decimal[]) => values.reduce((total, value) => total.plus(value), new Decimal(0));

/** Measures a combination; means are decimals, so that crimps without any scatter have exactly none. */
export function measureGroup(group: CrimpGroup): MeasuredGroup {
  const count = group.deviations.length;
  const total = totalOf(group.deviations);
  const mean = total.div(count);
  const residuals = group.deviations.map(deviation => deviation.minus(mean).toNumber());
  return { group, count, total, mean, squares: sum(residuals.map(residual => residual ** 2)) };
}

/** One-way analysis of variance over combinations. Source: NIST/SEMATECH e-Handbook 7.4.3. */
export function fitGroups(groups: readonly MeasuredGroup[]): GroupFit {
  const crimps = groups.reduce((total, { count }) => total + count, 0);
  const mean = totalOf(groups.map(({ total }) => total)).div(crimps);
  const df = crimps - groups.length;
  const within = sum(groups.map(({ squares }) => squares));
  const between = sum(groups.map(group => group.count * group.mean.minus(mean).toNumber() ** 2));
  const F = between === 0 ? 0 : between / (groups.length - 1) / (within / df);
  const p = df > 0 && groups.length > 1 ? fUpperTail(F, groups.length - 1, df) : NaN;
  return { crimps, mean, scatter: df > 0 ? Math.sqrt(within / df) : NaN, df, F, p };
}

/** Each combination against the unweighted mean of the others: difference, and its standard error for a scatter of 1. */
export function againstOthers(groups: readonly MeasuredGroup[]): { difference: number; unitError: number }[] {
  const total = totalOf(groups.map(({ mean }) => mean));
  const inverse = sum(groups.map(({ count }) => 1 / count));
  const others = groups.length - 1;
  return groups.map(({ mean, count }) => ({
    difference: mean.minus(total.minus(mean).div(others)).toNumber(),
    unitError: Math.sqrt(1 / count + (inverse - 1 / count) / others ** 2),
  }));
}
