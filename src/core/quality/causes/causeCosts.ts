import { isDieChange, isMachineChange, type Cause } from './cause';

/** Step 5: what a cause costs besides the number of causes of its kind that were looked at. */
const COST = {
  machine: 1.4,
  combination: 1.4,
  die: 2.8,
  'machine change': 2.8,
  'machine rising from the first date': 4.2,
  'die change': 4,
  'die rising from the first date': 4,
  crimp: 4,
} as const;
type Family = keyof typeof COST;

function familyOf(cause: Cause): Family {
  const isFromStart = cause.boundary === 0;
  if (isMachineChange(cause)) return isFromStart ? 'machine rising from the first date' : 'machine change';
  if (isDieChange(cause)) return isFromStart ? 'die rising from the first date' : 'die change';
  return cause.kind as Family;
}

/**
 * What each cause must be worth to be believed: the more candidates of a family, the more.
 * @param crimps any of which might have been a stray one
 */
export function causeCosts(causes: readonly Cause[], crimps: number): Float64Array {
  const counts = new Map<Family, number>();
  for (const cause of causes) counts.set(familyOf(cause), (counts.get(familyOf(cause)) ?? 0) + 1);
  counts.set('crimp', crimps);
  return Float64Array.from(causes, cause => 2 * Math.log(counts.get(familyOf(cause))!) + COST[familyOf(cause)]);
}
