import { solveCutPlan } from '../src/core/cutplan/solveCutPlan';
import { drawnInstances } from './drawnInstances';

/** Seconds allowed for each. */
const SECONDS = 5;
const seed = Number(process.env.SEED ?? 1);

const processor = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
/** The solver's safety clock runs on processor time here: other work on the machine must not change what is measured. */
performance.now = processor;

const families = new Map<string, { proven: number; seconds: number[] }>();
for (const { family, problem } of drawnInstances(seed)) {
  const row = families.get(family) ?? { proven: 0, seconds: [] };
  families.set(family, row);
  const start = processor();
  const plan = await solveCutPlan({ ...problem, seconds: SECONDS });
  row.seconds.push((processor() - start) / 1000);
  if (plan.isProven) row.proven++;
}
console.log('| class | drawn | proven | mean processor time | longest |\n|---|---|---|---|---|');
for (const [family, { proven, seconds }] of families) {
  const mean = seconds.reduce((sum, one) => sum + one, 0) / seconds.length;
  console.log(`| ${family} | ${seconds.length} | ${proven} | ${mean.toFixed(2)} s | ${Math.max(...seconds).toFixed(2)} s |`);
}
