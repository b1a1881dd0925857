import { exactScale, roundedBound } from './exactBound';
import { holdsBoth, undecidedPair, type Pair } from './pairBranching';
import { cutCoefficient, cutDemand, violatedCuts, type Cut } from './poolCuts';
import { lossOf, type GridPlan, type GridProblem, type Pattern, type PatternUse } from './gridProblem';
import { Master, type ExtraRow } from './master';
import { isDone, planOf, residual } from './residual';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { abs, ceil, floor, log2, max, min, round } = Math;

/** Who asks: it knows the best plan so far and takes better ones. */
export interface PoolSearchOwner {
  /** A plan must lose less than this to be of interest. */
  readonly below: number;
  see(plan: GridPlan | undefined): void;
}

const COLUMNS_A_ROUND = 40;
const SMALL_POOL = 1_000;
const ROOT_ROUNDS = 4;
const CUTS_A_ROUND = 15;
const MOST_CUTS = 100;

/** What a pattern costs and covers of the demand that is left. */
function worthNow(problem: GridProblem, pattern: Pattern, duals: ArrayLike<number>): { value: number; loss: number } {
  let value = 0;
  let width = 0;
  for (let k = 0; k < pattern.items.length; k++) {
    const item = pattern.items[k]!;
    const count = min(pattern.counts[k]!, problem.demand[item]!);
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
  /** Widths that must meet in one piece of stock at least; used until patterns are fixed. */
  readonly together: readonly Pair[];
}

/** A pattern as far as it is still wanted, the one of the pool behind it, and its number in a fractional solution. */
interface Use {
  readonly pattern: Pattern;
  readonly source: Pattern;
  readonly value: number;
}

interface Solved {
  readonly bound: number;
  readonly uses: readonly Use[];
}

/** The linear program of one node with the cuts known so far. */
class NodeProgram {
  private readonly master: Master;
  private readonly sources: Pattern[] = [];
  private readonly rows: readonly ExtraRow[];

  constructor(
    private readonly node: Node,
    cuts: readonly Cut[],
    private readonly work: Work,
  ) {
    const { rest, pool, start } = node;
    const pairs = node.fixed.length > 0 ? [] : node.together;
    this.rows = [
      ...cuts.map(cut => ({ demand: cutDemand(rest, cut), coefficient: (one: Pattern) => cutCoefficient(rest, one, cut) })),
      ...pairs.map(pair => ({ demand: 1, coefficient: (one: Pattern) => (holdsBoth(one, pair) ? 1 : 0) })),
    ].filter(row => row.demand > 0);
    this.master = new Master(rest, [], work, this.rows);
    for (const pattern of pool.length <= SMALL_POOL ? pool : start) this.add(pattern);
  }

  private add(pattern: Pattern): boolean {
    return this.master.add(pattern) && this.sources.push(pattern) > 0;
  }

  private earned(pattern: Pattern, duals: ArrayLike<number>, extra: ArrayLike<number>): { value: number; loss: number } {
    const worth = worthNow(this.node.rest, pattern, duals);
    this.rows.forEach((row, k) => {
      if (extra[k]! > 0) worth.value += extra[k]! * row.coefficient(pattern);
    });
    return worth;
  }

  /** Brings patterns of the pool in as they are needed. */
  solve(): void {
    const { pool } = this.node;
    while (!this.work.over && this.master.solve()) {
      const duals = this.master.duals();
      const good: { pattern: Pattern; reduced: number }[] = [];
      for (const pattern of pool) {
        const { value, loss } = this.earned(pattern, duals.items, duals.extra);
        const reduced = loss - value - duals.stock[pattern.stock]!;
        if (reduced < -1e-7 * (1 + loss)) good.push({ pattern, reduced });
      }
      this.work.spend(pool.length / 60);
      good.sort((a, b) => a.reduced - b.reduced);
      let added = 0;
      for (const { pattern } of good) if (added < COLUMNS_A_ROUND && this.add(pattern)) added++;
      if (added === 0) break;
    }
  }

  get uses(): Use[] {
    return this.master
      .solution()
      .columns.map(([column, value]) => ({ pattern: this.master.patterns[column]!, source: this.sources[column]!, value }));
  }

  /** A bound in whole numbers over the listed patterns, whatever the duals are. */
  bound(): number {
    const { rest, pool, loss: before } = this.node;
    const floats = this.master.duals();
    const whole = (duals: Float64Array) => duals.map(dual => floor(dual * scale));
    const top = max(0, ...floats.extra);
    const scale = exactScale(rest, floats.items) / 2 ** ceil(log2(2 + (top > 0 ? this.rows.length : 0)));
    const duals = whole(floats.items);
    const extra = whole(floats.extra);
    const least = new Float64Array(rest.stock.length);
    for (const pattern of pool) {
      const { value, loss } = this.earned(pattern, duals, extra);
      least[pattern.stock] = min(least[pattern.stock]!, loss * scale - value);
    }
    let scaled = 0;
    rest.demand.forEach((demand, item) => (scaled += demand * duals[item]!));
    this.rows.forEach((row, k) => (scaled += row.demand * extra[k]!));
    rest.stock.forEach((stock, t) => (scaled += stock.count * least[t]!));
    return before + roundedBound(scaled, scale, rest.grain);
  }
}

/** Solves a node; while that helps, cuts that its solution violates join those known. */
function solveNode(node: Node, cuts: Cut[], known: Set<string>, below: number, work: Work): Solved {
  for (let turn = 0; ; turn++) {
    const program = new NodeProgram(node, cuts, work);
    program.solve();
    const [bound, uses] = [program.bound(), program.uses];
    const isWhole = uses.every(({ value }) => abs(value - round(value)) < 1e-4);
    if (bound >= below || isWhole || turn >= (node.fixed.length + node.together.length === 0 ? ROOT_ROUNDS : 0) || work.over)
      return { bound, uses };
    const added = cuts.length < MOST_CUTS ? violatedCuts(node.rest, uses, known, CUTS_A_ROUND) : [];
    if (added.length === 0) return { bound, uses };
    cuts.push(...added);
  }
}

/** The pool pattern to branch on: the one behind the largest fractional (else the largest) number in the solution. */
function branching(node: Node, uses: Solved['uses']): { pattern: Pattern; value: number } | undefined {
  const fraction = (value: number) => value - floor(value + 1e-4);
  let best: Solved['uses'][number] | undefined;
  for (const use of uses) {
    const difference = best ? fraction(use.value) - fraction(best.value) || use.value - best.value : 1;
    if (difference > 0) best = use;
  }
  if (best) return { pattern: best.source, value: best.value };
  return node.pool[0] && { pattern: node.pool[0], value: 0 };
}

/**
 * Branch and bound over all patterns that can matter: a branch uses one pattern an exact number of times (finds plans fast), or, by
 * pairs, has two widths meet or not (settles what is left faster). Branches are cut off only by a bound in whole numbers.
 * @param nodes where to give up
 * @returns true where every branch was settled: then no plan that loses less than `below` exists but those seen
 */
export function* poolSearch(
  problem: GridProblem,
  pool: readonly Pattern[],
  owner: PoolSearchOwner,
  isByPairs: boolean,
  nodes: number,
  work: Work,
): Generator<void, boolean> {
  const cuts: Cut[] = [];
  const known = new Set<string>();
  const stack: Node[] = [{ fixed: [], loss: 0, rest: problem, pool, start: [], together: [] }];
  for (let count = 0; stack.length > 0; count++) {
    if (work.over || count >= nodes) return false;
    yield;
    const node = stack.pop()!;
    if (node.loss >= owner.below) continue;
    if (isDone(node.rest)) {
      owner.see(planOf(problem, node.fixed));
      continue;
    }
    const { bound, uses } = solveNode(node, cuts, known, owner.below, work);
    if (bound >= owner.below) continue;
    const whole = uses.map(({ pattern, value }) => ({ pattern, times: round(value) })).filter(use => use.times > 0);
    if (uses.every(({ value }) => abs(value - round(value)) < 1e-4) && residual(node.rest, whole)) {
      owner.see(planOf(problem, [...node.fixed, ...whole]));
      if (bound >= owner.below) continue;
    }
    const pair = isByPairs && node.fixed.length === 0 ? undecidedPair(problem.widths, uses) : undefined;
    stack.push(...(pair ? pairBranches(node, pair, uses) : patternBranches(node, uses)));
  }
  return true;
}

/** Apart, and (searched first) together. */
function pairBranches(node: Node, pair: Pair, uses: readonly Use[]): Node[] {
  const start = uses.map(use => use.source);
  const apart = {
    ...node,
    pool: node.pool.filter(one => !holdsBoth(one, pair)),
    start: start.filter(one => !holdsBoth(one, pair)),
  };
  return [apart, { ...node, start, together: [...node.together, pair] }];
}

/** One branch for every number of times the pattern can be used; the likeliest last, so that it is searched first. */
function patternBranches(node: Node, uses: readonly Use[]): Node[] {
  const branch = branching(node, uses);
  if (!branch) return [];
  const { pattern, value } = branch;
  const used = uses.map(use => use.source);
  const { rest } = node;
  const useful = pattern.items.map((item, k) => ceil(rest.demand[item]! / pattern.counts[k]!));
  const most = min(rest.stock[pattern.stock]!.count, max(...useful));
  const others = node.pool.filter(one => one !== pattern);
  const aim = ceil(value - 1e-4);
  return Array.from({ length: most + 1 }, (_, times) => times)
    .sort((a, b) => abs(b - aim) - abs(a - aim) || a - b)
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
        together: [],
      };
    });
}
