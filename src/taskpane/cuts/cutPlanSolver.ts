import type { PlanSolver } from './planSolver';

/** The core's solver, loaded on first use: in a worker where the host has them, else in slices on the page. */
export const cutPlanSolver: PlanSolver = async (problem, watch) => {
  const { planCuts } = await import('../../host/cutplan/planCuts');
  return planCuts(problem, watch);
};
