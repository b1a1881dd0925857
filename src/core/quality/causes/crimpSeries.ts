/** One crimp as the rule needs it. */
export interface CrimpOfMachine {
  /** What names the combination: equal texts are one. */
  readonly combination: string;
  /** Mean of its readings − target. */
  readonly deviation: number;
  /** Allowed deviation either way, in the same unit. */
  readonly tolerance: number;
  readonly die?: string | undefined;
  /** Any number that grows with time. */
  readonly time?: number | undefined;
}

/**
 * The crimps of one machine in the order they were made; crimps, combinations and dies are counted from 0.
 * Deviations are in tolerances, each in its own; machine and dies are off by a diameter, which counts in tolerances the less the wider they are.
 */
export interface CrimpSeries {
  /** Place in the list that came, for each crimp in order of time. */
  readonly places: readonly number[];
  readonly crimps: readonly CrimpOfMachine[];
  /** In order of first appearance in the list. */
  readonly combinations: readonly string[];
  /** Two or more, or none. */
  readonly dies: readonly string[];
  /** True where every crimp was made with one and the same die. */
  readonly oneDie: boolean;
  readonly deviation: Float64Array;
  /** The smallest tolerance of all as a share of the crimp's own: what an offset of one smallest tolerance adds to its deviation. */
  readonly share: Float64Array;
  readonly combination: Int32Array;
  /** −1 where dies are no causes. */
  readonly die: Int32Array;
  /** Undefined where any crimp lacks its time. */
  readonly time: Float64Array | undefined;
  /** Crimps of each combination, in order of time. */
  readonly ofCombination: readonly (readonly number[])[];
}

const distinct = (names: readonly string[]) => [...new Set(names)];

/** Step 1: crimps in order of time, ties in order of the list; where any lacks its time, in order of the list. */
export function crimpSeries(list: readonly CrimpOfMachine[]): CrimpSeries {
  const isDated = list.every(({ time }) => time !== undefined);
  const places = list.map((_, place) => place);
  if (isDated) places.sort((a, b) => list[a]!.time! - list[b]!.time! || a - b);
  const crimps = places.map(place => list[place]!);

  const combinations = distinct(list.map(crimp => crimp.combination));
  const numberOf = new Map(combinations.map((name, number) => [name, number]));
  const named = distinct(list.map(({ die }) => die ?? ''));
  const allHaveDies = !named.includes('');
  const dies = allHaveDies && named.length > 1 ? named : [];
  const smallest = crimps.reduce((least, { tolerance }) => Math.min(least, tolerance), Infinity);
  const dieNumber = new Map(dies.map((name, number) => [name, number]));
  const combination = Int32Array.from(crimps, crimp => numberOf.get(crimp.combination)!);
  const ofCombination: number[][] = combinations.map(() => []);
  combination.forEach((number, crimp) => ofCombination[number]!.push(crimp));
  return {
    places,
    crimps,
    combinations,
    dies,
    oneDie: allHaveDies && named.length === 1,
    deviation: Float64Array.from(crimps, ({ deviation, tolerance }) => deviation / tolerance),
    share: Float64Array.from(crimps, ({ tolerance }) => smallest / tolerance),
    combination,
    die: Int32Array.from(crimps, ({ die }) => dieNumber.get(die ?? '') ?? -1),
    time: isDated ? Float64Array.from(crimps, ({ time }) => time!) : undefined,
    ofCombination,
  };
}
