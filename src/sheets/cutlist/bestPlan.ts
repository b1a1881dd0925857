import type { CutPlan, CutPlanProblem } from '../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../core/cutplan/solveCutPlan';
import { TradeError } from '../../core/tradeError';
import type { PlanSolver } from './planSolver';

/** The best plan; the one at hand where the search for a better one finds none. */
export async function bestPlan(
  problem: CutPlanProblem,
  first: CutPlan,
  solve: PlanSolver,
  watch?: CutPlanWatch,
): Promise<CutPlan> {
  if (watch?.signal?.aborted) return first;
  try {
    const found = await solve(problem, watch);
    // A search that is ended may come back with less than was at hand.
    return found.loss.gt(first.loss) ? first : found;
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return first;
  }
}
