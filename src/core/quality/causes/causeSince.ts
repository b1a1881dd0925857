import type { Cause } from './cause';
import type { CauseSince } from './crimpCauseResult';
import type { CrimpSeries } from './crimpSeries';

/** The last boundary of some changes with time; undefined without any. */
export function lastBoundary(changes: readonly Cause[]): number | undefined {
  return changes.length === 0 ? undefined : Math.max(...changes.map(({ boundary }) => boundary!));
}

/** Step 12: since when, as the last of some changes has it. */
export function causeSince(changes: readonly Cause[], { places }: CrimpSeries): CauseSince | undefined {
  const last = lastBoundary(changes);
  if (last === undefined) return undefined;
  const isRising = changes.some(({ boundary, kind }) => boundary === last && kind.endsWith('rising'));
  return { place: places[last]!, isRising };
}
