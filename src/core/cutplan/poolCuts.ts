import type { GridProblem, Pattern } from './gridProblem';

// Named here, since a script host may make every look at a global slow.
const { abs, ceil, min, round } = Math;

/**
 * A cut (Chvátal and Gomory, multiplier ½): halve the covering rows of three widths and round up. Holds for every whole-number plan:
 * Σ ⌈½ · pieces of the three in the pattern⌉ · times ≥ ⌈½ · pieces of the three wanted⌉.
 */
export type Cut = readonly [number, number, number];

const LEAST_VIOLATION = 0.03;

/** Right-hand side of a cut for what is still wanted; 0 where the number wanted is even and the cut says nothing. */
export function cutDemand(problem: GridProblem, cut: Cut): number {
  const wanted = cut.reduce((sum, item) => sum + problem.demand[item]!, 0);
  return wanted % 2 === 1 ? (wanted + 1) / 2 : 0;
}

/** What a pattern contributes to a cut, pieces beyond the demand not counted. */
export function cutCoefficient(problem: GridProblem, pattern: Pattern, cut: Cut): number {
  let pieces = 0;
  for (let k = 0; k < pattern.items.length; k++) {
    const item = pattern.items[k]!;
    if (cut.includes(item)) pieces += min(pattern.counts[k]!, problem.demand[item]!);
  }
  return ceil(pieces / 2);
}

/** Per width: the other widths that share a fractional pattern with it. */
function neighbours(problem: GridProblem, uses: readonly { pattern: Pattern; value: number }[]): Set<number>[] {
  const near = problem.widths.map(() => new Set<number>());
  for (const { pattern, value } of uses) {
    if (abs(value - round(value)) < 1e-4) continue;
    for (const a of pattern.items) for (const b of pattern.items) if (a !== b) near[a]!.add(b);
  }
  return near;
}

/**
 * Cuts that a fractional solution violates, the worst first.
 * @param known cuts in force, by their key; new ones are added
 */
export function violatedCuts(
  problem: GridProblem,
  uses: readonly { pattern: Pattern; value: number }[],
  known: Set<string>,
  most: number,
): Cut[] {
  const near = neighbours(problem, uses);
  const found = new Map<string, { cut: Cut; violation: number }>();
  const consider = (...items: [number, number, number]) => {
    const cut: Cut = items.sort((a, b) => a - b);
    const key = cut.join();
    if (known.has(key) || found.has(key)) return;
    const demand = cutDemand(problem, cut);
    if (demand === 0) return;
    const covered = uses.reduce((sum, use) => sum + use.value * cutCoefficient(problem, use.pattern, cut), 0);
    if (demand - covered > LEAST_VIOLATION) found.set(key, { cut, violation: demand - covered });
  };
  // Three widths matter only where two pairs of them meet in fractional patterns.
  near.forEach((others, middle) => {
    const list = [...others];
    list.forEach((a, k) => list.slice(k + 1).forEach(b => consider(a, middle, b)));
  });
  const worst = [...found.values()].sort((a, b) => b.violation - a.violation).slice(0, most);
  worst.forEach(({ cut }) => known.add(cut.join()));
  return worst.map(({ cut }) => cut);
}
