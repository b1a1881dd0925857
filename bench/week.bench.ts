import { Worker } from 'node:worker_threads';
import { planCuts as planOne, type PlanWorker } from '../src/host/cutplan/planCuts';
import { cutListSheet } from '../src/sheets/cutlist/cutListSheet';
import { overallResult } from '../src/sheets/cutlist/overallResult';
import { planHoses } from '../src/sheets/cutlist/planHoses';
import type { HosePlan } from '../src/sheets/cutlist/planHose';
import { hoseSummary } from '../src/sheets/cutlist/planText';
import type { PlanSolver } from '../src/sheets/cutlist/planSolver';
import { hoseKey } from '../src/sheets/jobs/cutLine';
import { week } from './week';

/** A thread of Node with the face of a browser's worker. */
function thread(): PlanWorker {
  const inner = new Worker(new URL('planThread.mjs', import.meta.url));
  const worker: PlanWorker = {
    postMessage: message => inner.postMessage(message),
    terminate: () => void inner.terminate(),
    onmessage: null,
    onerror: null,
  };
  inner.on('message', data => worker.onmessage?.({ data }));
  inner.on('error', error => worker.onerror?.(error));
  return worker;
}

const wallClock = performance.now.bind(performance);
const processor = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

let questions = 0;
const inPlace: PlanSolver = async (problem, watch) => {
  questions++;
  // The safety clock runs on processor time, so that other work on the machine does not change what is measured.
  performance.now = processor;
  try {
    return await planOne(problem, watch, () => undefined);
  } finally {
    performance.now = wallClock;
  }
};
const aside: PlanSolver = (problem, watch) => planOne(problem, watch, thread);

async function run(name: string, isOldestFirst: boolean, solve: PlanSolver, atOnce: number, stopAfter?: number) {
  questions = 0;
  const signal = { aborted: false };
  let stopped = 0;
  if (stopAfter !== undefined) {
    setTimeout(() => {
      signal.aborted = true;
      stopped = wallClock();
    }, stopAfter);
  }
  const before = processor();
  const started = wallClock();
  const plans: readonly HosePlan[] = await planHoses(week(isOldestFirst) as never, solve, () => {}, signal, atOnce);
  const spent = processor() - before;
  const ended = wallClock();
  const sum = (of: (plan: HosePlan) => number) => plans.reduce((total, plan) => total + of(plan), 0);
  const percent = plans.map(({ plan }) => plan?.percentOver ?? 0);
  const cells = [
    name,
    `${(spent / 1000).toFixed(1)} s`,
    `${((ended - started) / 1000).toFixed(1)} s`,
    stopped > 0 ? `${((ended - stopped) / 1000).toFixed(2)} s` : '',
    questions || '',
    `${Math.max(...percent).toFixed(2)} %`,
    sum(({ totals }) => totals?.worth.toNumber() ?? 0) / 1000,
    sum(({ reels }) => reels.reduce((total, { cuts }) => total + cuts.length, 0)),
    sum(({ later }) => later.reduce((total, { quantity }) => total + quantity, 0)),
    sum(({ buy }) => buy?.reels ?? 0),
  ];
  console.log(`| ${cells.join(' | ')} |`);
  return plans;
}

const HEADING = [
  'way',
  'processor time',
  'wall clock',
  'after the stop',
  'questions to the solver',
  'largest share over the best',
  'lost, m',
  'pieces cut',
  'pieces that wait',
  'reels to buy',
];
console.log(`| ${HEADING.join(' | ')} |\n| ${HEADING.map(() => '---').join(' | ')} |`);
const planned = await run('one after the other, in place', false, inPlace, 1);
await run('the same, oldest first', true, inPlace, 1);
await run('two hoses at a time, in threads', false, aside, 2);
await run('the same, oldest first', true, aside, 2);
await run('stopped after 2 s, in place', false, inPlace, 1, 2000);
await run('stopped after 2 s, in threads', false, aside, 2, 2000);

/** Pages of the written list: it sets all its breaks itself, alike for A4 and Letter. */
function pages(pagePerHose: boolean): number {
  const { settings } = week(false);
  const reels = planned.flatMap(plan => plan.reels);
  const numbers = new Map(
    reels.flatMap(({ cuts }) => cuts.map((cut): [object, string] => [cut, `${cut.line.line}-${cut.piece}`])),
  );
  const words = {
    source: 'From sheet Jobs (600 lines) and rack Rack, 2026-10-05',
    result: overallResult(planned, 'mm'),
    notes: [],
    hoses: new Map(planned.map(plan => [hoseKey(plan.job.hose), hoseSummary(plan, 'mm')])),
  };
  const changes = cutListSheet('Cut list', reels, { ...settings, pagePerHose }, words, numbers);
  return changes.reduce((count, change) => count + (change.kind === 'page' ? (change.page.breaksBefore?.length ?? 0) : 0), 1);
}
console.log(`Pages of the cut list: ${pages(false)}; with a page for each hose: ${pages(true)}`);
