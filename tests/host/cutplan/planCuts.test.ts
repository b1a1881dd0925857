import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { TradeError } from '../../../src/core/tradeError';
import { Decimal } from '../../../src/core/units/decimal';
import { planCuts, type PlanWorker } from '../../../src/host/cutplan/planCuts';
import { plain, plainError, problemFrom, type FromWorker, type ToWorker } from '../../../src/host/cutplan/workerMessages';

const problem = {
  pieces: [
    { length: new Decimal('1250.5'), quantity: 3 },
    { length: new Decimal(840), quantity: 2 },
  ],
  stock: [{ length: new Decimal(6000), quantity: 2 }],
  kerf: new Decimal(3),
  keep: new Decimal(500),
  unit: 'mm',
} as const;

/** A worker whose messages are copied as a browser copies them. */
function fakeWorker(answer: (message: ToWorker, send: (message: FromWorker) => void) => void, isAlive = true) {
  const log: ToWorker[] = [];
  let isEnded = false;
  const worker: PlanWorker = {
    onmessage: null,
    onerror: null,
    postMessage: message => {
      log.push(structuredClone(message));
      answer(log[log.length - 1]!, send);
    },
    terminate: () => (isEnded = true),
  };
  const send = (message: FromWorker) => setTimeout(() => isEnded || worker.onmessage?.({ data: structuredClone(message) }), 0);
  setTimeout(() => (isAlive ? send({ ready: true }) : worker.onerror?.({})), 0);
  return { worker, log, isEnded: () => isEnded };
}

const solving = (message: ToWorker, send: (message: FromWorker) => void) => {
  if (!('problem' in message)) return;
  send({ best: 12, bound: 10 });
  solveCutPlan(problemFrom(message.problem)).then(
    plan => send({ plan: plain(plan) }),
    error => send({ error: plainError(error) }),
  );
};

test('a worker gives the same plan as the solver in place, reports progress and is ended', async () => {
  const { worker, isEnded } = fakeWorker(solving);
  const seen: unknown[] = [];
  const plan = await planCuts(problem, { onProgress: (best, bound) => seen.push([best, bound]) }, () => worker);
  expect(plan).toEqual(await solveCutPlan(problem));
  expect(seen).toEqual([[12, 10]]);
  expect(isEnded()).toBe(true);
});

test('an error of the trade comes out of the worker as it was thrown', async () => {
  const { worker } = fakeWorker(solving);
  const tooLong = { ...problem, pieces: [{ length: new Decimal(7000), quantity: 1 }] };
  const error = await planCuts(tooLong, {}, () => worker).catch((thrown: unknown) => thrown);
  expect(error).toBeInstanceOf(TradeError);
  expect((error as TradeError).message).toBe(
    'piece 1 x 7000 is longer than every stock: the longest stock is 6000 mm; add longer stock or check the length',
  );
});

test('a worker that cannot start is replaced by the solver in place; so is none', async () => {
  const plan = await solveCutPlan(problem);
  expect(await planCuts(problem, {}, () => fakeWorker(solving, false).worker)).toEqual(plan);
  expect(await planCuts(problem, {}, () => undefined)).toEqual(plan);
});

test('a cancel reaches the worker', async () => {
  const signal = { aborted: false };
  const { worker, log } = fakeWorker((message, send) => {
    if ('problem' in message) signal.aborted = true;
    else void solveCutPlan(problem).then(plan => send({ plan: plain(plan) }));
  });
  await planCuts(problem, { signal }, () => worker);
  expect(log[log.length - 1]).toEqual({ cancel: true });
});

test('a plan that was changed on the way fails its check', async () => {
  const { worker } = fakeWorker((message, send) => {
    if ('problem' in message) void solveCutPlan(problem).then(plan => send({ plan: { ...plain(plan), stockCut: 5 } }));
  });
  await expect(planCuts(problem, {}, () => worker)).rejects.toThrow('failed its check');
});

test('once cancelled, no worker is started: the first plan found here will do', async () => {
  const start = jest.fn(() => fakeWorker(solving).worker);
  const plan = await planCuts(problem, { signal: { aborted: true } }, start);
  expect(start).not.toHaveBeenCalled();
  expect(plan.stockCut).toBe(1);
});

test('a worker that is deaf to a cancel, or not alive yet, is ended and not waited for', async () => {
  for (const isAlive of [true, false]) {
    const signal = { aborted: false };
    const { worker, isEnded } = fakeWorker(() => {});
    setTimeout(() => (signal.aborted = true), 20);
    const cancelled = Date.now();
    // The copy hears nothing, so it never comes alive.
    const plan = await planCuts(problem, { signal }, () => (isAlive ? worker : { ...worker }));
    expect(plan.stockCut).toBe(1);
    if (isAlive) expect(isEnded()).toBe(true);
    expect(Date.now() - cancelled).toBeLessThan(10_000);
  }
});

test('a stop is a hard one: every worker that does not answer is ended within 0.3 s by the clock, however many there are', async () => {
  jest.useFakeTimers({ doNotFake: ['performance'] });
  try {
    const signal = { aborted: false };
    const deaf = Array.from({ length: 6 }, () => fakeWorker(() => {}));
    const plans = deaf.map(({ worker }) => planCuts(problem, { signal }, () => worker));
    await jest.advanceTimersByTimeAsync(1_000);
    expect(deaf.map(({ log }) => log.length)).toEqual(Array<number>(6).fill(1));
    signal.aborted = true;
    await jest.advanceTimersByTimeAsync(300);
    expect(deaf.map(({ isEnded }) => isEnded())).toEqual(Array<boolean>(6).fill(true));
    expect((await Promise.all(plans)).map(({ stockCut }) => stockCut)).toEqual(Array<number>(6).fill(1));
  } finally {
    jest.useRealTimers();
  }
});
