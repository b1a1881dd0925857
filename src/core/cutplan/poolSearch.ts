import type { GridPlan, GridProblem, Pattern } from './gridProblem';
import { kindBranches, patternBranches, undecidedKind, type Solved } from './poolBranches';
import { cutCoefficient, cutDemand, violatedCuts, type Cut } from './poolCuts';
import { PoolProgram, type PoolNode } from './poolProgram';
import { poolRow, type PoolRow } from './poolRows';
import { isDone, planOf, residual } from './residual';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { abs, round } = Math;

/** Who asks: it knows the best plan so far and takes better ones. */
export interface PoolSearchOwner {
  /** A plan must lose less than this to be of interest. */
  readonly below: number;
  see(plan: GridPlan | undefined): void;
}

const ROOT_ROUNDS = 4;
const CUTS_A_ROUND = 15;
const MOST_CUTS = 100;

/** The cuts known so far. */
class Cuts {
  private readonly all: { cut: Cut; row: PoolRow }[] = [];
  private readonly known = new Set<string>();

  constructor(private readonly pool: readonly Pattern[]) {}

  private rowOf(problem: GridProblem, cut: Cut): PoolRow {
    const entryOf = (pattern: Pattern) => cutCoefficient(problem, pattern, cut);
    return poolRow(`cut ${cut.join()}`, cutDemand(problem, cut), this.pool, entryOf);
  }

  /** The cuts as rows for what is left; before anything is fixed they are kept ready. */
  rows({ fixed, rest }: PoolNode): PoolRow[] {
    if (fixed.length === 0) return this.all.map(one => one.row);
    return this.all.map(({ cut }) => this.rowOf(rest, cut)).filter(row => row.demand > 0);
  }

  /** Adds cuts that a solution violates; false where there are none. */
  add(problem: GridProblem, { uses }: Solved): boolean {
    const cuts = this.all.length < MOST_CUTS ? violatedCuts(problem, uses, this.known, CUTS_A_ROUND) : [];
    for (const cut of cuts) this.all.push({ cut, row: this.rowOf(problem, cut) });
    return cuts.length > 0;
  }
}

const isWhole = ({ uses }: Solved) => uses.every(({ value }) => abs(value - round(value)) < 1e-4);

/** Branch and bound over a pool of patterns. */
class PoolTree {
  private readonly cuts: Cuts;
  private readonly stack: PoolNode[];

  constructor(
    private readonly problem: GridProblem,
    private readonly pool: readonly Pattern[],
    private readonly owner: PoolSearchOwner,
    private readonly isByPairs: boolean,
    private readonly work: Work,
  ) {
    this.cuts = new Cuts(pool);
    this.stack = [{ fixed: [], loss: 0, rest: problem, open: pool.map((_, k) => k), start: [], required: [] }];
  }

  /** Solves a node; at the root, while that helps, cuts that its solution violates join those known. */
  private *solved(node: PoolNode): Generator<void, Solved> {
    const rounds = node.fixed.length + node.required.length === 0 ? ROOT_ROUNDS : 0;
    let now = node;
    for (let turn = 0; ; turn++) {
      const program = new PoolProgram(now, this.pool, [...this.cuts.rows(node), ...node.required], this.work);
      const { bound, open } = yield* program.solve(this.owner.below);
      const solved = { bound, open, uses: program.uses, basis: program.master.basis, known: program.known };
      if (bound >= this.owner.below || isWhole(solved) || turn >= rounds || this.work.over) return solved;
      if (!this.cuts.add(node.rest, solved)) return solved;
      now = { ...node, open, start: solved.known, basis: solved.basis };
    }
  }

  /** Settles a node or puts its branches on the stack; false where they are too many. */
  private *settle(node: PoolNode): Generator<void, boolean> {
    const { problem, pool, owner, work } = this;
    if (node.loss >= owner.below) return true;
    if (isDone(node.rest)) {
      owner.see(planOf(problem, node.fixed));
      return true;
    }
    const solved = yield* this.solved(node);
    if (solved.bound >= owner.below) return true;
    const whole = solved.uses.map(({ pattern, value }) => ({ pattern, times: round(value) })).filter(use => use.times > 0);
    if (isWhole(solved) && residual(node.rest, whole)) {
      owner.see(planOf(problem, [...node.fixed, ...whole]));
      if (solved.bound >= owner.below) return true;
    }
    const kind = node.fixed.length === 0 ? undecidedKind(problem.widths, pool, solved.uses, this.isByPairs) : undefined;
    const branches = kind ? kindBranches(node, kind, solved) : patternBranches(node, pool, solved, work);
    if (branches) this.stack.push(...branches);
    return branches !== undefined;
  }

  *search(nodes: number): Generator<void, boolean> {
    for (let count = 0; this.stack.length > 0; count++) {
      if (this.work.over || count >= nodes) return false;
      yield;
      if (!(yield* this.settle(this.stack.pop()!))) return false;
    }
    return true;
  }
}

/**
 * Branch and bound over all patterns that can matter: a branch uses one pattern an exact number of times (finds plans fast), or, by
 * pairs, has two widths meet or not (settles what is left faster). Branches are cut off only by a bound in whole numbers.
 * @param nodes where to give up
 * @yields often
 * @returns true where every branch was settled: then no plan that loses less than `below` exists but those seen
 */
export function poolSearch(
  problem: GridProblem,
  pool: readonly Pattern[],
  owner: PoolSearchOwner,
  isByPairs: boolean,
  nodes: number,
  work: Work,
): Generator<void, boolean> {
  return new PoolTree(problem, pool, owner, isByPairs, work).search(nodes);
}
