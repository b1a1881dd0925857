import { IFormulaCurrentConfigService } from '@univerjs/engine-formula';
import type { BundleId } from '../src/sheets/columns/bundles';
import type { FormulaForm } from '../src/sheets/columns/formulaForm';
import { FORMS, line, openLines } from '../tests/preview/headless/openLines';

/*
 * What the bundles of Columns cost on the try-out sheet's engine: calls of our functions, processor time from writing until the answers stand there,
 * and of calculating the whole workbook, as it is when a file is opened. PASSES=2 leaves the engine as its makers have it: it calculates
 * everything twice where a formula fills several cells. ROWS=100,500 for other heights.
 */

const isAsMade = process.env.PASSES === '2';
const heights = (process.env.ROWS ?? '100,500,2000').split(',').map(Number);
const ROUNDS = 3;

/** Takes `secondPass` off again: it stands on the service itself, above what the engine brings along. */
function asMade({ open }: Awaited<ReturnType<typeof openLines>>): void {
  const order: object = open.univer.__getInjector().get(IFormulaCurrentConfigService);
  Reflect.deleteProperty(order, 'loadDirtyRangesAndExcludedCell');
}

/** Seconds of processor time since then. */
function spent(start: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}

async function timed(id: BundleId, form: FormulaForm, rows: number) {
  const lines = await openLines();
  if (isAsMade) asMade(lines);
  await lines.put(Array.from({ length: rows }, (_, i) => line(i + 1, 600 + i)));
  const before = await lines.callsOfAll();
  const plan = await lines.planned(id, form);
  const ended = new Promise<void>(resolve => {
    const listening = lines.open.api.getFormula().calculationEnd(() => {
      listening.dispose();
      resolve();
    });
  });
  let start = process.cpuUsage();
  await lines.port.write(plan.changes);
  await ended;
  const writing = spent(start);
  start = process.cpuUsage();
  const calls = (await lines.callsOfAll()) - before;
  const all = spent(start);
  lines.open.dispose();
  return { formulaCalls: plan.calls, calls, writing, all };
}

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
const seconds = (all: readonly number[]) => median(all).toFixed(2);

console.log('| bundle | rows | form | calls in formulas | calls made | written and answered | whole workbook |');
console.log('| --- | --- | --- | --- | --- | --- | --- |');
for (const rows of heights) {
  for (const id of ['bench', 'price', 'qa'] as const) {
    for (const form of FORMS) {
      const rounds: Awaited<ReturnType<typeof timed>>[] = [];
      for (let round = 0; round < ROUNDS; round += 1) rounds.push(await timed(id, form, rows));
      const [{ formulaCalls, calls }] = rounds as [(typeof rounds)[0]];
      const [writing, all] = [rounds.map(each => each.writing), rounds.map(each => each.all)];
      console.log(`| ${id} | ${rows} | ${form} | ${formulaCalls} | ${calls} | ${seconds(writing)} s | ${seconds(all)} s |`);
    }
  }
}
