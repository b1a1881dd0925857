import { partKey } from '../../core/catalogue/partName';
import { gatherBy, type MachineReadings } from './analyseReadings';
import { deviationOf } from './judgedCrimp';
import type { DieReadingsCause } from './machineCause';

/** What a combination is off beyond the machine, in the crimps made with one die since that die changed. */
export interface DieShare {
  readonly combination: string;
  readonly offset: number;
}

/** A single crimp tells nothing of a combination. */
const ENOUGH = 2;
/** Shares of the tolerance: what counts as off, and what does not. */
const [OFF, RIGHT] = [0.5, 0.25];

function sharesOf({ cause, counts, combinations }: MachineReadings, { crimps, since }: DieReadingsCause): readonly DieShare[] {
  const places = new Map(counts.counted.map((crimp, place) => [crimp, place]));
  const first = since ? places.get(since.crimp)! : 0;
  const after = crimps.filter(
    crimp => places.get(crimp)! >= first && !cause.setAside.some(({ crimp: aside }) => aside === crimp),
  );
  const nameOf = (combination: string) => combinations.find(({ name }) => partKey(name) === partKey(combination))!.name;
  return gatherBy(after, ({ combination }) => nameOf(combination))
    .filter(({ items }) => items.length >= ENOUGH)
    .map(({ name, items }) => ({
      combination: name,
      offset: items.reduce((sum, crimp) => sum + deviationOf(crimp) - (cause.offsetAt?.(crimp) ?? 0), 0) / items.length,
    }));
}

/**
 * Whether all that was made with a die is off as it is. CRIMPCAUSE knows no combination that is off from a day on, as one is whose dial was changed: it is told
 * as its die's change.
 * @returns the combinations that are off and those that are not; undefined where they agree
 */
export function disagreement(
  machine: MachineReadings,
  die: DieReadingsCause,
): { off: readonly DieShare[]; right: readonly DieShare[] } | undefined {
  const shares = sharesOf(machine, die);
  const tolerance = machine.tolerance.toNumber();
  const off = shares.filter(({ offset }) => Math.abs(offset) >= OFF * tolerance);
  const right = shares.filter(({ offset }) => Math.abs(offset) <= RIGHT * tolerance);
  return off.length > 0 && right.length > 0 ? { off, right } : undefined;
}

/** The one combination that was made with a die; undefined where there are more. */
export function onlyCombination({ crimps }: DieReadingsCause): string | undefined {
  const keys = new Set(crimps.map(({ combination }) => partKey(combination)));
  return keys.size === 1 ? crimps[0]!.combination : undefined;
}
