import { normalCdf } from '../normalCdf';
import { AGREE, RIVAL_WITHIN } from './causeRule';
import type { Explanation, PresentOffset } from './presentState';

const NONE: PresentOffset = { offset: 0, variance: 0 };

/** Offset that counts: the limit or more, and not nothing. */
export const reaches = (offset: number, limit: number) => offset !== 0 && Math.abs(offset) >= limit;

/** Weight of the explanations for which something holds. */
export function weightOf(all: readonly Explanation[], holds: (explanation: Explanation) => boolean): number {
  return all.reduce((total, each) => total + (holds(each) ? each.weight : 0), 0);
}

/** Probability that a normal value lies between two. */
function between(low: number, high: number, { offset, variance }: PresentOffset): number {
  if (!(variance > 0)) return low <= offset && offset <= high ? 1 : 0;
  const deviation = Math.sqrt(variance);
  return normalCdf((high - offset) / deviation) - normalCdf((low - offset) / deviation);
}

/** Probability that an offset counts. */
function chanceToReach(limit: number, present: PresentOffset): number {
  if (!(present.variance > 0)) return reaches(present.offset, limit) ? 1 : 0;
  return 1 - between(-limit, limit, present);
}

/** Probability, over all explanations, that an offset counts. */
export function beliefToReach(all: readonly Explanation[], limit: number, of: (each: Explanation) => PresentOffset | undefined) {
  return all.reduce((total, each) => total + each.weight * chanceToReach(limit, of(each) ?? NONE), 0);
}

/** Probability, over all explanations, that an offset agrees with one that is claimed. */
export function beliefToAgree(all: readonly Explanation[], claimed: number, of: (each: Explanation) => PresentOffset): number {
  const [low, high] = [claimed - AGREE, claimed + AGREE];
  return all.reduce((total, each) => total + each.weight * between(low, high, of(each)), 0);
}

/** Explanations of no more causes than the best that fit nearly as well: no kind of cause is preferred among them. */
export function rivalsOf(all: readonly Explanation[]): Explanation[] {
  const best = all[0]!;
  return all.filter(({ causes, fit }) => causes.length <= best.causes.length && fit <= best.fit + RIVAL_WITHIN);
}
