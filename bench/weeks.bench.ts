import { judgeWeek } from '../tests/sheets/cutlist/judgeWeek';
import { randomWeek } from '../tests/sheets/cutlist/randomWeek';
import { writeRandomWeek } from '../tests/sheets/cutlist/writeRandomWeek';

const WEEKS = 1000;

const start = performance.now();
let [judged, wrong] = [0, 0];
for (let seed = 1; seed <= WEEKS; seed += 1) {
  const week = randomWeek(seed);
  const written = await writeRandomWeek(week);
  if (!written) continue;
  judged += 1;
  const found = judgeWeek(week, written);
  if (found.length > 0) {
    wrong += 1;
    console.log(`week ${seed}: ${found.join('; ')}`);
  }
}
const seconds = ((performance.now() - start) / 1000).toFixed(0);
console.log(`${WEEKS} random weeks in ${seconds} s: ${judged} cut lists written and judged, ${wrong} of them wrong.`);
if (wrong > 0) process.exitCode = 1;
