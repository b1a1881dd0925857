import type { TimeLine } from './cause';
import type { CrimpSeries } from './crimpSeries';
import type { TimeStretches } from './timeStretches';

/** Crimps in each stretch (by the squares of their shares), and first and second moments of their times around its middle. */
export interface StretchMoments {
  readonly count: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
}

/**
 * Moments of all crimps, or of those of one die. They stand for the crimps wherever two lines in time are multiplied, so that this takes as many steps
 * as there are stretches, not crimps.
 */
export function stretchMoments(series: CrimpSeries, time: TimeStretches, die?: number): StretchMoments {
  const stretches = time.middle.length;
  const [count, first, second] = [new Float64Array(stretches), new Float64Array(stretches), new Float64Array(stretches)];
  time.stretch.forEach((stretch, crimp) => {
    if (die !== undefined && series.die[crimp] !== die) return;
    const apart = time.elapsed[crimp]! - time.middle[stretch]!;
    const weight = series.share[crimp]! ** 2;
    count[stretch]! += weight;
    first[stretch]! += weight * apart;
    second[stretch]! += weight * apart ** 2;
  });
  return { count, first, second };
}

/** Sum over the crimps of the product of two lines' columns. */
export function lineProduct(a: TimeLine, b: TimeLine, { count, first, second }: StretchMoments, middle: Float64Array): number {
  let total = 0;
  for (let stretch = Math.max(a.from, b.from); stretch < Math.min(a.to, b.to); stretch++) {
    const ofA = a.rise === 0 ? 1 : (middle[stretch]! - a.start) * a.rise;
    const ofB = b.rise === 0 ? 1 : (middle[stretch]! - b.start) * b.rise;
    total += ofA * ofB * count[stretch]! + (ofA * b.rise + ofB * a.rise) * first[stretch]! + a.rise * b.rise * second[stretch]!;
  }
  return total;
}
