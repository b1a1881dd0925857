import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CrimpRow } from './crimpRow';

const PLACES = { mm: 3, in: 4 } as const;

/** A diameter with as many decimals as its unit is read to. */
export function diameterText(value: Decimal, unit: LengthUnit): string {
  return value.toDecimalPlaces(PLACES[unit]).toString();
}

/** The limits of a crimp's mean, with equal decimals: one more than readings have, so that what is converted shows no limit that is none. */
export function crimpLimitsText({ target, tolerance, unit }: Pick<CrimpRow, 'target' | 'tolerance' | 'unit'>): string {
  if (!target || !tolerance) return '';
  const [low, high] = [target.value.minus(tolerance.value), target.value.plus(tolerance.value)];
  const places = Math.min(PLACES[unit] + 1, Math.max(low.decimalPlaces(), high.decimalPlaces()));
  return `${low.toFixed(places)} … ${high.toFixed(places)} ${unit}`;
}
