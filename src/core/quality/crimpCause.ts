import { Decimal } from '../units/decimal';
import { againstOthers, fitGroups, measureGroup, type CrimpGroup, type GroupFit, type MeasuredGroup } from './crimpGroups';
import { tQuantile } from './tQuantile';

/** What is asked of the crimps of one machine. All diameters in one unit. */
export interface CrimpCauseInput {
  readonly groups: readonly CrimpGroup[];
  readonly tolerance: Decimal;
  /** Between 0.5 and 1. */
  readonly confidence: number;
  /** Share of the tolerance below which nothing is touched. */
  readonly actionShare: Decimal;
  /** True where all crimps are known to be of one die: an offset may then be the die's. */
  readonly oneDie?: boolean;
}

export type MachineFinding = 'MACHINE' | 'MACHINE OR DIE' | 'SETTING' | 'BOTH' | 'IN SPEC' | 'NOT ENOUGH DATA';
export type CombinationFinding = 'OWN SETTING' | 'WITH THE MACHINE';
export type Interval = readonly [number, number];

/** The finding on one combination. */
export interface CombinationCause {
  readonly name: string;
  readonly crimps: number;
  readonly mean: Decimal;
  /** Change of diameter wanted. */
  readonly correction: Decimal;
  readonly finding: CombinationFinding;
  /** Interval of its own deviation (mean − machine offset); for combinations taken out. */
  readonly interval?: Interval | undefined;
}

/** The finding on the machine and on each combination, in order of first appearance. */
export interface CrimpCause {
  readonly finding: MachineFinding;
  readonly crimps: number;
  /** Deviation the combinations have in common; undefined without any crimp. */
  readonly offset: Decimal | undefined;
  readonly interval?: Interval | undefined;
  readonly correction: Decimal;
  /** Homogeneity of all combinations, and of those that were left. */
  readonly all?: GroupFit | undefined;
  readonly rest?: GroupFit | undefined;
  readonly combinations: readonly CombinationCause[];
}

const ZERO = new Decimal(0);
/** Means are quotients; beyond these places they only carry the noise of a division without end. */
const PLACES = 25;

const reaches = (value: Decimal, limit: Decimal) => value.abs().toDecimalPlaces(PLACES).gte(limit);
const exceeds = (value: Decimal, limit: Decimal) => value.abs().toDecimalPlaces(PLACES).gt(limit);

/** Steps 1 and 2: takes out the combination that differs most, as long as those left are not alike and more than two. */
function takeOut(groups: readonly MeasuredGroup[], confidence: number): MeasuredGroup[] {
  let rest = [...groups];
  while (rest.length > 2 && fitGroups(rest).p < 1 - confidence) {
    const distances = againstOthers(rest).map(({ difference, unitError }) => Math.abs(difference) / unitError);
    const farthest = distances.indexOf(Math.max(...distances));
    rest = rest.filter((_, index) => index !== farthest);
  }
  return rest;
}

/** Step 3: every interval of one against the mean of the others lies within ± tolerance. */
function shownAlike(rest: readonly MeasuredGroup[], { scatter, df }: GroupFit, tolerance: number, confidence: number): boolean {
  if (!(df > 0)) return false;
  const reach = tQuantile(confidence, df) * scatter;
  return againstOthers(rest).every(({ difference, unitError }) => Math.abs(difference) + reach * unitError <= tolerance);
}

function around(value: Decimal, reach: number): Interval {
  return [value.toNumber() - reach, value.toNumber() + reach];
}

function withTheMachine({ group, count, mean }: MeasuredGroup): CombinationCause {
  return { name: group.name, crimps: count, mean, correction: ZERO, finding: 'WITH THE MACHINE' };
}

/** Step 5: what a combination that was taken out deviates by on its own, and whether that is worth a correction. */
function ownCause(measured: MeasuredGroup, offset: Decimal, action: Decimal, reach: number): CombinationCause {
  const own = measured.mean.minus(offset);
  const interval = around(own, reach);
  if (!reaches(own, action)) return { ...withTheMachine(measured), interval };
  return { ...withTheMachine(measured), correction: own.negated(), finding: 'OWN SETTING', interval };
}

function machineFinding(offsetCounts: boolean, ownSettings: boolean, oneDie: boolean, outOfSpec: boolean): MachineFinding {
  if (offsetCounts && ownSettings) return 'BOTH';
  if (offsetCounts) return oneDie ? 'MACHINE OR DIE' : 'MACHINE';
  if (ownSettings) return 'SETTING';
  return outOfSpec ? 'NOT ENOUGH DATA' : 'IN SPEC';
}

function nothingToSay(measured: readonly MeasuredGroup[], fit?: GroupFit, rest?: GroupFit): CrimpCause {
  return {
    finding: 'NOT ENOUGH DATA',
    crimps: measured.reduce((total, { count }) => total + count, 0),
    offset: (rest ?? fit)?.mean,
    correction: ZERO,
    all: fit,
    rest,
    combinations: measured.map(withTheMachine),
  };
}

/**
 * Tells whether a machine is off for all combinations alike, or single combinations are off by their own setting.
 * With too few data it says so and corrects nothing.
 * @returns findings and corrections (changes of diameter wanted)
 * Source: one-way analysis of variance and comparison of one mean with the others, NIST/SEMATECH e-Handbook 7.4.3; equivalence shown by
 * intervals of twice the error probability within ± tolerance (two one-sided tests, Schuirmann 1987).
 */
export function crimpCause({ groups, tolerance, confidence, actionShare, oneDie = false }: CrimpCauseInput): CrimpCause {
  const measured = groups.map(measureGroup);
  const all = measured.length > 0 ? fitGroups(measured) : undefined;
  if (!all || measured.length < 3 || all.df < 1) return nothingToSay(measured, all);

  const kept = takeOut(measured, confidence);
  const rest = fitGroups(kept);
  if (!shownAlike(kept, rest, tolerance.toNumber(), confidence)) return nothingToSay(measured, all, rest);

  const offset = rest.mean;
  const action = actionShare.times(tolerance);
  const twoSided = (1 + confidence) / 2;
  const interval = around(offset, (tQuantile(twoSided, rest.df) * rest.scatter) / Math.sqrt(rest.crimps));
  const offsetCounts = (interval[0] > 0 || interval[1] < 0) && reaches(offset, action);

  const ownReach = tQuantile(twoSided, all.df) * all.scatter;
  const combinations = measured.map(group =>
    kept.includes(group)
      ? withTheMachine(group)
      : ownCause(group, offset, action, ownReach * Math.sqrt(1 / group.count + 1 / rest.crimps)),
  );
  const ownSettings = combinations.some(({ finding }) => finding === 'OWN SETTING');
  const outOfSpec = measured.some(({ mean }) => exceeds(mean, tolerance));
  return {
    finding: machineFinding(offsetCounts, ownSettings, oneDie, outOfSpec),
    crimps: all.crimps,
    offset,
    interval,
    correction: offsetCounts ? offset.negated() : ZERO,
    all,
    rest,
    combinations,
  };
}
