import type { Cause } from './cause';
import type { CrimpSeries } from './crimpSeries';
import type { TimeStretches } from './timeStretches';
import { BESIDE_STEP, UNDER_RAMP } from './machineCauses';

/** Dies that are off for all their crimps. */
export function wholeDies({ dies }: CrimpSeries, { boundaries }: TimeStretches): Cause[] {
  return dies.map((_, of) => ({ kind: 'die', of, line: { from: 0, to: boundaries.length + 1, start: 0, rise: 0 } }));
}

/** Changes of one die; of boundaries without a crimp of the die between them the first counts. */
function changesOf(of: number, crimps: readonly number[], { boundaries, elapsed }: TimeStretches): Cause[] {
  const end = elapsed[elapsed.length - 1]!;
  const to = boundaries.length + 1;
  const found: Cause[] = [];
  let before = -1;
  [0, ...boundaries].forEach((boundary, from) => {
    const start = elapsed[boundary]!;
    const earlier = crimps.filter(crimp => crimp < boundary).length;
    const later = crimps.length - earlier;
    if (earlier === before) return;
    before = earlier;
    if (boundary > 0 && earlier >= BESIDE_STEP && later >= BESIDE_STEP) {
      found.push({ kind: 'die since', of, boundary, line: { from, to, start: 0, rise: 0 } });
    }
    if (later >= UNDER_RAMP && start < end) {
      found.push({ kind: 'die rising', of, boundary, line: { from, to, start, rise: 1 / (end - start) } });
    }
  });
  return found;
}

/** What may have changed single dies: steps and ramps at the boundaries between dates. */
export function dieChanges({ dies, die, time }: CrimpSeries, stretches: TimeStretches): Cause[] {
  if (!time) return [];
  const crimps: number[][] = dies.map(() => []);
  die.forEach((number, crimp) => crimps[number]?.push(crimp));
  return dies.flatMap((_, number) => changesOf(number, crimps[number]!, stretches));
}
