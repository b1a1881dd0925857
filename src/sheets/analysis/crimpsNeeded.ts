import { crimpCause, type CrimpCauseInput } from '../../core/quality/crimpCause';
import type { CrimpGroup } from '../../core/quality/crimpGroups';
import { Decimal } from '../../core/units/decimal';

/** How many more crimps of a combination. */
export interface CrimpsNeeded {
  readonly name: string;
  readonly more: number;
}

/** Beyond this many more of one combination, measuring alone is no answer. */
const MOST = 12;

/** More crimps like those there are: same mean, and scatter around it. */
function extend({ name, deviations }: CrimpGroup, more: number, scatter: number): CrimpGroup {
  const mean = Decimal.sum(...deviations).div(deviations.length);
  const pairs = Math.floor(more / 2);
  const reach = pairs === 0 ? 0 : scatter * Math.sqrt(more / (2 * pairs));
  const added = Array.from({ length: more }, (_, index) =>
    index < 2 * pairs ? mean.plus(index % 2 === 0 ? reach : -reach) : mean,
  );
  return { name, deviations: [...deviations, ...added] };
}

/**
 * How many more crimps would tell, should they come out like those measured so far: the combinations with the fewest are filled up first.
 * @param input what crimpCause found to be NOT ENOUGH DATA
 * @param scatter pooled scatter of the crimps so far
 * @returns undefined where a dozen more of each would not tell either
 */
export function crimpsNeeded(input: CrimpCauseInput, scatter: number): readonly CrimpsNeeded[] | undefined {
  const counts = input.groups.map(({ deviations }) => deviations.length);
  const fewest = Math.min(...counts);
  for (let level = fewest + 1; level <= fewest + MOST; level++) {
    const more = counts.map(count => Math.max(0, level - count));
    const groups = input.groups.map((group, index) => extend(group, more[index]!, scatter));
    if (crimpCause({ ...input, groups }).finding === 'NOT ENOUGH DATA') continue;
    return input.groups.flatMap(({ name }, index) => (more[index]! > 0 ? [{ name, more: more[index]! }] : []));
  }
  return undefined;
}
