import { partKey } from '../../core/catalogue/partName';
import { judgeCrimp, type CrimpVerdict } from '../../core/crimp/crimpVerdict';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { machineCause, type CombinationReadingsCause, type MachineReadingsCause } from './machineCause';
import type { MachineFacts } from './machineFacts';
import type { MeasuredCrimp } from '../crimps/crimpRow';

export const VERDICTS = ['IN SPEC', 'TIGHT', 'LOOSE', 'OVAL', 'UNSURE'] as const satisfies readonly CrimpVerdict[];

/** A crimp and what it is judged to be. */
export interface JudgedCrimp extends MeasuredCrimp {
  readonly verdict: CrimpVerdict;
}

/** The crimps of one combination on one machine. */
export interface CombinationReadings {
  readonly name: string;
  /** In the order they were made. */
  readonly crimps: readonly JudgedCrimp[];
  /** Those made at the die and dial of the newest: only they tell about the setting as it is. */
  readonly current: readonly JudgedCrimp[];
  readonly cause: CombinationReadingsCause;
}

/** What the readings of one machine say. */
export interface MachineReadings {
  /** As the sheet names it; "" where it names none. */
  readonly machine: string;
  readonly crimps: readonly JudgedCrimp[];
  /** The narrowest of its combinations. */
  readonly tolerance: Decimal;
  readonly tolerancesDiffer: boolean;
  readonly combinations: readonly CombinationReadings[];
  readonly cause: MachineReadingsCause;
  /** The one die that all were made with; "" where there are several or none is named. */
  readonly die: string;
  readonly facts: (die: string) => MachineFacts;
}

/** What all readings say, by machine in order of first appearance. */
export interface ReadingsAnalysis {
  readonly unit: LengthUnit;
  readonly crimps: readonly JudgedCrimp[];
  readonly counts: Readonly<Record<CrimpVerdict, number>>;
  readonly machines: readonly MachineReadings[];
  /** Dates order the crimps where every crimp has one. */
  readonly order: 'date' | 'sheet';
}

/** What is asked of the readings. */
export interface AnalysisRules {
  /** Expanded uncertainty U (k = 2) of a crimp's mean, in the measurements' unit. */
  readonly uncertainty?: Decimal | undefined;
  readonly factsOf: (machine: string, die: string) => MachineFacts;
  /** 0.95 where left out, as CRIMPCAUSE. */
  readonly confidence?: number;
  /** 0.5 where left out, as CRIMPCAUSE. */
  readonly actionShare?: Decimal;
}

export function gatherBy<T>(items: readonly T[], nameOf: (item: T) => string): { name: string; items: T[] }[] {
  const groups = new Map<string, { name: string; items: T[] }>();
  for (const item of items) {
    const name = nameOf(item);
    const group = groups.get(partKey(name));
    if (group) group.items.push(item);
    else groups.set(partKey(name), { name, items: [item] });
  }
  return [...groups.values()];
}

/** Crimps of the newest one's die and dial; what names none counts as the same. */
function atCurrentSetting(crimps: readonly JudgedCrimp[]): JudgedCrimp[] {
  const newestFirst = [...crimps].reverse();
  const die = newestFirst.find(crimp => crimp.die !== '')?.die;
  const dial = newestFirst.find(crimp => crimp.dial !== undefined)?.dial;
  return crimps.filter(
    crimp =>
      (crimp.die === '' || partKey(crimp.die) === partKey(die ?? '')) &&
      (crimp.dial === undefined || dial === undefined || crimp.dial.eq(dial)),
  );
}

function analyseMachine(machine: string, crimps: readonly JudgedCrimp[], rules: AnalysisRules): MachineReadings {
  const groups = gatherBy(crimps, crimp => crimp.combination).map(({ name, items }) => ({
    name,
    crimps: items,
    current: atCurrentSetting(items),
  }));
  const tolerances = crimps.map(crimp => crimp.tolerance);
  const tolerance = tolerances.reduce((least, each) => Decimal.min(least, each));
  const dies = gatherBy(
    groups.flatMap(({ current }) => current),
    ({ die }) => die,
  );
  const die = dies.length === 1 ? dies[0]!.name : '';
  const cause = machineCause({
    groups: groups.map(({ name, current }) => ({ name, deviations: current.map(({ measure }) => measure.deviation) })),
    tolerance,
    confidence: rules.confidence ?? 0.95,
    actionShare: rules.actionShare ?? new Decimal(0.5),
    oneDie: die !== '',
  });
  return {
    machine,
    crimps,
    tolerance,
    tolerancesDiffer: tolerances.some(each => !each.eq(tolerance)),
    combinations: groups.map((group, index) => ({ ...group, cause: cause.combinations[index]! })),
    cause,
    die,
    facts: each => rules.factsOf(machine, each),
  };
}

function countsOf(crimps: readonly JudgedCrimp[]): Record<CrimpVerdict, number> {
  const counts = Object.fromEntries(VERDICTS.map(verdict => [verdict, 0])) as Record<CrimpVerdict, number>;
  for (const { verdict } of crimps) counts[verdict] += 1;
  return counts;
}

/** Judges every crimp and, machine by machine, whether single settings are off or the machine. */
export function analyseReadings(
  { unit, crimps }: { readonly unit: LengthUnit; readonly crimps: readonly MeasuredCrimp[] },
  rules: AnalysisRules,
): ReadingsAnalysis {
  const isDated = crimps.every(({ date }) => date !== undefined);
  const judged = crimps.map((crimp): JudgedCrimp => {
    const { tolerance, largestSpread: maxSpread } = crimp;
    return { ...crimp, verdict: judgeCrimp(crimp.measure, { tolerance, uncertainty: rules.uncertainty, maxSpread }) };
  });
  const ordered = isDated ? [...judged].sort((a, b) => a.date! - b.date! || a.row - b.row) : judged;
  return {
    unit,
    crimps: ordered,
    counts: countsOf(ordered),
    machines: gatherBy(ordered, ({ machine }) => machine).map(({ name, items }) => analyseMachine(name, items, rules)),
    order: isDated ? 'date' : 'sheet',
  };
}
