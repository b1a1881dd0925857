import { randomNumbers } from './randomNumbers';
import { combinations, SCATTER, type Week } from './weeks';

/** One crimp of the book. */
export interface MeasuredCrimp {
  readonly date: Date;
  readonly combination: string;
  readonly end: 'A' | 'B';
  readonly die: string;
  readonly dial: number;
  /** Four, in mm, to the caliper's 0.01. */
  readonly readings: readonly number[];
  readonly target: number;
}

const hundredths = (value: number) => Math.round(value * 100) / 100;

/** The crimps of a week with its planted offsets and honest scatter, in the order they were made. */
export function measuredCrimps(week: Week): MeasuredCrimp[] {
  const random = randomNumbers(week.seed);
  const made: MeasuredCrimp[] = [];
  const most = Math.max(...Object.values(week.crimps));
  for (let round = 0; round < most; round++) {
    for (const { name, die, dial, target } of combinations) {
      if (round >= (week.crimps[name] ?? 0)) continue;
      const diameter = target + week.machine + (week.settings[name] ?? 0) + random.normal(SCATTER.crimp);
      made.push({
        date: new Date(Date.UTC(2026, week.monday[0] - 1, week.monday[1] + Math.floor((round * 5) / most))),
        combination: name,
        end: round % 2 === 0 ? 'A' : 'B',
        die,
        dial,
        readings: Array.from({ length: 4 }, () => hundredths(diameter + random.normal(SCATTER.reading))),
        target,
      });
    }
  }
  return made;
}
