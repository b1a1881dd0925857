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

/** Seconds of work for all hoses together, and the most for one. */
const ALL_SECONDS = 20;
const MOST_SECONDS = 3;

/**
 * Plans all hoses. Once cancelled, each hose that is left gets the first plan found for it.
 * @param atOnce hoses planned at the same time; progress is that of the first of them
 */
export async function planHoses(
  { jobs, settings, reelLengths }: Gathered,
  solve: PlanSolver,
  onProgress: (progress: PlanProgress) => void,
  signal: { readonly aborted: boolean },
  atOnce = 1,
): Promise<readonly HosePlan[]> {
  const seconds = Math.min(MOST_SECONDS, ALL_SECONDS / jobs.length);
  const solveInTime: PlanSolver = (problem, watch) => solve({ seconds, ...problem }, watch);
  const plans: HosePlan[] = [];
  const running = new Set<number>();
  let next = 0;
  const planNext = async (): Promise<void> => {
    if (next >= jobs.length) return;
    const index = next++;
    const job = jobs[index]!;
    const at = { hose: job.hose, number: index + 1, of: jobs.length };
    running.add(index);
    const show = (progress: PlanProgress) => index === Math.min(...running) && onProgress(progress);
    show(at);
    const watch = { signal, onProgress: (best: number | undefined, bound: number) => show({ ...at, best, bound }) };
    plans[index] = await planHose(job, settings, reelLengths.get(hoseKey(job.hose)), solveInTime, watch);
    running.delete(index);
    return planNext();
  };
  await Promise.all(Array.from({ length: atOnce }, planNext));
  return plans;
}
