import { Decimal } from '../units/decimal';
import { cellNumber } from './cellNumber';
import type { ReadRow } from './readRows';
import { addProblem, numberIn, quotedValue } from './rowFacts';
import { catalogueTables } from './tables/catalogueTables';

/** Tolerance within 1/2000 … 1/10 of the diameter; decimals only where doubles could err. */
export function isPlausible(diameter: number, tolerance: number): boolean {
  const share = tolerance / diameter;
  if (share > 1 / 1999 && share < 1 / 10.01) return true;
  return new Decimal(tolerance).times(2000).gte(diameter) && new Decimal(tolerance).times(10).lte(diameter);
}

/** Without both limits the row needs diameter and tolerance; a single limit beside them must not say otherwise. */
function checkOneLimit(row: ReadRow): void {
  const schema = catalogueTables.crimps;
  const [diameter, tolerance] = [numberIn(row, 'crimpDiameter'), numberIn(row, 'tolerance')];
  for (const key of ['crimpDiameter', 'tolerance']) {
    if (numberIn(row, key) === undefined && !row.unread?.[key]) {
      addProblem(schema, row, key, 'blank', 'a number (or smallest and largest diameter)');
    }
  }
  if (diameter === undefined || tolerance === undefined) return;
  for (const [key, sign] of [
    ['smallestDiameter', -1],
    ['largestDiameter', 1],
  ] as const) {
    const limit = numberIn(row, key);
    if (limit === undefined) continue;
    const expected = cellNumber(new Decimal(tolerance).times(sign).plus(diameter));
    if (limit !== expected) {
      addProblem(schema, row, key, quotedValue(limit), `${expected}, as diameter and tolerance give it (or both limits)`);
    }
  }
}

/**
 * Diameter and tolerance from the two limits, where they stand so: their middle and half their distance. A diameter that stands beside them
 * without a tolerance may lie anywhere between them, as one-sided limits have it; the limits count.
 */
export function fillDiameter(row: ReadRow): void {
  const smallest = numberIn(row, 'smallestDiameter');
  const largest = numberIn(row, 'largestDiameter');
  const schema = catalogueTables.crimps;
  if (smallest === undefined || largest === undefined) return checkOneLimit(row);
  if (smallest > largest)
    return addProblem(schema, row, 'smallestDiameter', quotedValue(smallest), `no more than the largest, ${largest}`);
  const middle = cellNumber(new Decimal(smallest).plus(largest).div(2));
  const half = cellNumber(new Decimal(largest).minus(smallest).div(2));
  for (const [key, value] of [
    ['crimpDiameter', middle],
    ['tolerance', half],
  ] as const) {
    const stated = numberIn(row, key);
    const oneSided = key === 'crimpDiameter' && numberIn(row, 'tolerance') === undefined && !row.unread?.tolerance;
    const agrees = stated === undefined || stated === value || (oneSided && stated >= smallest && stated <= largest);
    if (!agrees) addProblem(schema, row, key, quotedValue(stated), `${value}, as the two limits give it`);
    row.values[key] = value;
  }
}
