import { exactScale, roundedBound } from './exactBound';
import { lossOf, type GridPlan, type GridProblem, type Pattern, type PatternUse } from './gridProblem';
import { Master } from './master';
import { isDone, planOf, residual } from './residual';
import type { Work } from './work';

/** Who asks: it knows the best plan so far and takes better ones. */
export interface PoolSearchOwner {
  /** A plan must lose less than this to be of interest. */
  readonly below: number;
  see(plan: GridPlan | undefined): void;
}

const COLUMNS_A_ROUND = 40;
const SMALL_POOL = 1_000;

/** What a pattern costs and covers of the demand that is left. */
function worthNow(problem: GridProblem, pattern: Pattern, duals: ArrayLike<number>): { value: number; loss: number } {
  let value = 0;
  let width = 0;
  for (let k = 0; k < pattern.items.length; k++) {
    const item = pattern.items[k]!;
    const count = Math.min(pattern.counts[k]!, problem.demand[item]!);
    value += count * duals[item]!;
    width += count * problem.widths[item]!;
  }
  return { value, loss: width > 0 ? lossOf(problem.stock[pattern.stock]!, width) : 0 };
}

/** One node of the search: what is fixed, what is left, which patterns may still be used. */
interface Node {
  readonly fixed: readonly PatternUse[];
  readonly loss: number;
  readonly rest: GridProblem;
  readonly pool: readonly Pattern[];
  readonly start: readonly Pattern[];
}

interface Solved {
  readonly bound: number;
  /** Patterns as far as they are still wanted, and those of the pool behind them. */
  readonly uses: readonly { pattern: Pattern; source: Pattern; value: number }[];
}

/** A bound in whole numbers over the listed patterns, whatever the duals are. */
function exactPoolBound({ rest, pool }: Node, floats: Float64Array): number {
  const scale = exactScale(rest, floats);
  const duals = floats.map(dual => Math.max(0, Math.floor(dual * scale)));
  const least = new Float64Array(rest.stock.length);
  for (const pattern of pool) {
    const { value, loss } = worthNow(rest, pattern, duals);
    least[pattern.stock] = Math.min(least[pattern.stock]!, loss * scale - value);
  }
  let scaled = 0;
  rest.demand.forEach((demand, item) => (scaled += demand * duals[item]!));
  rest.stock.forEach((stock, t) => (scaled += stock.count * least[t]!));
  return roundedBound(scaled, scale, rest.grain);
}

/** Solves the linear program of a node over its pool, bringing patterns in as they are needed. */
function solveNode(node: Node, work: Work): Solved {
  const master = new Master(node.rest, [], work);
  const sources: Pattern[] = [];
  const add = (pattern: Pattern) => master.add(pattern) && sources.push(pattern) > 0;
  (node.pool.length <= SMALL_POOL ? node.pool : node.start).forEach(add);
  while (!work.over && master.solve()) {
    const duals = master.duals();
    const good: { pattern: Pattern; reduced: number }[] = [];
    for (const pattern of node.pool) {
      const { value, loss } = worthNow(node.rest, pattern, duals.items);
      const reduced = loss - value - duals.stock[pattern.stock]!;
      if (reduced < -1e-7 * (1 + loss)) good.push({ pattern, reduced });
    }
    work.spend(node.pool.length / 60);
    good.sort((a, b) => a.reduced - b.reduced);
    let added = 0;
    for (const { pattern } of good) if (added < COLUMNS_A_ROUND && add(pattern)) added++;
    if (added === 0) break;
  }
  const uses = master
    .solution()
    .columns.map(([column, value]) => ({ pattern: master.patterns[column]!, source: sources[column]!, value }));
  return { bound: node.loss + exactPoolBound(node, master.duals().items), uses };
}

/** The pool pattern to branch on: the one behind the largest fractional (else the largest) number in the solution. */
function branching(node: Node, uses: Solved['uses']): { pattern: Pattern; value: number } | undefined {
  const fraction = (value: number) => value - Math.floor(value + 1e-4);
  let best: Solved['uses'][number] | undefined;
  for (const use of uses) {
    const difference = best ? fraction(use.value) - fraction(best.value) || use.value - best.value : 1;
    if (difference > 0) best = use;
  }
  if (best) return { pattern: best.source, value: best.value };
  return node.pool[0] && { pattern: node.pool[0], value: 0 };
}

/**
 * Branch and bound over all patterns that can matter: each branch uses one pattern an exact number of times.
 * Branches are cut off only by a bound in whole numbers.
 * @returns true where every branch was settled: then no plan that loses less than `below` exists but those seen
 */
export function* poolSearch(
  problem: GridProblem,
  pool: readonly Pattern[],
  owner: PoolSearchOwner,
  work: Work,
): Generator<void, boolean> {
  const stack: Node[] = [{ fixed: [], loss: 0, rest: problem, pool, start: [] }];
  while (stack.length > 0) {
    if (work.over) return false;
    yield;
    const node = stack.pop()!;
    if (node.loss >= owner.below) continue;
    if (isDone(node.rest)) {
      owner.see(planOf(problem, node.fixed));
      continue;
    }
    const { bound, uses } = solveNode(node, work);
    if (bound >= owner.below) continue;
    const whole = uses.map(({ pattern, value }) => ({ pattern, times: Math.round(value) })).filter(use => use.times > 0);
    if (uses.every(({ value }) => Math.abs(value - Math.round(value)) < 1e-4) && residual(node.rest, whole)) {
      owner.see(planOf(problem, [...node.fixed, ...whole]));
      if (bound >= owner.below) continue;
    }
    const branch = branching(node, uses);
    if (branch)
      stack.push(
        ...branches(
          node,
          branch,
          uses.map(use => use.source),
        ),
      );
  }
  return true;
}

/** One branch for every number of times the pattern can be used; the likeliest last, so that it is searched first. */
function branches(node: Node, { pattern, value }: { pattern: Pattern; value: number }, used: readonly Pattern[]): Node[] {
  const { rest } = node;
  const useful = pattern.items.map((item, k) => Math.ceil(rest.demand[item]! / pattern.counts[k]!));
  const most = Math.min(rest.stock[pattern.stock]!.count, Math.max(...useful));
  const others = node.pool.filter(one => one !== pattern);
  const aim = Math.ceil(value - 1e-4);
  return Array.from({ length: most + 1 }, (_, times) => times)
    .sort((a, b) => Math.abs(b - aim) - Math.abs(a - aim) || a - b)
    .map(times => {
      const fixed = times > 0 ? [{ pattern, times }] : [];
      const left = residual(rest, fixed)!;
      const open = others.filter(one => left.stock[one.stock]!.count > 0 && one.items.some(item => left.demand[item]! > 0));
      return {
        fixed: [...node.fixed, ...fixed],
        loss: node.loss + times * pattern.loss,
        rest: left,
        pool: open,
        start: used.filter(one => one !== pattern && open.includes(one)),
      };
    });
}
