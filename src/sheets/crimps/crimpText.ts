import { SMALL_PLACES } from '../../core/units/decimalPlaces';
import type { CrimpRow } from './crimpRow';

/** The limits of a crimp's mean, with equal decimals: one more than readings have, so that what is converted shows no limit that is none. */
export function crimpLimitsText({ target, tolerance, unit }: Pick<CrimpRow, 'target' | 'tolerance' | 'unit'>): string {
  if (!target || !tolerance) return '';
  const [low, high] = [target.value.minus(tolerance.value), target.value.plus(tolerance.value)];
  const places = Math.min(SMALL_PLACES[unit] + 1, Math.max(low.decimalPlaces(), high.decimalPlaces()));
  return `${low.toFixed(places)} … ${high.toFixed(places)} ${unit}`;
}

/** Says that a tolerance was given from limit to limit. */
export const wholeWidth = (heading: string): string => `“${heading}” is the whole width, so half of it counts either way.`;
