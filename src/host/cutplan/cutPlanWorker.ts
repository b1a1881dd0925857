import { solveCutPlan } from '../../core/cutplan/solveCutPlan';
import { plain, plainError, problemFrom, type FromWorker, type ToWorker } from './workerMessages';

/** The worker's side: one problem in, progress and a plan out; `cancel` ends the search with the best plan so far. */
const scope = globalThis as unknown as {
  postMessage(message: FromWorker): void;
  onmessage: ((event: { data: ToWorker }) => void) | null;
};
const signal = { aborted: false };

scope.onmessage = ({ data }) => {
  if ('cancel' in data) {
    signal.aborted = true;
    return;
  }
  solveCutPlan(problemFrom(data.problem), { signal, onProgress: (best, bound) => scope.postMessage({ best, bound }) }).then(
    plan => scope.postMessage({ plan: plain(plan) }),
    error => scope.postMessage({ error: plainError(error) }),
  );
};
scope.postMessage({ ready: true });
