import { floor, min } from '../arithmetic';
import type { Pattern } from './gridProblem';

/** Two different widths. */
export type Pair = readonly [number, number];

/** True where the pattern holds both. */
export function holdsBoth(pattern: Pattern, [a, b]: Pair): boolean {
  return pattern.items.includes(a) && pattern.items.includes(b);
}

/**
 * The pair of widths that shares stock in the most undecided way. In a whole-number plan the pieces of stock that hold both are none,
 * or one at least: two branches that cover everything.
 * @returns undefined where no pair meets in a fraction of one piece of stock
 */
export function undecidedPair(
  widths: readonly number[],
  uses: readonly { readonly pattern: Pattern; readonly value: number }[],
): Pair | undefined {
  const shared = new Map<number, number>();
  for (const { pattern, value } of uses) {
    pattern.items.forEach((a, k) => {
      for (const b of pattern.items.slice(k + 1)) {
        const key = a * widths.length + b;
        shared.set(key, (shared.get(key) ?? 0) + value);
      }
    });
  }
  let best: Pair | undefined;
  let bestMerit = 0;
  for (const [key, value] of shared) {
    const doubt = min(value, 1 - value);
    const pair: Pair = [floor(key / widths.length), key % widths.length];
    const merit = doubt * (widths[pair[0]]! + widths[pair[1]]!);
    if (doubt > 1e-3 && merit > bestMerit) [best, bestMerit] = [pair, merit];
  }
  return best;
}
