import type { CutPlan, CutPlanProblem } from '../../core/cutplan/cutPlan';
import { solveCutPlan, type CutPlanWatch } from '../../core/cutplan/solveCutPlan';
import { faultOf } from '../../core/cutplan/verifyCutPlan';
import { errorFrom, plain, planFrom, type FromWorker, type ToWorker } from './workerMessages';

/** The part of a Worker that is used here. */
export interface PlanWorker {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: { data: FromWorker }) => void) | null;
  onerror: ((event: unknown) => void) | null;
}

const FILE = 'cutplan-worker.js';
/** How often a cancel is looked for, how long a worker may take to come alive, and to answer a cancel (milliseconds). */
const LOOK = 50;
const ALIVE = 5_000;
const ANSWER = 200;

/** Where this script stands, so that the worker is found beside it; undefined where the host does not say. */
const home = scriptAddress();

function scriptAddress(): string | undefined {
  if (typeof document !== 'undefined') {
    const script = document.currentScript as HTMLScriptElement | null;
    return script?.src || document.baseURI;
  }
  return typeof location === 'undefined' ? undefined : location.href;
}

/** A worker from beside this script; undefined where the host has none or refuses. */
function besideWorker(): PlanWorker | undefined {
  if (typeof Worker !== 'function' || !home) return undefined;
  try {
    return new Worker(new URL(FILE, home).href) as PlanWorker;
  } catch {
    return undefined;
  }
}

/**
 * The cutting plan that loses least: in a Worker where there is one, else here, in slices.
 * Either way the plan has passed the independent check. Once cancelled, no worker is waited for: the first plan found here will do.
 * @param watch progress, and a signal that ends the search with the best plan so far
 * @param start makes the worker; tests give their own
 * @throws TradeError as solveCutPlan does
 */
export async function planCuts(
  problem: CutPlanProblem,
  watch: CutPlanWatch = {},
  start: () => PlanWorker | undefined = besideWorker,
): Promise<CutPlan> {
  const worker = watch.signal?.aborted ? undefined : start();
  const plan = worker && (await planAside(worker, problem, watch));
  if (!plan) return solveCutPlan(problem, watch);
  const fault = faultOf(problem, plan);
  if (fault) throw new Error(`The cutting plan failed its check: ${fault}.`);
  return plan;
}

/** The worker's plan; undefined where it did not come alive, or does not answer a cancel. */
function planAside(worker: PlanWorker, problem: CutPlanProblem, watch: CutPlanWatch): Promise<CutPlan | undefined> {
  return new Promise<CutPlan | undefined>((resolve, reject) => {
    let isAlive = false;
    let cancelled = Infinity;
    const look = setInterval(() => {
      if (!watch.signal?.aborted) return;
      if (!isAlive || Date.now() - cancelled >= ANSWER) end(() => resolve(undefined));
      else if (cancelled === Infinity) {
        cancelled = Date.now();
        worker.postMessage({ cancel: true });
      }
    }, LOOK);
    const waiting = setTimeout(() => isAlive || end(() => resolve(undefined)), ALIVE);
    const end = (settle: () => void) => {
      clearInterval(look);
      clearTimeout(waiting);
      worker.terminate();
      settle();
    };
    worker.onerror = () => end(() => resolve(undefined));
    worker.onmessage = ({ data }) => {
      if ('ready' in data) {
        isAlive = true;
        worker.postMessage({ problem: plain(problem) });
      } else if ('plan' in data) end(() => resolve(planFrom(data.plan)));
      else if ('error' in data) end(() => reject(errorFrom(data.error)));
      else watch.onProgress?.(data.best, data.bound);
    };
  });
}
