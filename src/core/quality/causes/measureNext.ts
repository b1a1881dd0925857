import { reaches, rivalsOf } from './beliefs';
import { AGREE, RIVAL_WITHIN, TELLING } from './causeRule';
import type { CrimpSeries } from './crimpSeries';
import type { Explanation } from './presentState';

/** Crimps that would tell the best explanation from its rivals. */
export interface NextCrimps {
  readonly crimps: number;
  readonly combination: number;
  /** Undefined where dies are no causes. */
  readonly die?: number | undefined;
  /** True where the combination was never crimped with that die: with another one that fits, that is. */
  readonly otherDie: boolean;
}

interface Pair {
  readonly combination: number;
  readonly die: number;
  /** What an offset of machine or die counts in the combination's tolerance. */
  readonly share: number;
}

const FEWEST = 2;
const MOST = 12;
/** So many standard errors apart two predictions are told apart. */
const APART = 3.5;

/** What an explanation expects of the next crimp. */
function predicted({ machine, combinations, dies }: Explanation, { combination, die, share }: Pair): number {
  return share * (machine.offset + (dies.get(die)?.offset ?? 0)) + (combinations.get(combination)?.offset ?? 0);
}

/** The combinations and dies that are off, as one text. */
function offNow({ combinations, dies }: Explanation, actionShare: number): string {
  const numbers = (offsets: Explanation['dies']) =>
    [...offsets].flatMap(([number, { offset }]) => (reaches(offset, actionShare) ? [number] : [])).sort((a, b) => a - b);
  return `${numbers(combinations).join()}/${numbers(dies).join()}`;
}

/** Explanations nearly as good as the best that say something else of the machine, or of what is off. */
export function otherExplanations(all: readonly Explanation[], actionShare: number): Explanation[] {
  const best = all[0]!;
  const equals = new Set(rivalsOf(all));
  return all.filter(
    each =>
      (each.criterion <= best.criterion + RIVAL_WITHIN || equals.has(each)) &&
      (Math.abs(each.machine.offset - best.machine.offset) > AGREE || offNow(each, actionShare) !== offNow(best, actionShare)),
  );
}

/** The pair about which most of the rivals expect something else than the best explanation. */
function mostTelling(pairs: readonly Pair[], best: Explanation, rivals: readonly Explanation[]) {
  let found: (Pair & { gain: number; difference: number }) | undefined;
  for (const pair of pairs) {
    const telling = rivals
      .map(rival => ({ weight: rival.weight, difference: Math.abs(predicted(best, pair) - predicted(rival, pair)) }))
      .filter(({ difference }) => difference >= TELLING);
    const gain = telling.reduce((total, { weight }) => total + weight, 0);
    if (gain === 0 || (found && gain <= found.gain + 1e-9)) continue;
    found = { ...pair, gain, difference: Math.min(...telling.map(({ difference }) => difference)) };
  }
  return found;
}

/** Combinations with the dies they were crimped with, in order of time. */
function crimpedPairs({ combination, die, share }: CrimpSeries): Pair[] {
  const pairs = new Map<string, Pair>();
  combination.forEach((number, crimp) => {
    const key = `${number}/${die[crimp]}`;
    if (!pairs.has(key)) pairs.set(key, { combination: number, die: die[crimp]!, share: share[crimp]! });
  });
  return [...pairs.values()];
}

/**
 * Step 13: what to crimp next where explanations are as good.
 * Source, from memory: Box & Hill 1967 (measure where rivals differ most).
 * @param open combinations that are open: among others that tell as much they come first, since they have to be crimped anyway
 */
export function measureNext(
  all: readonly Explanation[],
  series: CrimpSeries,
  scatter: number,
  actionShare: number,
  open: readonly number[],
): NextCrimps {
  const best = all[0]!;
  const rivals = otherExplanations(all, actionShare);
  const made = crimpedPairs(series);
  const answer = ({ combination, die }: Pair, difference: number, otherDie: boolean): NextCrimps => {
    const enough = Math.ceil(scatter * (APART / difference) ** 2);
    const crimps = Math.min(MOST, Math.max(FEWEST, enough));
    return { crimps, combination, die: die < 0 ? undefined : die, otherDie };
  };
  const again = mostTelling(made, best, rivals);
  if (again) return answer(again, again.difference, false);
  const inOrder = [...new Set([...open, ...series.combinations.keys()])];
  const every = inOrder.flatMap(combination => {
    const share = series.share[series.ofCombination[combination]![0]!]!;
    return series.dies.map((_, die) => ({ combination, die, share }));
  });
  const other = mostTelling(every, best, rivals);
  if (other) return answer(other, other.difference, true);
  // The explanations differ in size only: more crimps of any will do.
  return answer(made.find(({ combination }) => open.includes(combination)) ?? made[0]!, TELLING, false);
}
