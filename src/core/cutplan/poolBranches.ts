import { abs, ceil, floor, max, min } from '../arithmetic';
import { patternKey, type Pattern } from './gridProblem';
import { holdsBoth, undecidedPair } from './pairBranching';
import type { PoolBound, PoolNode, PoolUse } from './poolProgram';
import { kindOf, type Kind } from './poolKinds';
import { residual } from './residual';
import type { Basis } from './master';
import type { Work } from './work';

/** So many patterns are looked through in one step of work, and what each branch takes besides. */
const PATTERNS_A_STEP = 40;
const STEPS_A_BRANCH = 2;
/** A pattern that can be used more often than this is not branched on: quantities are too large for such a search. */
const MOST_BRANCHES = 2_000;

/** A node once its program is solved. */
export interface Solved extends PoolBound {
  readonly basis: Basis;
  readonly uses: readonly PoolUse[];
}

/** The kind of pattern to decide on: a pair of widths, or the single pattern nearest to being used once. */
export function undecidedKind(widths: readonly number[], pool: readonly Pattern[], uses: readonly PoolUse[]): Kind | undefined {
  const pair = undecidedPair(widths, uses);
  if (pair) return kindOf(`pair ${pair.join()}`, pool, pattern => holdsBoth(pattern, pair));
  const once = uses
    .filter(({ value }) => value < 1 - 1e-4)
    .reduce<PoolUse | undefined>((best, use) => (best && best.value >= use.value ? best : use), undefined);
  return once && { key: `pattern ${patternKey(pool[once.source]!)}`, patterns: [once.source] };
}

/** Without that kind, and (searched first) with one of it at least. */
export function kindBranches(node: PoolNode, kind: Kind, { open, basis }: Solved): PoolNode[] {
  const held = new Set(kind.patterns);
  return [
    { ...node, open: open.filter(number => !held.has(number)), basis },
    { ...node, open, required: [...node.required, kind], basis },
  ];
}

/** The pattern to branch on: the one behind the largest fractional (else the largest) number in the solution. */
function branching(open: readonly number[], uses: readonly PoolUse[]): { source: number; value: number } | undefined {
  const fraction = (value: number) => value - floor(value + 1e-4);
  let best: PoolUse | undefined;
  for (const use of uses) {
    const difference = best ? fraction(use.value) - fraction(best.value) || use.value - best.value : 1;
    if (difference > 0) best = use;
  }
  return best ?? (open.length > 0 ? { source: open[0]!, value: 0 } : undefined);
}

/** One branch for every number of times the pattern can be used; the likeliest last, so that it is searched first. Undefined where these are too many. */
export function patternBranches(
  node: PoolNode,
  pool: readonly Pattern[],
  { open, uses }: Solved,
  work: Work,
): PoolNode[] | undefined {
  const branch = branching(open, uses);
  if (!branch) return [];
  const pattern = pool[branch.source]!;
  const { rest } = node;
  const useful = pattern.items.map((item, k) => ceil(rest.demand[item]! / pattern.counts[k]!));
  const most = min(rest.stock[pattern.stock]!.count, max(...useful));
  if (most > MOST_BRANCHES) return undefined;
  const others = open.filter(number => number !== branch.source);
  const aim = ceil(branch.value - 1e-4);
  work.spend((most + 1) * (others.length / PATTERNS_A_STEP + STEPS_A_BRANCH));
  return Array.from({ length: most + 1 }, (_, times) => times)
    .sort((a, b) => abs(b - aim) - abs(a - aim) || a - b)
    .flatMap(times => {
      const fixed = times > 0 ? [{ pattern, times }] : [];
      const left = residual(rest, fixed);
      if (!left) return [];
      const isOpen = ({ stock, items }: Pattern) => left.stock[stock]!.count > 0 && items.some(item => left.demand[item]! > 0);
      return {
        fixed: [...node.fixed, ...fixed],
        loss: node.loss + times * pattern.loss,
        rest: left,
        open: others.filter(number => isOpen(pool[number]!)),
        required: [],
        basis: undefined,
      };
    });
}
