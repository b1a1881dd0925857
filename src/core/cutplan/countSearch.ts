import { floor, min } from '../arithmetic';
import { relax, type Relaxation } from './columnGeneration';
import { dive, NEARLY } from './dive';
import { exactBound } from './exactBound';
import type { GridPlan, GridProblem, Pattern } from './gridProblem';
import { Master, type Basis } from './master';
import { anyCounts, ENDINGS, endingOf, type CountRange, type Ending, type StockCounts } from './stockCounts';
import type { Work } from './work';

/** Who asks: it knows the best plan so far, takes better ones, and higher bounds. */
export interface CountSearchOwner {
  /** A plan must lose less than this to be of interest. */
  readonly below: number;
  see(plan: GridPlan | undefined): void;
  raise(bound: number): void;
}

interface Node {
  readonly counts: StockCounts;
  readonly bound: number;
  readonly start: readonly Pattern[];
  readonly basis: Basis;
}

const WHOLE = 1e-4;

/** How often stock ends in each way in a fractional plan. */
function countsOf({ stock }: GridProblem, uses: Relaxation['uses']): Record<Ending, number[]> {
  const counts = { closed: stock.map(() => 0), open: stock.map(() => 0) };
  for (const { pattern, value } of uses) counts[endingOf(stock[pattern.stock]!, pattern.width)][pattern.stock]! += value;
  return counts;
}

/** Both sides of a fractional number, as ranges: up to the whole number below it, and from the next on. */
function sides({ low, high }: CountRange, value: number): CountRange[] {
  const below = floor(value + WHOLE);
  return [
    { low, high: below },
    { low: below + 1, high },
  ];
}

/** The numbers of stock in two parts, so that the fractional plan is in neither; undefined where all its numbers are whole. */
function divided(counts: StockCounts, values: Record<Ending, number[]>): StockCounts[] | undefined {
  const doubt = (value: number) => min(value - floor(value + WHOLE), floor(value + WHOLE) + 1 - value);
  for (const ending of ENDINGS) {
    const total = values[ending].reduce((sum, value) => sum + value, 0);
    if (doubt(total) > WHOLE) {
      return sides(counts.all[ending], total).map(range => ({ ...counts, all: { ...counts.all, [ending]: range } }));
    }
  }
  let most: { ending: Ending; stock: number; doubt: number } | undefined;
  for (const ending of ENDINGS) {
    values[ending].forEach((value, stock) => {
      if (doubt(value) > (most?.doubt ?? WHOLE)) most = { ending, stock, doubt: doubt(value) };
    });
  }
  if (!most) return undefined;
  const { ending, stock } = most;
  return sides(counts[ending][stock]!, values[ending][stock]!).map(range => ({
    ...counts,
    [ending]: counts[ending].map((one, t) => (t === stock ? range : one)),
  }));
}

/**
 * Branch and bound on how many pieces of stock are cut to their end and how many leave an offcut: the linear relaxation opens them in part.
 * The part with the lowest bound comes first; each part is also dived into.
 * @param root relaxation of the whole problem
 * @param nodes where to give up
 * @yields often
 */
export function* countSearch(
  problem: GridProblem,
  root: Relaxation,
  owner: CountSearchOwner,
  sheet: { readonly pieces: readonly number[]; readonly stock: readonly number[] },
  nodes: number,
  work: Work,
): Generator<void, void> {
  const open: Node[] = [{ counts: anyCounts(problem.stock), bound: 0, start: root.patterns, basis: root.basis }];
  /** The lowest bound of the parts whose numbers of stock are all whole. */
  let whole = Infinity;
  let dived = 0;
  for (let count = 0; open.length > 0 && count < nodes && !work.over; count++) {
    open.sort((a, b) => b.bound - a.bound);
    const node = open.pop()!;
    const part = { ...problem, counts: node.counts };
    const master = new Master(part, node.start, work);
    master.startFrom(node.basis);
    const steps = relax(master, work);
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield;
    const relaxation = step.value;
    const exact = yield* exactBound(part, relaxation.duals.items, work, relaxation.duals.all);
    const bound = exact.bound > node.bound ? exact.bound : node.bound;
    if (bound < owner.below) {
      const parts = divided(node.counts, countsOf(problem, relaxation.uses));
      if (parts) open.push(...parts.map(counts => ({ counts, bound, start: relaxation.patterns, basis: relaxation.basis })));
      else whole = min(whole, bound);
      if (!parts || bound > dived) {
        dived = bound;
        for (const plan of dive(part, relaxation, -1, NEARLY, sheet, work)) {
          owner.see(plan);
          yield;
        }
      }
    }
    owner.raise(min(owner.below, whole, ...open.map(one => one.bound)));
    yield;
  }
}
