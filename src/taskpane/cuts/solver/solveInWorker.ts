import type { CutPlan, CutPlanProblem } from '../../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../../core/cutplan/solveCutPlan';
import { errorOfRefusal, packed, planOfMessage, type FromWorker, type ToWorker } from './planMessages';

/** The part of a Worker that is used. */
export interface PlanWorker {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: { readonly data: FromWorker }) => void) | null;
  onerror: ((event: unknown) => void) | null;
}

/** The worker's script could not be loaded or stopped: nothing is known of the problem. */
export class WorkerLost extends Error {}

/** How often the caller's wish to cancel is looked at (ms). */
const LOOK = 50;

/** Solves in a worker of its own, which is ended afterwards. */
export function solveInWorker(worker: PlanWorker, problem: CutPlanProblem, watch: CutPlanWatch = {}): Promise<CutPlan> {
  return new Promise<CutPlan>((resolve, reject) => {
    let isTold = false;
    const look = setInterval(() => {
      if (!watch.signal?.aborted || isTold) return;
      isTold = true;
      worker.postMessage({ kind: 'cancel' });
    }, LOOK);
    const end = () => {
      clearInterval(look);
      worker.terminate();
    };
    worker.onerror = () => {
      end();
      reject(new WorkerLost('The worker with the solver stopped.'));
    };
    worker.onmessage = ({ data }) => {
      if (data.kind === 'progress') return watch.onProgress?.(data.best, data.bound);
      end();
      if (data.kind === 'plan') resolve(planOfMessage(data.plan));
      else reject(data.kind === 'refusal' ? errorOfRefusal(data.error) : new Error(data.message));
    };
    worker.postMessage({ kind: 'solve', problem: packed(problem) });
  });
}
