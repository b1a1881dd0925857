import { MOST_BOUNDARIES } from './causeRule';

/** Time cut into stretches at the boundaries that are searched; times count from the first crimp. */
export interface TimeStretches {
  /** First crimp after each boundary, ascending: stretch s begins at boundary s − 1. */
  readonly boundaries: readonly number[];
  /** True where there are more boundaries between dates than these. */
  readonly thinned: boolean;
  /** Time of each crimp since the first one. */
  readonly elapsed: Float64Array;
  /** Stretch of each crimp. */
  readonly stretch: Int32Array;
  /** Time in the middle of each stretch. */
  readonly middle: Float64Array;
}

/** First crimps after a change of date. */
function allBoundaries(time: Float64Array): number[] {
  const found: number[] = [];
  for (let crimp = 1; crimp < time.length; crimp++) if (time[crimp]! > time[crimp - 1]!) found.push(crimp);
  return found;
}

/** Boundaries at about equal numbers of crimps. */
function thinnedOut(all: readonly number[], crimps: number): number[] {
  const picked = new Set<number>();
  for (let part = 1; part <= MOST_BOUNDARIES; part++) {
    const wanted = (part * crimps) / (MOST_BOUNDARIES + 1);
    picked.add(all.reduce((near, each) => (Math.abs(each - wanted) < Math.abs(near - wanted) ? each : near)));
  }
  return [...picked];
}

/** Every second of them, and all that lie near one that was chosen in a first search. */
function closerLook(all: readonly number[], thinned: readonly number[], chosen: readonly number[], crimps: number): number[] {
  const reach = crimps / (MOST_BOUNDARIES + 1);
  const near = all.filter(each => chosen.some(boundary => Math.abs(each - boundary) <= reach));
  const rough = thinned.filter((_, index) => index % 2 === 1);
  return [...new Set([...rough, ...near.slice(0, 2 * MOST_BOUNDARIES)])].sort((a, b) => a - b);
}

/**
 * The boundaries between dates at which causes may begin or end.
 * @param time of the crimps, ascending
 * @param chosen boundaries that a first search over thinned-out ones has chosen
 */
export function timeStretches(time: Float64Array, chosen?: readonly number[]): TimeStretches {
  const all = allBoundaries(time);
  const thinned = all.length > MOST_BOUNDARIES;
  const rough = thinned ? thinnedOut(all, time.length) : all;
  const boundaries = thinned && chosen ? closerLook(all, rough, chosen, time.length) : rough;

  const elapsed = time.map(each => each - time[0]!);
  const stretch = new Int32Array(time.length);
  for (let crimp = 0, number = 0; crimp < time.length; crimp++) {
    if (boundaries[number] === crimp) number++;
    stretch[crimp] = number;
  }
  const ends = [...boundaries, time.length];
  const middle = Float64Array.from(ends, (end, number) => {
    return (elapsed[number === 0 ? 0 : ends[number - 1]!]! + elapsed[end - 1]!) / 2;
  });
  return { boundaries, thinned, elapsed, stretch, middle };
}

/** All crimps in one stretch: without times there are no boundaries. */
export function timeless(crimps: number): TimeStretches {
  return {
    boundaries: [],
    thinned: false,
    elapsed: new Float64Array(crimps),
    stretch: new Int32Array(crimps),
    middle: new Float64Array(1),
  };
}
