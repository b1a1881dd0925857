import { abs, round } from '../arithmetic';
import type { GridPlan, GridProblem, Pattern } from './gridProblem';
import { kindBranches, patternBranches, undecidedKind, type Solved } from './poolBranches';
import { PoolProgram, type PoolNode, type PoolUse } from './poolProgram';
import { isDone, planOf, residual } from './residual';
import type { Work } from './work';

/** Who asks: it knows the best plan so far and takes better ones. */
export interface PoolSearchOwner {
  /** A plan must lose less than this to be of interest. */
  readonly below: number;
  see(plan: GridPlan | undefined): void;
}

const isWhole = (uses: readonly PoolUse[]) => uses.every(({ value }) => abs(value - round(value)) < 1e-4);

/** What is left of a node once its program is solved: its branches, none where it is settled; undefined where they are too many. */
function* branchesOf(
  node: PoolNode,
  problem: GridProblem,
  pool: readonly Pattern[],
  owner: PoolSearchOwner,
  work: Work,
): Generator<void, readonly PoolNode[] | undefined> {
  if (node.loss >= owner.below) return [];
  if (isDone(node.rest)) {
    owner.see(planOf(problem, node.fixed));
    return [];
  }
  const program = new PoolProgram(node, pool, work);
  const proved = yield* program.solve(owner.below);
  if (proved.bound >= owner.below) return [];
  const { uses } = program;
  const solved: Solved = { ...proved, uses, basis: program.master.basis };
  const whole = uses.map(({ pattern, value }) => ({ pattern, times: round(value) })).filter(use => use.times > 0);
  if (isWhole(uses) && residual(node.rest, whole)) {
    owner.see(planOf(problem, [...node.fixed, ...whole]));
    if (proved.bound >= owner.below) return [];
  }
  const kind = node.fixed.length === 0 ? undecidedKind(problem.widths, pool, uses) : undefined;
  return kind ? kindBranches(node, kind, solved) : patternBranches(node, pool, solved, work);
}

/**
 * Branch and bound over all patterns that can matter. A branch has two widths meet or not, or uses one pattern at least once or not; where neither
 * is in doubt, it uses one pattern an exact number of times. Branches are cut off only by a bound in whole numbers.
 * @yields often
 * @returns true where every branch was settled: then no plan that loses less than `below` exists but those seen
 */
export function* poolSearch(
  problem: GridProblem,
  pool: readonly Pattern[],
  owner: PoolSearchOwner,
  work: Work,
): Generator<void, boolean> {
  const stack: PoolNode[] = [{ fixed: [], loss: 0, rest: problem, open: pool.map((_, k) => k), required: [] }];
  while (stack.length > 0) {
    if (work.over) return false;
    yield;
    const branches = yield* branchesOf(stack.pop()!, problem, pool, owner, work);
    if (!branches) return false;
    stack.push(...branches);
  }
  return true;
}
