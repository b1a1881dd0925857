import type { PlanSolver } from '../planSolver';
import { solveInWorker, WorkerLost, type PlanWorker } from './solveInWorker';

function startWorker(): PlanWorker | undefined {
  if (typeof Worker === 'undefined') return undefined;
  try {
    return new Worker(new URL('./cutPlanWorker.ts', import.meta.url)) as unknown as PlanWorker;
  } catch {
    return undefined;
  }
}

const solveHere: PlanSolver = async (problem, watch) => {
  const { solveCutPlan } = await import('../../../core/cutplan/solveCutPlan');
  return solveCutPlan(problem, watch);
};

/** The core's solver, loaded on first use: in a worker where the page may have one, else in slices on the page. */
export const cutPlanSolver: PlanSolver = async (problem, watch) => {
  const worker = startWorker();
  if (!worker) return solveHere(problem, watch);
  try {
    return await solveInWorker(worker, problem, watch);
  } catch (error) {
    if (error instanceof WorkerLost) return solveHere(problem, watch);
    throw error;
  }
};
