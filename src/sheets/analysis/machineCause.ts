import { partKey } from '../../core/catalogue/partName';
import { isDieChange, isMachineChange } from '../../core/quality/causes/cause';
import type { Interval } from '../../core/quality/causes/causeNumbers';
import { crimpCause } from '../../core/quality/causes/crimpCause';
import type { CauseSince, CrimpCause, DieFinding, NextMeasurement } from '../../core/quality/causes/crimpCauseResult';
import { twoGroups } from '../../core/quality/twoGroups';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { CombinationReadingsCause } from './combinationCause';
import { dieOf, type CountedCrimps } from './countedCrimps';
import { explanationTexts } from './explanationText';
import { deviationOf, type JudgedCrimp } from './judgedCrimp';

/** A change of the machine or of a die with time. */
export interface ChangeSince {
  /** First crimp after it; where it has grown since, the one it began with. */
  readonly crimp: JudgedCrimp;
  readonly isRising: boolean;
}

/** The finding on one die. */
export interface DieReadingsCause {
  readonly name: string;
  readonly crimps: readonly JudgedCrimp[];
  /** Its own, beyond the machine. */
  readonly offset: number | undefined;
  readonly finding: DieFinding;
  readonly since?: ChangeSince | undefined;
}

/** A crimp that no cause explains. */
export interface AsideCrimp {
  readonly crimp: JudgedCrimp;
  readonly offset: number;
}

/** Two groups of crimps at the same time. */
export interface MixedCrimps {
  /** In the unit of the readings. */
  readonly apart: number;
}

/** The finding on the machine. */
export interface MachineReadingsCause {
  /** As CRIMPCAUSE says it. */
  readonly finding: string;
  readonly off: CrimpCause['off'];
  readonly crimps: number;
  readonly offset: Decimal | undefined;
  readonly interval?: Interval | undefined;
  readonly correction: Decimal;
  readonly since?: ChangeSince | undefined;
  /** Offset before the last change. */
  readonly before?: number | undefined;
  readonly next?: NextMeasurement | undefined;
  readonly dies: readonly DieReadingsCause[];
  /** By their keys. */
  readonly combinations: ReadonlyMap<string, CombinationReadingsCause>;
  readonly setAside: readonly AsideCrimp[];
  /** Explanations that are as good, the best first; none where it can be told. */
  readonly explanations: readonly string[];
  readonly mixed?: MixedCrimps | undefined;
  /** First crimps after each change of the machine, in order of time. */
  readonly changes: readonly JudgedCrimp[];
  /** Offset of the machine at a crimp that counts; missing where it cannot be told. */
  readonly offsetAt?: ((crimp: JudgedCrimp) => number) | undefined;
  /** Why there is no finding at all. */
  readonly refusal?: string | undefined;
}

/** What is asked of the crimps of one machine. */
export interface CauseQuestion {
  /** In the order they were made. */
  readonly crimps: CountedCrimps;
  readonly tolerance: Decimal;
  readonly confidence: number;
  readonly actionShare: Decimal;
  /** Somebody said that they are of one machine, though they look like two. */
  readonly isOneMachine: boolean;
}

/** Two clusters at the same time that no cause explains. */
function mixedCrimps({ crimps, tolerance, actionShare, isOneMachine }: CauseQuestion): MixedCrimps | undefined {
  if (isOneMachine) return undefined;
  const series = crimps.counted.map(crimp => ({
    group: [crimp.combination, dieOf(crimp), crimp.dial?.toString() ?? ''].map(partKey).join('\u0000'),
    value: deviationOf(crimp),
  }));
  const found = twoGroups(series, tolerance.times(actionShare).toNumber());
  return found && { apart: found.apart };
}

function causeOf({ crimps: { counted, hasDates, hasDies }, confidence, actionShare }: CauseQuestion): CrimpCause | string {
  try {
    return crimpCause({
      crimps: counted.map(crimp => ({
        combination: partKey(crimp.combination),
        deviation: deviationOf(crimp),
        tolerance: crimp.tolerance.toNumber(),
        die: hasDies ? partKey(dieOf(crimp)) : undefined,
        time: hasDates ? crimp.date : undefined,
      })),
      confidence,
      actionShare: actionShare.toNumber(),
    });
  } catch (error) {
    if (error instanceof TradeError) return error.message;
    throw error;
  }
}

const NOTHING = {
  off: [],
  crimps: 0,
  offset: undefined,
  correction: new Decimal(0),
  dies: [],
  combinations: new Map<string, CombinationReadingsCause>(),
  setAside: [],
  explanations: [],
  changes: [],
} as const;

const nameBy = (crimps: readonly JudgedCrimp[], nameOf: (crimp: JudgedCrimp) => string) => {
  const names = new Map<string, string>();
  for (const crimp of crimps) if (!names.has(partKey(nameOf(crimp)))) names.set(partKey(nameOf(crimp)), nameOf(crimp));
  return (key: string) => names.get(key) ?? key;
};

/** What is off now and since when: CRIMPCAUSE with the rows' dates and dies, in the sheet's own names. */
export function machineCause(question: CauseQuestion): MachineReadingsCause {
  const { counted } = question.crimps;
  const cause = causeOf(question);
  if (typeof cause === 'string') return { ...NOTHING, finding: 'NOT ENOUGH DATA', crimps: counted.length, refusal: cause };
  const mixed = cause.best && mixedCrimps(question);
  const combinationName = nameBy(counted, ({ combination }) => combination);
  const dieName = nameBy(counted, dieOf);
  const since = (change: CauseSince | undefined): ChangeSince | undefined =>
    change && { crimp: counted[change.place]!, isRising: change.isRising };
  const places = new Map(counted.map((crimp, place) => [crimp, place]));
  const { machine, next } = cause;
  const isOpen = mixed !== undefined;
  const changes = (cause.best?.causes ?? []).filter(each => isMachineChange(each) && !isDieChange(each));
  const boundaries = [...new Set(changes.flatMap(({ boundary }) => (boundary ? [boundary] : [])))].sort((a, b) => a - b);
  const shows = machine.isSure && !isOpen;
  return {
    finding: isOpen ? 'CANNOT TELL' : cause.finding,
    off: isOpen ? [] : cause.off,
    crimps: cause.crimps,
    offset: machine.offset === undefined ? undefined : new Decimal(machine.offset),
    interval: isOpen ? undefined : machine.interval,
    correction: new Decimal(isOpen ? 0 : machine.correction),
    since: shows ? since(machine.since) : undefined,
    before: shows ? machine.before : undefined,
    next: next && {
      ...next,
      combination: next.combination === undefined ? undefined : combinationName(next.combination),
      die: next.die === undefined ? undefined : dieName(next.die),
    },
    dies: cause.dies.map(({ name, offset, finding, since: change }) => ({
      name: dieName(name),
      crimps: counted.filter(crimp => partKey(dieOf(crimp)) === name),
      offset,
      finding: isOpen ? 'CANNOT TELL' : finding,
      since: isOpen ? undefined : since(change),
    })),
    combinations: new Map(
      cause.combinations.map(({ name, offset, interval, correction, finding }) => [
        name,
        {
          own: offset,
          interval,
          correction: new Decimal(isOpen ? 0 : correction),
          finding: isOpen ? 'CANNOT TELL' : finding,
        },
      ]),
    ),
    setAside: isOpen ? [] : cause.setAside.map(({ place, offset }) => ({ crimp: counted[place]!, offset })),
    explanations: next && !isOpen ? explanationTexts(cause, counted, { combinationName, dieName }) : [],
    mixed,
    changes: shows ? boundaries.map(boundary => counted[boundary]!) : [],
    offsetAt: shows && cause.machineAt ? crimp => cause.machineAt!(places.get(crimp) ?? 0) : undefined,
  };
}
