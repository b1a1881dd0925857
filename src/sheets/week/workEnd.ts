import { Decimal } from '../../core/units/decimal';

/** One end of a line as it is crimped. Numbers of one line's ends are in one unit. */
export interface WorkEnd {
  readonly end: 'A' | 'B';
  /** "" where it is not known. */
  readonly die: string;
  readonly dial: Decimal | undefined;
  readonly target: Decimal | undefined;
  readonly tolerance: Decimal | undefined;
}

/** A line of the week as the order of work sees it. */
export interface WorkLine {
  readonly row: number;
  readonly line: string;
  readonly label: string;
  readonly hose: string;
  readonly quantity: number;
  /** `2026-10-09`, or as its cell has it; "" where the sheet does not say. */
  readonly due?: string;
  /** Crimper; lines of another one are ordered apart. "" = none named. */
  readonly machine: string;
  /** Ends to be crimped: none for plain hose. */
  readonly ends: readonly WorkEnd[];
}

/** Dials at which both ends of a line come out near enough to their targets. */
export interface CommonDials {
  /** Lowest and highest, whole digits where the ends' dials are whole. */
  readonly low: Decimal;
  readonly high: Decimal;
  /** Where the worse of the two ends is nearest to its target. */
  readonly best: Decimal;
  /** Deviation of the crimp diameter at a dial, for each end: positive = larger than its target. */
  readonly deviations: (dial: Decimal) => readonly [Decimal, Decimal];
}

export const dieKey = (die: string) => die.trim().toLowerCase();

/** True where both ends go through one die. */
const isOneDie = (a: WorkEnd, b: WorkEnd): boolean => a.die !== '' && dieKey(a.die) === dieKey(b.die);

/** Change of diameter per digit that the two ends themselves say; undefined where they say none. */
function slopeOf(a: WorkEnd, b: WorkEnd, step: Decimal | undefined): Decimal | undefined {
  if (step && !step.isZero()) return step.negated();
  const digits = b.dial!.minus(a.dial!);
  if (digits.isZero()) return undefined;
  const slope = b.target!.minus(a.target!).div(digits);
  return slope.isZero() ? undefined : slope;
}

/**
 * Dials at which both ends of one line may be crimped: each end's diameter deviates from its target by no more than a share of its
 * tolerance. One hose in one die: at end B's own dial end A comes out at B's target, and in between in proportion.
 * @param share of the tolerance that one dial may cost, 0 … 1
 * @param step change of diameter per digit of the machine, positive where a higher number crimps tighter; undefined: as the two ends say
 * @returns undefined where there is none, or something is not known
 */
export function commonDials(a: WorkEnd, b: WorkEnd, share: Decimal, step?: Decimal): CommonDials | undefined {
  if (!isOneDie(a, b) || !a.dial || !b.dial) return undefined;
  if (a.dial.eq(b.dial)) return { low: a.dial, high: a.dial, best: a.dial, deviations: () => [new Decimal(0), new Decimal(0)] };
  if (!a.target || !b.target || !a.tolerance || !b.tolerance) return undefined;
  const slope = slopeOf(a, b, step);
  const allowed = [a.tolerance.times(share), b.tolerance.times(share)] as const;
  // Both targets are one, and only their dials differ: the ends say nothing of what a digit does.
  if (!slope) return undefined;
  const deviations = (dial: Decimal) => [a, b].map(end => dial.minus(end.dial!).times(slope)) as [Decimal, Decimal];
  const reach = [a, b].map((end, index) => {
    const digits = allowed[index]!.div(slope.abs());
    return [end.dial!.minus(digits), end.dial!.plus(digits)] as const;
  });
  const isWhole = a.dial.isInteger() && b.dial.isInteger();
  const [low, high] = [Decimal.max(reach[0]![0], reach[1]![0]), Decimal.min(reach[0]![1], reach[1]![1])];
  const [first, last] = isWhole ? [low.ceil(), high.floor()] : [low, high];
  if (first.gt(last)) return undefined;
  // Where both use the same share of their tolerances.
  const middle = a.dial.times(b.tolerance).plus(b.dial.times(a.tolerance)).div(a.tolerance.plus(b.tolerance));
  const best = Decimal.min(last, Decimal.max(first, isWhole ? middle.round() : middle));
  return { low: first, high: last, best, deviations };
}
