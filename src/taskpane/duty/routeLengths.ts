import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { lengthChange } from '../../core/length/lengthChange';
import { routeLength } from '../../core/length/routeLength';
import { Decimal } from '../../core/units/decimal';
import { converted, shown, UNITS_OF, withUnit } from './dutyUnits';
import type { EndOption } from './endOptions';
import { notAsked, notKnown, type Margin } from './margin';
import type { Demand, RoutePart } from './readDuty';

/** Lengths of a hose along the route, in the form's unit. */
export interface RouteLengths {
  /** Along the hose's axis; undefined where it is not known, with the reason. */
  readonly along: Decimal | undefined;
  /** With slack, rounded up to what is ordered. */
  readonly overall: Decimal | undefined;
  readonly reason: string | undefined;
  readonly outsideDiameter: Decimal | undefined;
  /** Length under pressure against the route. */
  readonly change: Margin;
}

/** Overall lengths are rounded up to these. */
const LENGTH_STEP = { metric: new Decimal(1), US: new Decimal(1).div(16) } as const;

const optional = (value: number | undefined) => (value === undefined ? undefined : new Decimal(value));

function changeMargin(hose: Hose, demand: Demand, along: Decimal, overall: Decimal): Margin {
  const name = 'Length under pressure';
  const unit = UNITS_OF[demand.units].length;
  const { shortens, lengthens } = hose;
  if (shortens === undefined) {
    return { ...notKnown(name, 'the catalogue does not say how much it shortens'), state: 'unsure' };
  }
  const { shortest, longest } = lengthChange(overall, new Decimal(shortens), new Decimal(lengthens ?? 0));
  const span = `${withUnit(shortest, unit)} to ${lengthens === undefined ? 'not known' : withUnit(longest, unit)}`;
  const facts = `route ${withUnit(along, unit)}, overall ${withUnit(overall, unit)}, under pressure ${span}`;
  if (shortest.gte(along))
    return { demand: name, state: 'met', facts, verdict: `${withUnit(shortest.minus(along), unit)} to spare` };
  const slack = new Decimal(1).div(new Decimal(1).minus(shortens)).minus(1).times(100);
  const verdict = `${withUnit(along.minus(shortest), unit)} too short: give at least ${shown(slack.toDecimalPlaces(1, Decimal.ROUND_UP))} % slack`;
  return { demand: name, state: 'unsure', facts, verdict };
}

/** Route, slack and length under pressure of a hose; radii are to the inside of a bend, where makers measure the least bend radius. */
export function routeLengths(catalogue: Catalogue, hose: Hose, demand: Demand): RouteLengths {
  const { route, slack } = demand;
  const outsideDiameter = converted(optional(hose.outsideDiameter), catalogue.units.length, UNITS_OF[demand.units].length);
  const bends = route.filter(part => part.kind === 'bend');
  const straights = route.flatMap(part => (part.kind === 'straight' ? [part.length] : []));
  const unknown = (reason: string): RouteLengths => ({
    ...{ along: undefined, overall: undefined, reason, outsideDiameter },
    change: { ...notKnown('Length under pressure', reason), state: 'unsure' },
  });
  if (route.length === 0) return unknown('no route was given');
  if (bends.length > 0 && outsideDiameter === undefined) {
    return unknown('the outside diameter is not known, so the bends cannot be measured along the hose');
  }
  const along = routeLength(straights, bends, outsideDiameter);
  const step = LENGTH_STEP[demand.units];
  const steps = along.times(slack.plus(1)).div(step).toDecimalPlaces(9).ceil();
  const overall = steps.times(step);
  return { along, overall, reason: undefined, outsideDiameter, change: changeMargin(hose, demand, along, overall) };
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
  const facts = `asked ${withUnit(wanted, unit)} behind the coupling of ${withUnit(coupling, unit)}`;
  if (free.gte(wanted)) return { demand: name, state: 'met', facts, verdict: `${withUnit(free.minus(wanted), unit)} to spare` };
  return { demand: name, state: 'unsure', facts, verdict: `bend begins ${withUnit(wanted.minus(free), unit)} too early` };
}
