import { Decimal } from '../../core/units/decimal';
import { asShown, withUnit } from './dutyUnits';
import type { MeasureUnit } from '../../core/units/measureUnit';
import type { RouteLengths } from './routeLengths';

/** One length as a bar: full up to `from`, open from there to `to`. */
export interface LengthBar {
  /** `route 915.5 mm` */
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** Towards the worse: the route up, the shortest down, the longest up. */
const worse = ({ along, underPressure }: RouteLengths, unit: MeasureUnit) => {
  const as = (value: Decimal | undefined, rounding: typeof Decimal.ROUND_CEIL | typeof Decimal.ROUND_FLOOR) =>
    value && asShown(value, unit, rounding);
  const { shortest, longest } = underPressure;
  return {
    route: as(along, Decimal.ROUND_CEIL),
    shortest: as(shortest, Decimal.ROUND_FLOOR),
    longest: as(longest, Decimal.ROUND_CEIL),
  };
};

/**
 * Route, overall length with its slack, and shortest and longest under pressure, to be drawn beside each other.
 * @returns none where the length is not known
 */
export function lengthBars(lengths: RouteLengths, unit: MeasureUnit): readonly LengthBar[] {
  const { route, shortest, longest } = worse(lengths, unit);
  const { overall } = lengths;
  if (!route || !overall) return [];
  const bar = (text: string, from: Decimal, to: Decimal): LengthBar => ({ text, from: from.toNumber(), to: to.toNumber() });
  const words = (value: Decimal) => withUnit(value, unit);
  return [
    bar(`route ${words(route)}`, route, route),
    bar(
      `overall ${words(overall)}, ${words(Decimal.max(0, overall.minus(route)))} of it slack`,
      Decimal.min(route, overall),
      overall,
    ),
    ...(shortest
      ? [bar(`under pressure ${words(shortest)} to ${longest ? words(longest) : 'not known'}`, shortest, longest ?? shortest)]
      : []),
  ];
}
