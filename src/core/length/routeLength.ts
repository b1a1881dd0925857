import { Decimal } from '../units/decimal';

/** One bend of a route. */
export interface Bend {
  /** Radius to the hose's axis, or to the inside of the bend where the route names an outside diameter. */
  readonly radius: Decimal;
  readonly angleDegrees: Decimal;
}

/** π to the digits that the decimals carry. Source: NIST Digital Library of Mathematical Functions 3.12.1. */
const PI = new Decimal('3.141592653589793238462643383279502884197');

/**
 * Length of hose along a route: its straights and the arcs of its bends, along the hose axis.
 * @param straights lengths of the straight parts, one unit for all lengths
 * @param bends the bends
 * @param outsideDiameter of the hose, where the radii are measured to the inside of the bend: half of it is added to them
 * @returns length in the unit of the input
 * Source: geometry; checked against the test free length of SAE J343:2016.
 * @example routeLength([], [{ radius: new Decimal(180), angleDegrees: new Decimal(180) }]) // 565.487
 */
export function routeLength(straights: readonly Decimal[], bends: readonly Bend[], outsideDiameter?: Decimal): Decimal {
  const toAxis = outsideDiameter?.div(2) ?? new Decimal(0);
  const arcs = bends.map(({ radius, angleDegrees }) => radius.plus(toAxis).times(angleDegrees).times(PI).div(180));
  return Decimal.sum(0, ...straights, ...arcs);
}
