import { floor, min } from '../arithmetic';
import { relax, type Relaxation } from './columnGeneration';
import { greedyPlan, type GreedyOrder } from './greedy';
import type { GridPlan, GridProblem, PatternUse } from './gridProblem';
import { Master } from './master';
import { isDone, mostTimes, planOf, residual } from './residual';
import { canStayOpen } from './stockCounts';
import type { Work } from './work';

/** Slack of a dive: careful, or quick. */
export const EXACTLY = 1e-4;
export const NEARLY = 0.3;

const FINISH: readonly GreedyOrder[] = [
  { pieces: 'longest', stock: 'shortest', place: 'tightest' },
  { pieces: 'longest', stock: 'longest', place: 'tightest' },
];

/** Which patterns to fix next: all whole parts, or, where there are none, the one nearest to a whole number above, or the next one (`skip`). */
function choice(problem: GridProblem, relaxation: Relaxation, skip: number, slack: number): PatternUse[] {
  const whole = relaxation.uses
    .map(({ pattern, value }) => ({ pattern, times: min(floor(value + slack), mostTimes(problem, pattern)) }))
    .filter(use => use.times > 0);
  if (whole.length > 0) {
    const fixed: PatternUse[] = [];
    let rest = problem;
    for (const use of whole) {
      const times = min(use.times, mostTimes(rest, use.pattern));
      if (times <= 0) continue;
      fixed.push({ pattern: use.pattern, times });
      rest = residual(rest, [{ pattern: use.pattern, times }])!;
    }
    if (fixed.length > 0) return fixed;
  }
  const rounded = [...relaxation.uses].sort((a, b) => b.value - a.value || b.pattern.width - a.pattern.width);
  const pick = rounded[min(skip, rounded.length - 1)];
  return pick ? [{ pattern: pick.pattern, times: 1 }] : [];
}

/**
 * Diving: fixes patterns of the relaxation, solves what is left again, and so on; every stage is also finished greedily.
 * @param root relaxation of the whole problem
 * @param deviation the stage at which the second choice is taken instead of the first; −1 for never
 * @param slack how far below a whole number a pattern still counts as used that often
 * @yields each plan found, undefined in between
 */
export function* dive(
  problem: GridProblem,
  root: Relaxation,
  deviation: number,
  slack: number,
  sheet: { pieces: readonly number[]; stock: readonly number[] },
  work: Work,
): Generator<GridPlan | undefined, void> {
  const fixed: PatternUse[] = [];
  let rest: GridProblem | undefined = problem;
  let relaxation = root;
  // Patterns that cover too much are as good as cut down ones only where an offcut is worth nothing.
  const isOpenEnded = problem.stock.some(canStayOpen);
  let master = new Master(problem, root.patterns, work);
  if (!isOpenEnded) master.startFrom(root.basis);
  for (let stage = 0; rest && !isDone(rest) && !work.over; stage++) {
    if (relaxation.short > 0.5) return;
    const next = choice(rest, relaxation, stage === deviation ? 1 : 0, slack);
    if (next.length === 0) return;
    fixed.push(...next);
    rest = residual(rest, next);
    if (!rest) return;
    for (const order of FINISH) {
      const end: GridPlan | undefined = isDone(rest) ? { uses: [], loss: 0 } : greedyPlan(rest, order, sheet);
      if (end) yield planOf(problem, [...fixed, ...end.uses]);
    }
    if (isDone(rest)) return;
    if (isOpenEnded) master = new Master(rest, relaxation.patterns, work);
    else master.reduce(rest);
    const steps: Generator<void, Relaxation> = relax(master, work, true);
    let step = steps.next();
    while (!step.done) {
      yield undefined;
      step = steps.next();
    }
    relaxation = step.value;
  }
}
