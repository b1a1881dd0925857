import { partKey } from '../../core/catalogue/partName';
import { judgeCrimp, type CrimpVerdict } from '../../core/crimp/crimpVerdict';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { MeasuredCrimp } from '../crimps/crimpRow';
import { lastChange, type MachineChange } from '../crimps/readMachineChanges';
import { NOT_COUNTED, type CombinationReadingsCause } from './combinationCause';
import { countedCrimps, dieOf, type CountedCrimps } from './countedCrimps';
import type { JudgedCrimp } from './judgedCrimp';
import { machineCause, type MachineReadingsCause } from './machineCause';
import type { MachineFacts } from './machineFacts';
import { sinceLastChange } from './sinceLastChange';

export const VERDICTS = ['IN SPEC', 'TIGHT', 'LOOSE', 'OVAL', 'UNSURE'] as const satisfies readonly CrimpVerdict[];

/** The crimps of one combination on one machine. */
export interface CombinationReadings {
  readonly name: string;
  /** In the order they were made. */
  readonly crimps: readonly JudgedCrimp[];
  /** Those that count: made at the present dial, since the last change that somebody logged. */
  readonly counted: readonly JudgedCrimp[];
  /** Those since the last change that was found: only they show the present state as it is. */
  readonly current: readonly JudgedCrimp[];
  /** Mean deviation of the current ones, else of those that count; undefined without any. */
  readonly mean: Decimal | undefined;
  readonly cause: CombinationReadingsCause;
}

/** What the readings of one machine say. */
export interface MachineReadings {
  readonly sheet: string;
  /** As the sheet names it; "" where it names none. */
  readonly machine: string;
  readonly crimps: readonly JudgedCrimp[];
  /** The narrowest of its combinations. */
  readonly tolerance: Decimal;
  readonly tolerancesDiffer: boolean;
  readonly combinations: readonly CombinationReadings[];
  readonly counts: CountedCrimps;
  /** Crimps since the last change. */
  readonly current: readonly JudgedCrimp[];
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
  /** Dates order the crimps where nearly every crimp has one. */
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
  /** Changes of machines that are logged. */
  readonly changes?: readonly MachineChange[] | undefined;
  /** First day that counts; undefined = all. */
  readonly fromDay?: number | undefined;
  /** Day number: later dates are slips of the pen. */
  readonly today?: number | undefined;
  /** Whether somebody said that a machine's crimps are of one machine, though they look like two. */
  readonly isOneMachine?: ((machine: string) => boolean) | undefined;
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

function meanOf(crimps: readonly JudgedCrimp[]): Decimal | undefined {
  if (crimps.length === 0) return undefined;
  return Decimal.sum(...crimps.map(({ measure }) => measure.deviation)).div(crimps.length);
}

function analyseMachine(machine: string, crimps: readonly JudgedCrimp[], rules: AnalysisRules): MachineReadings {
  const tolerances = crimps.map(crimp => crimp.tolerance);
  const tolerance = tolerances.reduce((least, each) => Decimal.min(least, each));
  const { fromDay, today, changes = [] } = rules;
  const counts = countedCrimps(crimps, { change: lastChange(changes, machine), fromDay, today });
  const cause = machineCause({
    crimps: counts,
    tolerance,
    confidence: rules.confidence ?? 0.95,
    actionShare: rules.actionShare ?? new Decimal(0.5),
    isOneMachine: rules.isOneMachine?.(machine) ?? false,
  });
  const current = sinceLastChange(counts.present, cause);
  const [isPresent, isCurrent] = [new Set(counts.present), new Set(current)];
  const dies = gatherBy(counts.present, dieOf);
  return {
    sheet: crimps[0]!.sheet,
    machine,
    crimps,
    tolerance,
    tolerancesDiffer: tolerances.some(each => !each.eq(tolerance)),
    combinations: gatherBy(crimps, crimp => crimp.combination).map(({ name, items }) => {
      const counted = items.filter(crimp => isPresent.has(crimp));
      const own = counted.filter(crimp => isCurrent.has(crimp));
      const mean = meanOf(own.length > 0 ? own : counted);
      return { name, crimps: items, counted, current: own, mean, cause: cause.combinations.get(partKey(name)) ?? NOT_COUNTED };
    }),
    counts,
    current,
    cause,
    die: dies.length === 1 ? dies[0]!.name : '',
    facts: each => rules.factsOf(machine, each),
  };
}

function countsOf(crimps: readonly JudgedCrimp[]): Record<CrimpVerdict, number> {
  const counts = Object.fromEntries(VERDICTS.map(verdict => [verdict, 0])) as Record<CrimpVerdict, number>;
  for (const { verdict } of crimps) counts[verdict] += 1;
  return counts;
}

/** So many dates may be missing before the order of the sheet is the better one. */
const FEW = 0.1;

/** In the order they were made: one without a date goes with the one above it. */
function inOrder(crimps: readonly JudgedCrimp[]): readonly JudgedCrimp[] {
  let last = -Infinity;
  const dated = crimps.map(crimp => ({ crimp, date: (last = crimp.date ?? last) }));
  return dated.sort((a, b) => (a.date === b.date ? a.crimp.row - b.crimp.row : a.date - b.date)).map(({ crimp }) => crimp);
}

/** Judges every crimp and, machine by machine, what is off: the machine, a die, single settings, and since when. */
export function analyseReadings(
  { unit, crimps }: { readonly unit: LengthUnit; readonly crimps: readonly MeasuredCrimp[] },
  rules: AnalysisRules,
): ReadingsAnalysis {
  const isDated = crimps.filter(({ date }) => date === undefined).length <= FEW * crimps.length;
  const judged = crimps.map((crimp): JudgedCrimp => {
    const { tolerance, largestSpread: maxSpread } = crimp;
    return { ...crimp, verdict: judgeCrimp(crimp.measure, { tolerance, uncertainty: rules.uncertainty, maxSpread }) };
  });
  const ordered = isDated ? inOrder(judged) : judged;
  return {
    unit,
    crimps: ordered,
    counts: countsOf(ordered),
    machines: gatherBy(ordered, ({ machine }) => machine).map(({ name, items }) => analyseMachine(name, items, rules)),
    order: isDated ? 'date' : 'sheet',
  };
}
