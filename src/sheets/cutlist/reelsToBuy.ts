import type { CutPlanProblem } from '../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../core/cutplan/solveCutPlan';
import { Decimal } from '../../core/units/decimal';
import { canCut } from './canCut';
import type { PlanSolver } from './planSolver';

/** New reels with which everything can be cut. */
export interface ReelsToBuy {
  readonly reelLength: Decimal;
  readonly reels: number;
  /** With fewer than this it is shown that not everything can be cut; equal to `reels` where these are the least. */
  readonly atLeast: number;
}

/** Reels that are needed by length alone: no plan can do with fewer. */
function leastByLength({ pieces, stock, kerf, squaring }: CutPlanProblem, reelLength: Decimal): number {
  const room = (length: Decimal) => Decimal.max(0, length.minus(squaring ?? 0).plus(kerf));
  const wanted = pieces.reduce((sum, piece) => sum.plus(piece.length.plus(kerf).times(piece.quantity)), new Decimal(0));
  const shortest = Decimal.min(...pieces.map(piece => piece.length)).plus(kerf);
  const there = stock
    .filter(one => room(one.length).gte(shortest))
    .reduce((sum, one) => sum.plus(room(one.length).times(one.quantity ?? 0)), new Decimal(0));
  return Math.max(1, wanted.minus(there).div(room(reelLength)).ceil().toNumber());
}

/**
 * The fewest new reels that, with the rack, are enough. One more reel never hurts, so the number is found by doubling and halving.
 * @returns undefined where a piece is longer than a new reel and every reel of the rack, or the search was ended
 */
export async function reelsToBuy(
  problem: CutPlanProblem,
  reelLength: Decimal,
  solve: PlanSolver,
  watch?: CutPlanWatch,
): Promise<ReelsToBuy | undefined> {
  const longest = Decimal.max(0, ...problem.stock.filter(one => one.quantity !== 0).map(one => one.length), reelLength);
  if (problem.pieces.some(piece => piece.length.plus(problem.squaring ?? 0).gt(longest))) return undefined;
  let atLeast = leastByLength(problem, reelLength);
  const isEnough = async (reels: number): Promise<boolean> => {
    const stock = [...problem.stock, { length: reelLength, quantity: reels }];
    const found = await canCut({ ...problem, stock }, solve, { signal: watch?.signal });
    if ('rows' in found) return true;
    if (found.code === 'impossible') atLeast = Math.max(atLeast, reels + 1);
    return false;
  };
  const most = atLeast + problem.pieces.reduce((sum, piece) => sum + piece.quantity, 0);
  let tooFew = atLeast - 1;
  let enough = Infinity;
  for (let step = 1; enough === Infinity && !watch?.signal?.aborted; step *= 2) {
    const reels = Math.min(tooFew + step, most);
    if (await isEnough(reels)) enough = reels;
    else if (reels === most) return undefined;
    else tooFew = reels;
  }
  while (enough - tooFew > 1 && !watch?.signal?.aborted) {
    const reels = Math.floor((tooFew + enough) / 2);
    if (await isEnough(reels)) enough = reels;
    else tooFew = reels;
  }
  return enough === Infinity ? undefined : { reelLength, reels: enough, atLeast: Math.min(atLeast, enough) };
}
