import { isMachineChange, isOfDie, isOfMachine, presentShare, type Cause } from './cause';
import type { CauseModels } from './causeModel';
import type { RatedSet } from './modelPool';

/** What an explanation says of a machine, combination or die now, in tolerances, and the variance of that. */
export interface PresentOffset {
  readonly offset: number;
  readonly variance: number;
}

/** One explanation: its causes, how much it is to be believed, and the state now. */
export interface Explanation {
  readonly causes: readonly Cause[];
  readonly criterion: number;
  /** Criterion without the costs of the causes. */
  readonly fit: number;
  /** Share among all explanations kept. */
  readonly weight: number;
  readonly machine: PresentOffset;
  /** By number; those that no cause touches are missing: their offset is 0. */
  readonly combinations: ReadonlyMap<number, PresentOffset>;
  readonly dies: ReadonlyMap<number, PresentOffset>;
}

/** Sum of coefficients in which some causes are left now. */
function offsets(causes: readonly Cause[], coefficients: Float64Array, variance: (weights: readonly number[]) => number) {
  const of = (isMeant: (cause: Cause) => boolean): PresentOffset => {
    const weights = causes.map(cause => (isMeant(cause) ? presentShare(cause) : 0));
    const offset = weights.reduce((total, weight, index) => total + weight * coefficients[index]!, 0);
    return { offset, variance: variance(weights) };
  };
  const each = (isKind: (cause: Cause) => boolean) => {
    const numbers = new Set(causes.filter(isKind).map(cause => cause.of));
    return new Map([...numbers].map(number => [number, of(cause => isKind(cause) && cause.of === number)] as const));
  };
  return { machine: of(isOfMachine), combinations: each(({ kind }) => kind === 'combination'), dies: each(isOfDie) };
}

/**
 * Step 7: the models kept as explanations, best first.
 * @returns one explanation at least
 */
export function explanations(kept: readonly RatedSet[], causes: readonly Cause[], models: CauseModels): Explanation[] {
  const best = kept[0]!.criterion;
  const likelihoods = kept.map(({ criterion }) => Math.exp(-(criterion - best) / 2));
  const total = likelihoods.reduce((all, each) => all + each, 0);
  return kept.map((rated, index) => {
    const solved = models.solve(rated.causes);
    const members = rated.causes.map(cause => causes[cause]!);
    const variance = (weights: readonly number[]) => models.variance(solved, weights);
    return {
      causes: members,
      criterion: rated.criterion,
      fit: rated.criterion - solved.cost,
      weight: likelihoods[index]! / total,
      ...offsets(members, models.coefficients(solved), variance),
    };
  });
}

/** How often the machine changed, as an explanation has it. */
export const machineChangeCount = ({ causes }: Explanation) => causes.filter(isMachineChange).length;
