import { RANGE_CONSTANTS } from '../tables/rangeConstants';
import { median } from './median';
import { rangeOf } from './controlLimits';

/** The readings of one crimp, in one unit with its tolerance. */
export interface ToleratedReadings {
  readonly readings: readonly number[];
  /** Allowed deviation either way. */
  readonly tolerance: number;
}

/** A reading that does not belong to its crimp: both counted from 0. */
export interface StrayReading {
  readonly crimp: number;
  readonly reading: number;
  /** Median of the other readings. */
  readonly others: number;
}

/** Fewer readings do not say which of them strays. */
const LEAST_READINGS = 3;
const SCATTERS = 6;
const RANGES = 2;
/** Scatter of a reading that is believed in at least, and distance that matters, as shares of the tolerance. */
const LEAST_SCATTER = 1 / 20;
const MATTERS = 1 / 2;

/** Scatter of a reading as the range of its crimp shows it; more than ten are taken as ten. */
function scatterOf(readings: readonly number[]): number {
  const size = Math.min(readings.length, RANGE_CONSTANTS.at(-1)!.n);
  return rangeOf(readings) / RANGE_CONSTANTS.find(({ n }) => n === size)!.d2;
}

/** The reading farthest from the median of the others of its crimp. */
function farthest(readings: readonly number[]) {
  const distances = readings.map((reading, index) => {
    const others = readings.filter((_, other) => other !== index);
    return { index, distance: Math.abs(reading - median(others)), others };
  });
  return distances.reduce((far, each) => (each.distance > far.distance ? each : far));
}

/**
 * Single readings that do not belong to their crimp: slips of the caliper or the pen. Their crimps are left out of the causes; nothing is repaired.
 * Crimps of fewer than three readings are passed over.
 * Source, from memory: Hampel 1974 (distance from a median in robust scatters); scatter from ranges, ISO 7870-2.
 * @example among good crimps, { readings: [22.1, 22.12, 22.11, 21.21], tolerance: 0.12 } gives { crimp, reading: 3, others: 22.11 }
 */
export function strayReadings(crimps: readonly ToleratedReadings[]): StrayReading[] {
  const measured = crimps.flatMap((crimp, number) => (crimp.readings.length >= LEAST_READINGS ? [{ ...crimp, number }] : []));
  if (measured.length === 0) return [];
  const usual = median(measured.map(({ readings }) => scatterOf(readings)));
  return measured.flatMap(({ readings, tolerance, number }) => {
    const { index, distance, others } = farthest(readings);
    const scatter = Math.max(usual, tolerance * LEAST_SCATTER);
    const isStray = distance > SCATTERS * scatter && distance > RANGES * rangeOf(others) && distance > MATTERS * tolerance;
    return isStray ? [{ crimp: number, reading: index, others: median(others) }] : [];
  });
}
