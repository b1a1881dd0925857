import { fUpperTail } from './fUpperTail';
import { mean } from './mean';
import { squaresAroundMean } from './squaresAroundMean';
import { sum } from './sum';

/** One-way analysis of variance. */
export interface OneWayAnova {
  readonly between: { readonly squares: number; readonly df: number };
  readonly within: { readonly squares: number; readonly df: number };
  /** Ratio of the mean squares: Infinity where groups differ without any scatter inside them, 0 where nothing differs at all. */
  readonly F: number;
  /** Probability of such an F or a larger one where all groups are the same. */
  readonly p: number;
}

/**
 * One-way analysis of variance, groups of equal or unequal size.
 * @param groups two groups or more, at least one of them with two values
 * Source: NIST/SEMATECH e-Handbook 7.4.3.
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): OneWayAnova {
  const grand = mean(groups.flat());
  const between = { squares: sum(groups.map(group => group.length * (mean(group) - grand) ** 2)), df: groups.length - 1 };
  const within = { squares: sum(groups.map(squaresAroundMean)), df: groups.flat().length - groups.length };
  const ratio = between.squares / between.df / (within.squares / within.df);
  const F = between.squares === 0 ? 0 : ratio;
  return { between, within, F, p: fUpperTail(F, between.df, within.df) };
}
