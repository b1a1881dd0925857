import { CALIPER_PLACES } from '../../core/units/decimalPlaces';
import { Decimal } from '../../core/units/decimal';
import { lengthUnitOf, type Length } from '../../core/units/lengthUnit';
import { convertMeasure, measureUnit } from '../../core/units/measureUnit';
import { usualStep } from './benchStep';

const places = (count: number) => (count === 0 ? '0' : `0.${'0'.repeat(count)}`);
const MOST_PLACES = 5;
/** Divisions of an inch on a rule. */
const RULE = [2, 4, 8, 16, 32, 64];

/**
 * Number format of lengths that are cut in steps of the bench: `0` for a step of 1 mm, `0.0` for 0.5 mm, `# ??/16` for 1/16 in.
 * @param unit symbol of the column's unit
 * @param step of the bench; what a bench usually cuts to where left out
 */
export function cutLengthFormat(unit: string | undefined, step?: Length): string | undefined {
  const own = measureUnit('length', unit ?? '');
  if (!own) return undefined;
  const usual = lengthUnitOf(own);
  const said = step ?? { value: usualStep(usual), unit: measureUnit('length', usual)! };
  const inOwn = convertMeasure(said.value, said.unit, own);
  const divisions = new Decimal(1).div(inOwn);
  if (own.symbol === 'in' && RULE.some(each => divisions.eq(each))) {
    return `# ${divisions.lt(10) ? '?' : '??'}/${divisions.toNumber()}`;
  }
  return places(Math.min(MOST_PLACES, inOwn.decimalPlaces()));
}

/** Number format of diameters as a caliper shows them. */
export function caliperFormat(unit: string | undefined): string | undefined {
  return unit === 'mm' || unit === 'in' ? places(CALIPER_PLACES[unit]) : undefined;
}

/** Number format of a depth that is marked with a rule on the hose. */
export function depthFormat(unit: string | undefined): string | undefined {
  return unit === 'mm' ? '0.0' : unit === 'in' ? '0.000' : undefined;
}

/** Money and masses: two decimals. */
export const TWO_PLACES = '0.00';
