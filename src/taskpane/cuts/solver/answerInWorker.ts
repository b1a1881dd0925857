import { solveCutPlan } from '../../../core/cutplan/solveCutPlan';
import { TradeError } from '../../../core/tradeError';
import { packed, problemOfMessage, refusalOf, type FromWorker, type ToWorker } from './planMessages';

/** Answers messages as the worker does: solves, tells of progress, ends when asked to. */
export function answerInWorker(post: (message: FromWorker) => void): (message: ToWorker) => Promise<void> {
  const signal = { aborted: false };
  return async message => {
    if (message.kind === 'cancel') {
      signal.aborted = true;
      return;
    }
    try {
      const onProgress = (best: number | undefined, bound: number) => post({ kind: 'progress', best, bound });
      const plan = await solveCutPlan(problemOfMessage(message.problem), { signal, onProgress });
      post({ kind: 'plan', plan: packed(plan) });
    } catch (error) {
      if (error instanceof TradeError) post({ kind: 'refusal', error: refusalOf(error) });
      else post({ kind: 'failure', message: error instanceof Error ? error.message : String(error) });
    }
  };
}
