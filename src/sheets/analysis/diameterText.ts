import { CALIPER_PLACES } from '../../core/units/decimalPlaces';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';

type Amount = Decimal | number;

const toFixed = (value: Amount, places: number) => {
  const text = value.toFixed(places);
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
};

/** A size without its sign: `0.10 mm`. */
export function sizeText(value: Amount, unit: LengthUnit): string {
  const size = typeof value === 'number' ? Math.abs(value) : value.abs();
  return `${toFixed(size, CALIPER_PLACES[unit])} ${unit}`;
}

/** A deviation with its sign and without unit: `+0.10`, `−0.05`, `0.00`; one digit more than a caliper shows where `fine`. */
export function deviationText(value: Amount, unit: LengthUnit, fine = false): string {
  const text = toFixed(value, CALIPER_PLACES[unit] + (fine ? 1 : 0));
  if (text.startsWith('-')) return `−${text.slice(1)}`;
  return /[1-9]/.test(text) ? `+${text}` : text;
}

/** A deviation in words: `0.10 mm large`, `0.10 mm small`. */
export function offText(value: Amount, unit: LengthUnit): string {
  const isSmall = typeof value === 'number' ? value < 0 : value.isNegative();
  return `${sizeText(value, unit)} ${isSmall ? 'small' : 'large'}`;
}

/** An index of capability: `1.33`, `−0.23`. */
export const indexText = (value: number) => toFixed(value, 2).replace('-', '−');

/** Names in a sentence: `A`, `A and B`, `A, B and C`. */
export function listText(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** As many names as a sentence takes, the others counted. */
export function someOf(names: readonly string[], most: number): string {
  const more = names.length - most;
  return more > 1 ? `${names.slice(0, most).join(', ')} and ${more} more` : listText(names);
}
