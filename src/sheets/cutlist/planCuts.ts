import { hoseKey } from '../jobs/cutLine';
import type { Gathered } from './gatherCuts';
import { planHose, type HosePlan } from './planHose';
import type { PlanSolver } from './planSolver';

/** How far planning is. */
export interface PlanProgress {
  readonly hose: string;
  readonly number: number;
  readonly of: number;
  /** Loss of the best plan so far, and the bound under which none can be; in the plan's unit. */
  readonly best?: number | undefined;
  readonly bound?: number | undefined;
}

/** Plans all hoses one after the other. Once cancelled, each hose that is left gets the first plan found for it. */
export async function planCuts(
  { jobs, settings, reelLengths }: Gathered,
  solve: PlanSolver,
  onProgress: (progress: PlanProgress) => void,
  signal: { readonly aborted: boolean },
): Promise<readonly HosePlan[]> {
  const plans: HosePlan[] = [];
  for (const [index, job] of jobs.entries()) {
    const at = { hose: job.hose, number: index + 1, of: jobs.length };
    onProgress(at);
    const watch = { signal, onProgress: (best: number | undefined, bound: number) => onProgress({ ...at, best, bound }) };
    plans.push(await planHose(job, settings, reelLengths.get(hoseKey(job.hose)), solve, watch));
  }
  return plans;
}
