import type { Catalogue } from '../../core/catalogue/catalogue';
import { takesFluid } from '../../core/catalogue/fluidRows';
import type { HoseDuty } from '../../core/catalogue/hoseDuty';
import { hasDerating, pressureAt } from '../../core/catalogue/pressureAt';
import { problemSentence } from '../../core/catalogue/problem';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { temperatureLimits } from '../../core/catalogue/temperatureLimits';
import { Decimal } from '../../core/units/decimal';
import { converted, roundedText, UNITS_OF, withUnit, optionalDecimal } from './dutyUnits';
import { velocityText } from './flowInHose';
import { notAsked, notKnown, numberMargin, RATED, type Margin } from './margin';
import type { Demand } from './readDuty';

/** The pressure that counts: surges included. */
export function peakPressure({ pressure, surge }: Demand): Decimal {
  return surge === undefined ? pressure : Decimal.max(pressure, surge);
}

/** Tightest bend of the route, to its inside; undefined where it has none. */
export function tightestBend({ route }: Demand): Decimal | undefined {
  const radii = route.flatMap(part => (part.kind === 'bend' ? [part.radius] : []));
  return radii.length > 0 ? Decimal.min(...radii) : undefined;
}

/** The demand as the catalogue's search takes it, in the catalogue's units. */
export function hoseDutyOf(catalogue: Catalogue, demand: Demand): HoseDuty {
  const from = UNITS_OF[demand.units];
  const to = catalogue.units;
  const temperature = to.temperature ?? from.temperature;
  return {
    bore: converted(demand.bore, from.length, to.length),
    pressure: converted(peakPressure(demand), from.pressure, to.pressure),
    bendRadius: converted(tightestBend(demand), from.length, to.length),
    coldest: converted(demand.coldest, from.temperature, temperature),
    hottest: converted(demand.hottest, from.temperature, temperature),
    fluid: demand.fluid,
    vacuum: demand.vacuum === 'yes' ? 'yes' : converted(demand.vacuum, from.pressure, to.pressure),
  };
}

/** Bore against the one that is needed; where the flow needs it, what the velocity would be in a bore that is too small. */
function boreMargin(demand: Demand, bore: Decimal): Margin {
  const { isBoreByFlow, units } = demand;
  const note = isBoreByFlow ? ' (for flow and fastest velocity)' : '';
  const margin = numberMargin('Bore', demand.bore, bore, UNITS_OF[units].length, { percent: true, note });
  const speed = margin.state === 'missed' && isBoreByFlow ? velocityText(demand, bore) : undefined;
  return speed === undefined ? margin : { ...margin, verdict: `${margin.verdict}; ${speed}` };
}

function pressureMargins(catalogue: Catalogue, hose: Hose, demand: Demand): Margin[] {
  const unit = UNITS_OF[demand.units].pressure;
  const temperature = UNITS_OF[demand.units].temperature;
  const at = withUnit(demand.hottest, temperature);
  const rating = pressureAt(catalogue, hose, hoseDutyOf(catalogue, demand).hottest);
  const full = converted(new Decimal(hose.workingPressure), catalogue.units.pressure, unit);
  const name = `Pressure of the hose at ${at}`;
  if (rating === undefined) {
    return [
      notKnown(
        name,
        `needs ${withUnit(peakPressure(demand), unit)}; rated ${withUnit(full, unit)} when cool, Derating has no row for ${at} or hotter`,
      ),
    ];
  }
  const derated = converted(rating, catalogue.units.pressure, unit);
  const share = roundedText(derated.times(100).div(full), 0);
  const note = derated.eq(full) ? '' : ` (${share} % of ${withUnit(full, unit)})`;
  const margin = numberMargin(name, peakPressure(demand), derated, unit, { percent: true, note, words: RATED });
  if (hasDerating(catalogue, hose)) return [margin];
  const unsure: Margin = {
    demand: `Loss of pressure at ${at}`,
    state: 'unsure',
    facts: 'no derating stated for this hose: full working pressure used',
    verdict: 'not known',
  };
  return [margin, unsure];
}

function fluidMargin(catalogue: Catalogue, hose: Hose, fluid: string | undefined): Margin {
  if (fluid === undefined) return notAsked('Fluid', 'no fluid chosen: compatibility not checked');
  if (hose.fluids === undefined) return notKnown('Fluid', `needs ${fluid}, the catalogue names none`);
  if (takesFluid(catalogue, hose, fluid)) return { demand: 'Fluid', state: 'met', facts: `needs ${fluid}`, verdict: 'listed' };
  return { demand: 'Fluid', state: 'missed', facts: `needs ${fluid}, listed ${hose.fluids}`, verdict: 'not listed' };
}

function vacuumMargin(catalogue: Catalogue, hose: Hose, demand: Demand): Margin {
  const name = 'Vacuum';
  const { vacuum } = demand;
  const unit = UNITS_OF[demand.units].pressure;
  if (vacuum === undefined) return notAsked(name);
  const asked = vacuum === 'yes' ? 'needed, amount unknown' : `needs ${withUnit(vacuum, unit)}`;
  if (hose.vacuum === undefined) return notKnown(name, `${asked}, the catalogue does not say`);
  if (hose.vacuum === 'no' || hose.vacuum === 0)
    return { demand: name, state: 'missed', facts: asked, verdict: 'not for vacuum' };
  if (vacuum === 'yes') {
    const has =
      hose.vacuum === 'yes'
        ? 'it is'
        : `has ${withUnit(converted(new Decimal(hose.vacuum), catalogue.units.pressure, unit), unit)}`;
    return { demand: name, state: 'met', facts: `${asked}; ${has}`, verdict: 'for vacuum, amount unknown' };
  }
  if (hose.vacuum === 'yes') return notKnown(name, `${asked}, the catalogue says only that it is for vacuum`);
  return numberMargin(name, vacuum, converted(new Decimal(hose.vacuum), catalogue.units.pressure, unit), unit);
}

function bendMargin(catalogue: Catalogue, hose: Hose, demand: Demand): Margin {
  const tightest = tightestBend(demand);
  if (tightest === undefined)
    return notAsked('Bend radius', demand.route.length > 0 ? 'the route has no bend' : 'no route given');
  const unit = UNITS_OF[demand.units].length;
  const least = converted(optionalDecimal(hose.bendRadius), catalogue.units.length, unit);
  return numberMargin('Bend radius', tightest, least, unit, {
    atMost: true,
    words: ['route bends to', 'hose at least', 'too tight'],
  });
}

/** One end of the range that a hose may be used in: the narrower of its own and the fluid's, which is named where it is that one. */
function temperatureMargin(catalogue: Catalogue, hose: Hose, demand: Demand, end: 'hottest' | 'coldest'): Margin {
  const { temperature } = UNITS_OF[demand.units];
  const limit = temperatureLimits(catalogue, hose, demand.fluid)[end];
  // A fluid's range says nothing of a hose whose own is not stated.
  const has =
    hose[end] === undefined ? undefined : converted(optionalDecimal(limit?.value), catalogue.units.temperature, temperature);
  const withFluid = limit?.byFluid ? `with ${demand.fluid} ` : '';
  const [name, to, lack] = end === 'hottest' ? ['Hottest', 'up to', 'too hot'] : ['Coldest', 'down to', 'too cold'];
  const words = ['needs', `${withFluid}${to}`, lack!] as const;
  // Degrees have no natural zero: a miss is measured by the range that is asked for.
  const scale = Decimal.max(demand.hottest.minus(demand.coldest), 1);
  return numberMargin(name!, demand[end], has, temperature, { atMost: end === 'coldest', scale, words });
}

/** A row of Fluids that was left out: nobody knows then how hot or cold that fluid may be. */
function unknownLimits(catalogue: Catalogue, hose: Hose, { fluid }: Demand): Margin[] {
  const { problem } = temperatureLimits(catalogue, hose, fluid);
  return problem ? [notKnown(`Temperature limits of ${fluid}`, problemSentence(problem))] : [];
}

/** A hose against every demand, in the order of the form; those that rule it out are the ones by which the catalogue is searched. */
export function hoseMargins(catalogue: Catalogue, hose: Hose, demand: Demand): readonly Margin[] {
  const bore = converted(new Decimal(hose.bore), catalogue.units.length, UNITS_OF[demand.units].length);
  return [
    fluidMargin(catalogue, hose, demand.fluid),
    boreMargin(demand, bore),
    ...pressureMargins(catalogue, hose, demand),
    temperatureMargin(catalogue, hose, demand, 'hottest'),
    temperatureMargin(catalogue, hose, demand, 'coldest'),
    ...unknownLimits(catalogue, hose, demand),
    vacuumMargin(catalogue, hose, demand),
    bendMargin(catalogue, hose, demand),
  ];
}
