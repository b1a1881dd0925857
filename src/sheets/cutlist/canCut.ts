import type { CutPlan, CutPlanProblem } from '../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../core/cutplan/solveCutPlan';
import { TradeError } from '../../core/tradeError';
import type { PlanSolver } from './planSolver';

/** A question to the solver costs this many seconds at most. */
const SECONDS = 0.5;

/**
 * Whether everything can be cut: any plan will do.
 * @returns the plan, or the error that says why there is none (`impossible`), or that none was found
 */
export async function canCut(
  problem: CutPlanProblem,
  solve: PlanSolver,
  watch?: CutPlanWatch,
  seconds = SECONDS,
): Promise<CutPlan | TradeError> {
  try {
    return await solve({ ...problem, wanted: 'any', seconds }, watch);
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return error;
  }
}
