import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { faultOf } from '../../../src/core/cutplan/verifyCutPlan';
import { TradeError } from '../../../src/core/tradeError';
import { Decimal } from '../../../src/core/units/decimal';
import { answerInWorker } from '../../../src/taskpane/cuts/solver/answerInWorker';
import { solveInWorker, WorkerLost, type PlanWorker } from '../../../src/taskpane/cuts/solver/solveInWorker';

const d = (value: number | string) => new Decimal(value);
const problem = {
  pieces: [
    { length: d(1250), quantity: 3 },
    { length: d('840.5'), quantity: 2 },
  ],
  stock: [{ length: d(6000), quantity: 2 }],
  kerf: d(3),
  unit: 'mm' as const,
};

/** A worker in the same thread whose messages pass through structuredClone, as a real one's do. */
function workerHere(): PlanWorker & { readonly sent: string[] } {
  const sent: string[] = [];
  const worker: PlanWorker & { sent: string[] } = {
    sent,
    onmessage: null,
    onerror: null,
    terminate: () => void sent.push('terminate'),
    postMessage: message => {
      sent.push(message.kind);
      void answer(structuredClone(message));
    },
  };
  const answer = answerInWorker(message => worker.onmessage?.({ data: structuredClone(message) }));
  return worker;
}

test('a plan that comes out of a worker is the plan, decimals and all, and passes the independent check', async () => {
  const worker = workerHere();
  const plan = await solveInWorker(worker, problem);
  const direct = await solveCutPlan(problem);
  expect(plan.loss.eq(direct.loss)).toBe(true);
  expect(faultOf(problem, plan)).toBeUndefined();
  expect(worker.sent).toEqual(['solve', 'terminate']);
});

test('a refusal comes back as the TradeError it was', async () => {
  const short = { ...problem, stock: [{ length: d(2000), quantity: 1 }] };
  const error = await solveInWorker(workerHere(), short).catch((reason: unknown) => reason);
  expect(error).toBeInstanceOf(TradeError);
  expect((error as TradeError).message).toMatch(/short of/);
});

test('cancelling is told to the worker once', async () => {
  const signal = { aborted: true };
  const worker = workerHere();
  let finish: () => void = () => undefined;
  worker.postMessage = message => void (worker.sent.push(message.kind), message.kind === 'cancel' && setTimeout(finish, 120));
  const lost = solveInWorker(worker, problem, { signal });
  finish = () => worker.onerror?.(undefined);
  await expect(lost).rejects.toBeInstanceOf(WorkerLost);
  expect(worker.sent).toEqual(['solve', 'cancel', 'terminate']);
});
