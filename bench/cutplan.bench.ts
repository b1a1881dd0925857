import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { GREEDY_ORDERS, greedyPlan } from '../src/core/cutplan/greedy';
import { solveCutPlan } from '../src/core/cutplan/solveCutPlan';
import { toGrid } from '../src/core/cutplan/toGrid';
import type { CutPlan } from '../src/core/cutplan/cutPlan';
import { instances, type Instance } from './instances';

/** The eight greedy orders compared with: pieces longest first or as on the sheet; stock longest or shortest first; first or tightest place. */
const EIGHT = GREEDY_ORDERS.filter(order => order.pieces !== 'shortest' && order.stock !== 'sheet');

interface Result {
  readonly family: string;
  readonly name: string;
  readonly isOptimal: boolean | undefined;
  readonly isFalse: boolean;
  readonly isProven: boolean;
  readonly gap: number;
  readonly overGreedy: number | undefined;
  readonly seconds: number;
  /** Processor time: what the wall clock would show on a machine with nothing else to do. */
  readonly processor: number;
}

function bestGreedy({ problem }: Instance): number | undefined {
  const { grid, sheet, perUnit } = toGrid(problem);
  const losses = EIGHT.flatMap(order => greedyPlan(grid, order, sheet)?.loss ?? []);
  return losses.length > 0 ? Math.min(...losses) / perUnit : undefined;
}

/** The solver's safety clock runs on processor time here: other work on the machine must not change what is measured. */
const wallClock = performance.now.bind(performance);
performance.now = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

async function measure(instance: Instance, seconds: number): Promise<Result> {
  const started = wallClock();
  const before = process.cpuUsage();
  const plan: CutPlan = await solveCutPlan({ ...instance.problem, seconds });
  const elapsed = (wallClock() - started) / 1000;
  const { user, system } = process.cpuUsage(before);
  const greedy = bestGreedy(instance);
  const { optimum } = instance;
  const isOptimal = optimum === undefined ? undefined : plan.stockCut === optimum;
  return {
    family: instance.family,
    name: instance.name,
    isOptimal,
    isFalse: isOptimal === false && plan.isProven,
    isProven: plan.isProven,
    gap: plan.loss.div(plan.bound).minus(1).times(100).toNumber(),
    overGreedy: greedy === undefined ? undefined : (1 - plan.loss.toNumber() / greedy) * 100,
    seconds: elapsed,
    processor: (user + system) / 1e6,
  };
}

function tableOf(results: readonly Result[]): string[] {
  const families = [...new Set(results.map(result => result.family))];
  const head = [
    '| family | instances | optimal | proven | false proofs | largest gap to the bound | less lost than the best of eight greedy orders | mean processor time | longest | longest by the wall clock |',
    '|---|---|---|---|---|---|---|---|---|---|',
  ];
  const rows = families.map(family => {
    const mine = results.filter(result => result.family === family);
    const known = mine.filter(result => result.isOptimal !== undefined);
    const optimal = known.length > 0 ? String(known.filter(result => result.isOptimal).length) : 'not known';
    const greedy = mine.flatMap(result => result.overGreedy ?? []);
    const better =
      greedy.length > 0 ? `${(greedy.reduce((a, b) => a + b, 0) / greedy.length).toFixed(2)} %` : 'greedy finds no plan';
    const processor = mine.map(result => result.processor);
    return [
      family,
      mine.length,
      optimal,
      mine.filter(result => result.isProven).length,
      mine.filter(result => result.isFalse).length,
      `${Math.max(...mine.map(result => result.gap)).toFixed(3)} %`,
      better,
      `${(processor.reduce((a, b) => a + b, 0) / processor.length).toFixed(2)} s`,
      `${Math.max(...processor).toFixed(2)} s`,
      `${Math.max(...mine.map(result => result.seconds)).toFixed(2)} s`,
    ].join(' | ');
  });
  return [...head, ...rows.map(row => `| ${row} |`)];
}

const CLASSICAL_SECONDS = Number(process.env.SECONDS ?? 10);
const folder = process.env.CUTTING ?? join(dirname(fileURLToPath(import.meta.url)), '../tests/cases/cutting');
const results: Result[] = [];
for (const instance of instances(folder)) {
  const result = await measure(instance, instance.family.startsWith('shop') ? 2 : CLASSICAL_SECONDS);
  results.push(result);
  const verdict = `${result.isProven ? 'proven' : `gap ${result.gap.toFixed(3)} %`}${result.isFalse ? ' FALSE PROOF' : ''}`;
  console.log(`${result.name.padEnd(38)} ${verdict.padEnd(14)} ${result.processor.toFixed(2)} s`);
}
console.log(tableOf(results).join('\n'));
const worse = results.filter(result => result.overGreedy !== undefined && result.overGreedy < 0);
if (worse.length > 0 || results.some(result => result.isFalse)) {
  console.error('A false proof, or worse than a greedy order: see above.');
  process.exitCode = 1;
}
