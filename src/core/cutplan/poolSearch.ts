import { undecidedPair, holdsBoth } from './pairBranching';
import { violatedCuts, type Cut } from './poolCuts';
import { patternKey, type GridPlan, type GridProblem, type Pattern } from './gridProblem';
import type { Basis } from './master';
import { PoolProgram, type PoolNode, type PoolUse, type Requirement } from './poolProgram';
import { isDone, planOf, residual } from './residual';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { abs, ceil, floor, max, min, round } = Math;

/** Who asks: it knows the best plan so far and takes better ones. */
export interface PoolSearchOwner {
  /** A plan must lose less than this to be of interest. */
  readonly below: number;
  see(plan: GridPlan | undefined): void;
}

/** So many patterns are looked through in one step of work, and what each branch takes besides. */
const PATTERNS_A_STEP = 40;
const STEPS_A_BRANCH = 2;
/** A pattern that can be used more often than this is not branched on: quantities are too large for such a search. */
const MOST_BRANCHES = 2_000;
const ROOT_ROUNDS = 4;
const CUTS_A_ROUND = 15;
const MOST_CUTS = 100;

interface Solved {
  readonly bound: number;
  readonly basis: Basis;
  readonly uses: readonly PoolUse[];
}

/** Solves a node; while that helps, cuts that its solution violates join those known. */
function solveNode(node: PoolNode, cuts: Cut[], known: Set<string>, below: number, work: Work): Solved {
  for (let turn = 0; ; turn++) {
    const program = new PoolProgram(node, cuts, work);
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
function branching(node: PoolNode, uses: readonly PoolUse[]): { pattern: Pattern; value: number } | undefined {
  const fraction = (value: number) => value - floor(value + 1e-4);
  let best: PoolUse | undefined;
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
  const stack: PoolNode[] = [{ fixed: [], loss: 0, rest: problem, pool, start: [], required: [] }];
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
    const branches = kind ? kindBranches(node, kind, uses, basis) : patternBranches(node, uses, work);
    if (!branches) return false;
    stack.push(...branches);
  }
  return true;
}

/** The kind of pattern to decide on: a pair of widths, or the single pattern nearest to being used once. */
function undecidedKind(problem: GridProblem, uses: readonly PoolUse[], isByPairs: boolean): Requirement | undefined {
  const pair = isByPairs ? undecidedPair(problem.widths, uses) : undefined;
  if (pair) return { key: `pair ${pair.join()}`, holds: pattern => holdsBoth(pattern, pair) };
  const once = uses
    .filter(({ value }) => value < 1 - 1e-4)
    .reduce<PoolUse | undefined>((best, use) => (best && best.value >= use.value ? best : use), undefined);
  return once && { key: `pattern ${patternKey(once.source)}`, holds: pattern => pattern === once.source };
}

/** Without that kind, and (searched first) with one of it at least. */
function kindBranches(node: PoolNode, kind: Requirement, uses: readonly PoolUse[], basis: Basis): PoolNode[] {
  const start = uses.map(use => use.source);
  const without = (list: readonly Pattern[]) => list.filter(one => !kind.holds(one));
  return [
    { ...node, pool: without(node.pool), start: without(start), basis },
    { ...node, start, required: [...node.required, kind], basis },
  ];
}

/** One branch for every number of times the pattern can be used; the likeliest last, so that it is searched first. Undefined where these are too many. */
function patternBranches(node: PoolNode, uses: readonly PoolUse[], work: Work): PoolNode[] | undefined {
  const branch = branching(node, uses);
  if (!branch) return [];
  const { pattern, value } = branch;
  const used = uses.map(use => use.source);
  const { rest } = node;
  const useful = pattern.items.map((item, k) => ceil(rest.demand[item]! / pattern.counts[k]!));
  const most = min(rest.stock[pattern.stock]!.count, max(...useful));
  if (most > MOST_BRANCHES) return undefined;
  const others = node.pool.filter(one => one !== pattern);
  const aim = ceil(value - 1e-4);
  work.spend((most + 1) * (others.length / PATTERNS_A_STEP + STEPS_A_BRANCH));
  return Array.from({ length: most + 1 }, (_, times) => times)
    .sort((a, b) => abs(b - aim) - abs(a - aim) || a - b)
    .flatMap(times => {
      const fixed = times > 0 ? [{ pattern, times }] : [];
      const left = residual(rest, fixed);
      if (!left) return [];
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
