import { beliefToAgree, beliefToReach, reaches, rivalsOf, weightOf } from './beliefs';
import { AGREE, MOST_MACHINE_CHANGES } from './causeRule';
import { machineChangeCount, type Explanation, type PresentOffset } from './presentState';

/** What can be said of a combination or a die. */
export type OwnDecision = 'off' | 'not off' | 'open';

/** What is known of a combination: its crimps, and its own deviation in its tolerances: the nearer end of the interval, 0 where it reaches 0. */
export interface CombinationFacts {
  readonly crimps: number;
  readonly atLeast: number;
}

/** What can be said at all: where the machine is open, everything is. */
export interface CauseDecision {
  readonly machineSure: boolean;
  readonly machineOff: boolean;
  readonly combinations: readonly OwnDecision[];
  readonly dies: readonly OwnDecision[];
}

/** Limits of the decision. */
export interface DecisionLimits {
  /** Between 0.5 and 1. */
  readonly confidence: number;
  /** What counts, in tolerances: a combination's own, the smallest for machine and dies. */
  readonly actionShare: number;
}

const LEAST_AGREEMENT = 0.85;
const MOST_DOUBT_OF_MACHINE = 0.25;
const MOST_DOUBT_OF_COMBINATION = 0.05;
const MOST_DOUBT_OF_DIE = 0.03;
/** A setting is not changed on one crimp. */
const LEAST_CRIMPS = 2;

/** Step 8: whether the explanations agree about the machine. */
function isMachineSure(all: readonly Explanation[], { confidence, actionShare }: DecisionLimits): boolean {
  const best = all[0]!;
  const claimed = best.machine.offset;
  const agrees = ({ machine }: Explanation) => Math.abs(machine.offset - claimed) <= AGREE;
  const ofMachine = ({ machine }: Explanation) => machine;
  return (
    weightOf(all, agrees) >= confidence &&
    beliefToAgree(all, claimed, ofMachine) >= LEAST_AGREEMENT &&
    (reaches(claimed, actionShare) || beliefToReach(all, actionShare, ofMachine) <= MOST_DOUBT_OF_MACHINE) &&
    machineChangeCount(best) < MOST_MACHINE_CHANGES &&
    rivalsOf(all).every(agrees)
  );
}

/** Step 9: whether one combination or die is off by itself. */
function ownDecision(
  all: readonly Explanation[],
  { confidence, actionShare }: DecisionLimits,
  of: (each: Explanation) => PresentOffset | undefined,
  mayBeOff: boolean,
  mostDoubt: number,
): OwnDecision {
  const offset = (each: Explanation) => of(each)?.offset ?? 0;
  const isOff = mayBeOff && weightOf(all, each => reaches(offset(each), actionShare)) >= confidence;
  const disagrees = (rival: Explanation) =>
    reaches(offset(rival), actionShare) !== isOff && Math.abs(offset(rival) - offset(all[0]!)) > AGREE;
  if (rivalsOf(all).some(disagrees)) return 'open';
  if (isOff) return 'off';
  return beliefToReach(all, actionShare, of) > mostDoubt ? 'open' : 'not off';
}

/**
 * Steps 8 and 9: what is off now.
 * @param all explanations, best first
 * @param facts of each combination
 * @param dies how many
 */
export function causeDecision(
  all: readonly Explanation[],
  limits: DecisionLimits,
  facts: readonly CombinationFacts[],
  dies: number,
): CauseDecision {
  const dieNumbers = Array.from({ length: dies }, (_, die) => die);
  if (!isMachineSure(all, limits)) {
    return {
      machineSure: false,
      machineOff: false,
      combinations: facts.map(() => 'open'),
      dies: dieNumbers.map(() => 'open'),
    };
  }
  return {
    machineSure: true,
    machineOff: reaches(all[0]!.machine.offset, limits.actionShare),
    combinations: facts.map(({ crimps, atLeast }, number) => {
      const of = (each: Explanation) => each.combinations.get(number);
      // Where very many are off, an explanation does not hold them all: none of the others passes as right.
      if (!of(all[0]!) && reaches(atLeast, limits.actionShare)) return 'open';
      return ownDecision(all, limits, of, crimps >= LEAST_CRIMPS, MOST_DOUBT_OF_COMBINATION);
    }),
    dies: dieNumbers.map(number => ownDecision(all, limits, each => each.dies.get(number), true, MOST_DOUBT_OF_DIE)),
  };
}
