import { Decimal } from '../units/decimal';
import { numberFromText } from '../units/numberText';
import { partKey } from './partName';
import type { Fitting } from './tables/fittingsTable';
import type { Hose } from './tables/hosesTable';

const SIZE = /^(dn|dash|-)?\s*-?\s*(\d+(?:\.\d+)?)$/;
const INCHES = /^(.+?) ?(?:["″”]|in(?:ch(?:es)?)?\.?)$/;

interface Size {
  /** How the size is counted; "" where it does not say. */
  readonly system: string;
  readonly number: string;
}

function sizeOf(text: string): Size {
  const key = partKey(text).replace(/\s+/g, ' ');
  const [, inchText] = INCHES.exec(key) ?? [];
  const inches = inchText && numberFromText(inchText);
  if (inches) return { system: 'inch', number: String(inches.value) };
  const [, system, number] = SIZE.exec(key) ?? [];
  if (number === undefined) return { system: '', number: key };
  return { system: system === 'dn' ? 'dn' : system ? 'dash' : '', number: String(Number(number)) };
}

/** Same bore within 2 % of the hose's. */
function boresMatch(hose: number, fitting: number): boolean {
  return new Decimal(hose).minus(fitting).abs().times(50).lte(hose);
}

/** Sizes are compared by Size where both have one in the same count (DN, dash, inches, or a bare number), else by bore within 2 %. */
export function sizesMatch(hose: Hose, fitting: Fitting): boolean {
  if (hose.size !== undefined && fitting.size !== undefined) {
    const [a, b] = [sizeOf(hose.size), sizeOf(fitting.size)];
    if (a.system === b.system) return a.number === b.number;
  }
  return boresMatch(hose.bore, fitting.bore);
}

export function familiesMatch(hose: Hose, fitting: Fitting): boolean {
  return partKey(hose.family) === partKey(fitting.family);
}

/** A ferrule is listed among the fittings, but is no end of a hose by itself. */
export function isFerrule(fitting: Pick<Fitting, 'endForm'>): boolean {
  return partKey(fitting.endForm) === 'ferrule';
}
