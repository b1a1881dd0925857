import type { CutPlan, CutPlanProblem } from '../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../core/cutplan/solveCutPlan';

/** Makes a plan that has passed the independent check: the core's solver, in a worker where there is one. */
export type PlanSolver = (problem: CutPlanProblem, watch?: CutPlanWatch) => Promise<CutPlan>;
