import { exactScale, roundedBound } from './exactBound';
import { holdsBoth, undecidedPair } from './pairBranching';
import { cutCoefficient, cutDemand, violatedCuts, type Cut } from './poolCuts';
import { lossOf, patternKey, type GridPlan, type GridProblem, type Pattern, type PatternUse } from './gridProblem';
import { Master, shortCost, type Basis, type ExtraRow } from './master';
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

/** A kind of pattern: all that hold a pair, or a single one. */
interface Requirement {
  readonly key: string;
  holds(pattern: Pattern): boolean;
}

/** One node of the search: what is fixed, what is left, which patterns may still be used. */
interface Node {
  readonly fixed: readonly PatternUse[];
  readonly loss: number;
  readonly rest: GridProblem;
  readonly pool: readonly Pattern[];
  readonly start: readonly Pattern[];
  /** Kinds of pattern that must be used once at least; heeded until patterns are fixed. */
  readonly required: readonly Requirement[];
  /** Where the linear program may start. */
  readonly basis?: Basis | undefined;
}

/** A pattern as far as it is still wanted, the one of the pool behind it, and its number in a fractional solution. */
interface Use {
  readonly pattern: Pattern;
  readonly source: Pattern;
  readonly value: number;
}

interface Solved {
  readonly bound: number;
  readonly basis: Basis;
  readonly uses: readonly Use[];
}

/** The linear program of one node with the cuts known so far. */
class NodeProgram {
  readonly master: Master;
  private readonly sources: Pattern[] = [];
  private readonly rows: readonly ExtraRow[];
  /** So many columns from there on only help to start. */
  private banned = Infinity;
  private forbidden = 0;

  constructor(
    private readonly node: Node,
    cuts: readonly Cut[],
    private readonly work: Work,
  ) {
    const { rest, basis } = node;
    const required = node.fixed.length > 0 ? [] : node.required;
    this.rows = [
      ...cuts.map(cut => ({
        key: `cut ${cut.join()}`,
        demand: cutDemand(rest, cut),
        coefficient: (one: Pattern) => cutCoefficient(rest, one, cut),
      })),
      ...required.map(({ key, holds }) => ({ key, demand: 1, coefficient: (one: Pattern) => (holds(one) ? 1 : 0) })),
    ].filter(row => row.demand > 0);
    this.master = this.program();
    if (basis && node.fixed.length === 0 && !this.isStartedFrom(basis)) this.master = this.program();
  }

  private program(): Master {
    const { rest, pool, start } = this.node;
    const master = new Master(rest, [], this.work, this.rows);
    this.sources.length = 0;
    this.banned = Infinity;
    this.forbidden = 0;
    for (const pattern of pool.length <= SMALL_POOL ? pool : start) if (master.add(pattern)) this.sources.push(pattern);
    return master;
  }

  /** Patterns of the basis that this branch forbids come in at a price that drives them out. */
  private isStartedFrom(basis: Basis): boolean {
    const forbidden: Pattern[] = [];
    for (const column of basis.columns) {
      if ('kind' in column) continue;
      if (this.node.pool.includes(column)) this.add(column);
      else forbidden.push(column);
    }
    this.banned = this.sources.length;
    for (const pattern of forbidden) if (this.master.add(pattern, shortCost(this.node.rest))) this.sources.push(pattern);
    this.forbidden = this.sources.length - this.banned;
    return this.master.startFrom(basis);
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
      .columns.filter(([column]) => column < this.banned || column >= this.banned + this.forbidden)
      .map(([column, value]) => ({ pattern: this.master.patterns[column]!, source: this.sources[column]!, value }));
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
    const [bound, uses, basis] = [program.bound(), program.uses, program.master.basis];
    const isWhole = uses.every(({ value }) => abs(value - round(value)) < 1e-4);
    if (bound >= below || isWhole || turn >= (node.fixed.length + node.required.length === 0 ? ROOT_ROUNDS : 0) || work.over)
      return { bound, uses, basis };
    const added = cuts.length < MOST_CUTS ? violatedCuts(node.rest, uses, known, CUTS_A_ROUND) : [];
    if (added.length === 0) return { bound, uses, basis };
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
  const stack: Node[] = [{ fixed: [], loss: 0, rest: problem, pool, start: [], required: [] }];
  for (let count = 0; stack.length > 0; count++) {
    if (work.over || count >= nodes) return false;
    yield;
    const node = stack.pop()!;
    if (node.loss >= owner.below) continue;
    if (isDone(node.rest)) {
      owner.see(planOf(problem, node.fixed));
      continue;
    }
    const { bound, uses, basis } = solveNode(node, cuts, known, owner.below, work);
    if (bound >= owner.below) continue;
    const whole = uses.map(({ pattern, value }) => ({ pattern, times: round(value) })).filter(use => use.times > 0);
    if (uses.every(({ value }) => abs(value - round(value)) < 1e-4) && residual(node.rest, whole)) {
      owner.see(planOf(problem, [...node.fixed, ...whole]));
      if (bound >= owner.below) continue;
    }
    const kind = node.fixed.length === 0 ? undecidedKind(problem, uses, isByPairs) : undefined;
    stack.push(...(kind ? kindBranches(node, kind, uses, basis) : patternBranches(node, uses)));
  }
  return true;
}

/** The kind of pattern to decide on: a pair of widths, or the single pattern nearest to being used once. */
function undecidedKind(problem: GridProblem, uses: readonly Use[], isByPairs: boolean): Requirement | undefined {
  const pair = isByPairs ? undecidedPair(problem.widths, uses) : undefined;
  if (pair) return { key: `pair ${pair.join()}`, holds: pattern => holdsBoth(pattern, pair) };
  const once = uses
    .filter(({ value }) => value < 1 - 1e-4)
    .reduce<Use | undefined>((best, use) => (best && best.value >= use.value ? best : use), undefined);
  return once && { key: `pattern ${patternKey(once.source)}`, holds: pattern => pattern === once.source };
}

/** Without that kind, and (searched first) with one of it at least. */
function kindBranches(node: Node, kind: Requirement, uses: readonly Use[], basis: Basis): Node[] {
  const start = uses.map(use => use.source);
  const without = (list: readonly Pattern[]) => list.filter(one => !kind.holds(one));
  return [
    { ...node, pool: without(node.pool), start: without(start), basis },
    { ...node, start, required: [...node.required, kind], basis },
  ];
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
        required: [],
      };
    });
}
