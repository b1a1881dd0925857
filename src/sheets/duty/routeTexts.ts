import type { Decimal } from '../../core/units/decimal';
import { roundedText, UNITS_OF, withUnit } from './dutyUnits';
import type { Demand } from './readDuty';

/** One part of a route in words. */
export interface RouteText {
  readonly text: string;
  /** A bend tighter than the hose's least bend radius. */
  readonly isTight: boolean;
}

/** The route in words, a sentence a part; a bend that is too tight for the hose says so. */
export function routeTexts(demand: Demand, leastRadius: Decimal | undefined): readonly RouteText[] {
  const unit = UNITS_OF[demand.units].length;
  return demand.route.map(part => {
    if (part.kind === 'straight') return { text: `straight ${withUnit(part.length, unit)}`, isTight: false };
    const isTight = leastRadius !== undefined && part.radius.lt(leastRadius);
    const words = `bend to the ${part.turn}, ${roundedText(part.angleDegrees)}°, radius ${withUnit(part.radius, unit)}`;
    if (leastRadius === undefined) return { text: `${words}; least bend radius of the hose not known`, isTight };
    return { text: isTight ? `${words}: too tight, the hose needs ${withUnit(leastRadius, unit)}` : words, isTight };
  });
}
