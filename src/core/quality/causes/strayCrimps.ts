import type { Cause } from './cause';
import { MOST_STRAYS, STRAY_DISTANCE } from './causeRule';
import type { CrimpSeries } from './crimpSeries';
import { median } from '../median';

/** Neighbours in time on either side within the combination. */
const NEIGHBOURS = 2;

/**
 * Single crimps far from their neighbours in time, farthest first.
 * @param scatter variance from crimp to crimp
 */
export function strayCrimps({ ofCombination, deviation }: CrimpSeries, scatter: number): Cause[] {
  const far = ofCombination.flatMap(crimps =>
    crimps.flatMap((crimp, place) => {
      const from = Math.max(0, place - NEIGHBOURS);
      const near = crimps.slice(from, place + NEIGHBOURS + 1).filter(other => other !== crimp);
      if (near.length === 0) return [];
      const distance = Math.abs(deviation[crimp]! - median(near.map(other => deviation[other]!))) / Math.sqrt(scatter);
      return distance > STRAY_DISTANCE ? [{ crimp, distance }] : [];
    }),
  );
  far.sort((a, b) => b.distance - a.distance);
  return far.slice(0, MOST_STRAYS).map(({ crimp }) => ({ kind: 'crimp', of: crimp }));
}
