import { causeNumbers } from './causeNumbers';
import type { CrimpCause, NextMeasurement } from './crimpCauseResult';
import type { CrimpSeries } from './crimpSeries';
import { timeless } from './timeStretches';

/** It takes three combinations or more to tell a machine from a setting, and three repeats or more to know their scatter. */
const LEAST_COMBINATIONS = 3;
const LEAST_REPEATS = 3;
/** Crimps of each combination that is still missing. */
const OF_EACH = 2;

/** Step 1: whether there are too few crimps to tell anything. */
export function areNotEnough({ crimps, combinations }: CrimpSeries): boolean {
  return combinations.length < LEAST_COMBINATIONS || crimps.length - combinations.length < LEAST_REPEATS;
}

/** Other combinations where these are too few, else more of the one crimped least. */
function moreCrimps({ crimps, combinations, ofCombination }: CrimpSeries): NextMeasurement | undefined {
  if (combinations.length === 0) return undefined;
  if (combinations.length < LEAST_COMBINATIONS) {
    return { crimps: OF_EACH * (LEAST_COMBINATIONS - combinations.length), combination: undefined, otherDie: false };
  }
  const counts = ofCombination.map(({ length }) => length);
  const fewest = counts.indexOf(Math.min(...counts));
  const missing = LEAST_REPEATS - (crimps.length - combinations.length);
  return { crimps: missing, combination: combinations[fewest]!, otherDie: false };
}

/** Too few crimps: their plain means, nothing to correct, and how many more it takes. */
export function notEnoughCrimps(series: CrimpSeries, confidence: number): CrimpCause {
  const numbers = series.crimps.length > 0 ? causeNumbers(series, timeless(series.crimps.length), [], confidence) : undefined;
  return {
    finding: 'NOT ENOUGH DATA',
    off: [],
    crimps: series.crimps.length,
    machine: { isSure: false, offset: numbers?.machine?.offset, correction: 0 },
    dies: series.dies.map((name, die) => ({
      name,
      crimps: series.die.filter(each => each === die).length,
      offset: numbers?.dies[die],
      finding: 'CANNOT TELL',
    })),
    combinations: series.combinations.map((name, number) => ({
      name,
      crimps: series.ofCombination[number]!.length,
      offset: numbers?.combinations[number]?.offset,
      correction: 0,
      finding: 'CANNOT TELL',
    })),
    setAside: [],
    next: moreCrimps(series),
    rivals: [],
    scatter: numbers?.scatter.scatter ?? NaN,
  };
}
