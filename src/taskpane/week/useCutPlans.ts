import { useEffect, useRef, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import type { CutSettings } from '../../sheets/cutlist/cutSettings';
import { gatherAgain, gatherCuts, isSameWork, type CutWishes, type Gathered } from '../../sheets/cutlist/gatherCuts';
import { today } from '../../sheets/table/today';
import { planCuts, type PlanProgress } from '../../sheets/cutlist/planCuts';
import type { HosePlan } from '../../sheets/cutlist/planHose';
import type { JobChoice } from '../../sheets/jobs/readJobs';
import type { PlanSolver } from '../../sheets/cutlist/planSolver';
import { writeCuts } from '../../sheets/cutlist/writeCuts';

/** What the view shows. */
export type CutsView =
  | { readonly status: 'idle' }
  | { readonly status: 'failed'; readonly reason: string; readonly error: unknown }
  | { readonly status: 'planning'; readonly progress: PlanProgress | undefined; readonly isEnding: boolean }
  | ReadyCuts;

/** Plans that were made, and what became of their writing. */
export interface ReadyCuts {
  readonly status: 'ready';
  readonly gathered: Gathered;
  readonly plans: readonly HosePlan[];
  readonly written?: readonly string[] | undefined;
  readonly refusal?: string | undefined;
}

const sentence = (error: unknown) => (error instanceof Error ? error.message : String(error));

/** Plans, cancels and writes; the newest run counts. */
export function useCutPlans(workbook: Workbook, solve: PlanSolver, plansAtOnce: number) {
  const [view, setView] = useState<CutsView>({ status: 'idle' });
  const run = useRef({ aborted: false });
  // A pane that is closed, or shows another workbook, needs no plan any more.
  useEffect(
    () => () => {
      run.current.aborted = true;
    },
    [],
  );

  const plan = async (rackSheet: string, settings: CutSettings, wishes?: CutWishes, choice?: JobChoice) => {
    run.current.aborted = true;
    const signal = (run.current = { aborted: false });
    const isNewest = () => run.current === signal;
    setView({ status: 'planning', progress: undefined, isEnding: false });
    try {
      const gathered = await gatherCuts(workbook, rackSheet, settings, today(), wishes, choice);
      const onProgress = (progress: PlanProgress) =>
        isNewest() && setView({ status: 'planning', progress, isEnding: signal.aborted });
      const plans = await planCuts(gathered, solve, onProgress, signal, plansAtOnce);
      if (isNewest()) setView({ status: 'ready', gathered, plans });
    } catch (error) {
      if (isNewest()) setView({ status: 'failed', reason: sentence(error), error });
    }
  };

  const cancel = () => {
    run.current.aborted = true;
    setView(before => (before.status === 'planning' ? { ...before, isEnding: true } : before));
  };

  const write = async () => {
    if (view.status !== 'ready') return;
    try {
      const now = await gatherAgain(workbook, view.gathered, today());
      if (!isSameWork(now, view.gathered)) throw new Error('the job sheet or the rack has changed since. Plan the cuts again.');
      const written = await writeCuts(workbook, view.gathered, view.plans, today());
      setView({ ...view, written, refusal: undefined });
    } catch (error) {
      setView({ ...view, refusal: sentence(error) });
    }
  };

  return { view, plan, cancel, write };
}
