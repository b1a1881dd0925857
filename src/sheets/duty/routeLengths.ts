import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { lengthChange } from '../../core/length/lengthChange';
import { routeLength } from '../../core/length/routeLength';
import { Decimal } from '../../core/units/decimal';
import { asShown, converted, roundedText, UNITS_OF, withUnit, optionalDecimal } from './dutyUnits';
import type { EndOption } from './endOptions';
import { notAsked, notKnown, shownGap, type Margin } from './margin';
import type { Demand, RoutePart } from './readDuty';

/** Lengths of a hose along the route, in the form's unit. */
export interface RouteLengths {
  /** Along the hose's axis; undefined where it is not known, with the reason. */
  readonly along: Decimal | undefined;
  /** With slack, rounded up to what is ordered. */
  readonly overall: Decimal | undefined;
  readonly reason: string | undefined;
  readonly outsideDiameter: Decimal | undefined;
  /** Shortest and longest of the overall length under pressure; undefined where the catalogue does not say. */
  readonly underPressure: { readonly shortest: Decimal | undefined; readonly longest: Decimal | undefined };
  /** Length under pressure against the route. */
  readonly change: Margin;
}

/** Overall lengths are rounded up to these. */
const LENGTH_STEP = { metric: new Decimal(1), US: new Decimal(1).div(16) } as const;

/** What the catalogue says about the length under pressure; what it does not say is not known. */
function underPressureOf({ shortens, lengthens }: Hose, overall: Decimal): RouteLengths['underPressure'] {
  const { shortest, longest } = lengthChange(overall, new Decimal(shortens ?? 0), new Decimal(lengthens ?? 0));
  return { shortest: shortens === undefined ? undefined : shortest, longest: lengthens === undefined ? undefined : longest };
}

function changeMargin(hose: Hose, demand: Demand, along: Decimal, overall: Decimal): Margin {
  const name = 'Length under pressure';
  const unit = UNITS_OF[demand.units].length;
  const { shortens } = hose;
  const { shortest, longest } = underPressureOf(hose, overall);
  if (shortens === undefined || !shortest) {
    return { ...notKnown(name, 'the catalogue does not say how much it shortens'), state: 'unsure' };
  }
  const [route, least] = [asShown(along, unit, Decimal.ROUND_CEIL), asShown(shortest, unit, Decimal.ROUND_FLOOR)];
  const most = longest === undefined ? 'not known' : withUnit(asShown(longest, unit, Decimal.ROUND_CEIL), unit);
  const facts = `route ${withUnit(route, unit)}, overall ${withUnit(overall, unit)}, under pressure ${withUnit(least, unit)} to ${most}`;
  const gap = shownGap(route, least, shortest.minus(along), unit);
  if (shortest.gte(along)) return { demand: name, state: 'met', facts, verdict: `${gap} to spare` };
  const slack = new Decimal(1).div(new Decimal(1).minus(shortens)).minus(1).times(100);
  const verdict = `${gap} too short: give at least ${roundedText(slack.toDecimalPlaces(1, Decimal.ROUND_UP))} % slack`;
  return { demand: name, state: 'unsure', facts, verdict };
}

/** Route, slack and length under pressure of a hose; radii are to the inside of a bend, where makers measure the least bend radius. */
export function routeLengths(catalogue: Catalogue, hose: Hose, demand: Demand): RouteLengths {
  const { route, slack } = demand;
  const outsideDiameter = converted(optionalDecimal(hose.outsideDiameter), catalogue.units.length, UNITS_OF[demand.units].length);
  const bends = route.filter(part => part.kind === 'bend');
  const straights = route.flatMap(part => (part.kind === 'straight' ? [part.length] : []));
  const unknown = (reason: string): RouteLengths => ({
    ...{
      along: undefined,
      overall: undefined,
      reason,
      outsideDiameter,
      underPressure: { shortest: undefined, longest: undefined },
    },
    change: { ...notKnown('Length under pressure', reason), state: 'unsure' },
  });
  if (route.length === 0) return unknown('no route given');
  if (bends.length > 0 && outsideDiameter === undefined) {
    return unknown('outside diameter not known, so the bends cannot be measured along the hose');
  }
  const along = routeLength(straights, bends, outsideDiameter);
  const step = LENGTH_STEP[demand.units];
  const steps = along.times(slack.plus(1)).div(step).toDecimalPlaces(9).ceil();
  const overall = steps.times(step);
  return {
    ...{ along, overall, reason: undefined, outsideDiameter },
    underPressure: underPressureOf(hose, overall),
    change: changeMargin(hose, demand, along, overall),
  };
}

/** Straights before the first bend. */
function leadingStraight(route: readonly RoutePart[]): Decimal {
  const first = route.findIndex(part => part.kind === 'bend');
  const lengths = route.slice(0, first).map(part => (part.kind === 'straight' ? part.length : new Decimal(0)));
  return Decimal.sum(0, ...lengths);
}

/** Straight hose between a coupling and the nearest bend against the run asked for. Told, not ruling out: the route can be changed. */
export function straightRunMargin(
  catalogue: Catalogue,
  demand: Demand,
  { end, option, outsideDiameter }: { end: 'A' | 'B'; option: EndOption; outsideDiameter: Decimal | undefined },
): Margin {
  const name = `Straight run at ${end}`;
  const { straightRun } = demand;
  const unit = UNITS_OF[demand.units].length;
  const route = end === 'A' ? demand.route : [...demand.route].reverse();
  if (straightRun === undefined || !route.some(part => part.kind === 'bend'))
    return notAsked(name, straightRun && 'the route has no bend');
  const missing =
    outsideDiameter === undefined ? 'outside diameter' : option.insertionDepth === undefined ? 'insertion depth' : '';
  if (outsideDiameter === undefined || option.insertionDepth === undefined) {
    return { ...notKnown(name, `the ${missing} is not in the catalogue`), state: 'unsure' };
  }
  const coupling = converted(new Decimal(option.fitting.cutOff).plus(option.insertionDepth), catalogue.units.length, unit);
  const free = leadingStraight(route).minus(coupling);
  const wanted = straightRun.times(outsideDiameter);
  const facts = `needs ${withUnit(wanted, unit)} behind the coupling of ${withUnit(coupling, unit)}`;
  if (free.gte(wanted)) return { demand: name, state: 'met', facts, verdict: `${withUnit(free.minus(wanted), unit)} to spare` };
  return { demand: name, state: 'unsure', facts, verdict: `bend begins ${withUnit(wanted.minus(free), unit)} too early` };
}
