import { SI_OF } from '../../core/hydraulics/flowUnits';
import { gradeViscosity } from '../../core/hydraulics/gradeViscosity';
import { pressureDrop } from '../../core/hydraulics/pressureDrop';
import { velocity } from '../../core/hydraulics/velocity';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { convertMeasure, measureUnit } from '../../core/units/measureUnit';
import { roundedText, UNITS_OF, withUnit } from './dutyUnits';
import { notAsked, type Margin } from './margin';
import type { Demand } from './readDuty';
import { LAMINAR_UP_TO, TURBULENT_FROM } from '../../core/hydraulics/frictionFactor';

/** Pressure lost along the route, for one temperature or viscosity, in words and in the form's unit. */
export interface DropLine {
  /** `at 60 °C, 20.6 mm²/s` */
  readonly at: string;
  /** undefined = not known */
  readonly drop: number | undefined;
  /** `0.42 bar, laminar`, or why it is not known. */
  readonly text: string;
}

const MM2 = 1e-6;

const metresOf = (length: Decimal, demand: Demand) =>
  convertMeasure(length, UNITS_OF[demand.units].length, measureUnit('length', 'm')!).toNumber();

/** Mean velocity in a bore, in the form's unit; undefined where no flow given. */
export function velocityIn(demand: Demand, bore: Decimal): number | undefined {
  if (demand.flow === undefined) return undefined;
  const si = SI_OF[demand.units];
  return velocity(demand.flow.toNumber() * si.flow, metresOf(bore, demand)) / si.velocity;
}

/** What the velocity would be in a bore that is too small for the limit: `velocity would be 5.53 m/s, your limit is 5.5 m/s`. */
export function velocityText(demand: Demand, bore: Decimal): string | undefined {
  const speed = velocityIn(demand, bore);
  const { fastest } = demand;
  if (speed === undefined || fastest === undefined) return undefined;
  const unit = UNITS_OF[demand.units].velocity;
  const exact = new Decimal(speed);
  // As many decimals as it takes to tell the two apart.
  const places = [2, 3, 4, 5].find(each => !exact.toDecimalPlaces(each).eq(fastest.toDecimalPlaces(each))) ?? 6;
  return `velocity would be ${exact.toDecimalPlaces(places)} ${unit}, your limit is ${fastest.toDecimalPlaces(places)} ${unit}`;
}

/** Velocity against the user's own limit. */
export function velocityMargin(demand: Demand, bore: Decimal): Margin {
  const speed = velocityIn(demand, bore);
  if (speed === undefined) return { demand: 'Velocity', state: 'unsure', facts: 'no flow given', verdict: 'not known' };
  const unit = UNITS_OF[demand.units].velocity;
  const has = `${roundedText(new Decimal(speed), 2)} ${unit}`;
  if (demand.fastest === undefined) return notAsked('Velocity', `${has}; no limit given`);
  // The bore that just keeps the limit gives it back with the noise of a square root.
  const spare = demand.fastest.minus(speed).toDecimalPlaces(6);
  const facts = `at most ${roundedText(demand.fastest, 2)} ${unit}, is ${has}`;
  if (spare.lt(0))
    return { demand: 'Velocity', state: 'missed', facts, verdict: `${roundedText(spare.abs(), 2)} ${unit} too fast` };
  return { demand: 'Velocity', state: 'met', facts, verdict: `${roundedText(spare, 2)} ${unit} to spare` };
}

interface OilState {
  readonly at: string;
  /** mm²/s, or why it is not known. */
  readonly viscosity: number | string;
}

function graded(grade: number, degrees: Decimal, demand: Demand): OilState {
  const unit = UNITS_OF[demand.units].temperature;
  const celsius = convertMeasure(degrees, unit, measureUnit('temperature', '°C')!).toNumber();
  const at = `at ${withUnit(degrees, unit)}`;
  try {
    const viscosity = gradeViscosity(grade, celsius);
    return { at: `${at}, ${roundedText(new Decimal(viscosity))} mm²/s`, viscosity };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { at, viscosity: error.message };
  }
}

function oilStates(demand: Demand): readonly OilState[] {
  const { oil } = demand;
  if (oil === undefined) return [];
  if ('viscosity' in oil) return [{ at: `at ${roundedText(oil.viscosity)} mm²/s`, viscosity: oil.viscosity.toNumber() }];
  const known = [demand.fluidHottest, demand.fluidColdest].filter(degrees => degrees !== undefined);
  if (known.length === 0) return [{ at: '', viscosity: 'no fluid temperature given' }];
  return known.map(degrees => graded(oil.grade, degrees, demand));
}

function regime(reynolds: number): string {
  if (reynolds <= LAMINAR_UP_TO) return 'laminar';
  return reynolds >= TURBULENT_FROM ? 'turbulent' : 'between laminar and turbulent, the larger loss counts';
}

/** Pressure lost to friction in the straight hose, at the fluid's hottest and coldest; couplings and bends come on top. */
export function dropLines(demand: Demand, bore: Decimal, overall: Decimal | undefined): readonly DropLine[] {
  const { flow, density } = demand;
  const missing = !flow ? 'no flow given' : !demand.oil ? 'no viscosity given' : !density ? 'no density given' : '';
  if (!flow || !density || missing) return [{ at: '', drop: undefined, text: `not known: ${missing}` }];
  if (!overall) return [{ at: '', drop: undefined, text: 'not known: the length is not known' }];
  const si = SI_OF[demand.units];
  const [cubicMetres, metres, run] = [flow.toNumber() * si.flow, metresOf(bore, demand), metresOf(overall, demand)];
  return oilStates(demand).map(({ at, viscosity }) => {
    if (typeof viscosity === 'string') return { at, drop: undefined, text: `not known: ${viscosity}` };
    const input = {
      flow: cubicMetres,
      bore: metres,
      length: run,
      viscosity: viscosity * MM2,
      density: density.toNumber(),
      roughness: 0,
    };
    const drop = pressureDrop(input) / si.pressure;
    const reynolds = (velocity(cubicMetres, metres) * metres) / input.viscosity;
    return {
      at,
      drop,
      text: `${roundedText(new Decimal(drop), 2)} ${UNITS_OF[demand.units].pressure.symbol}, ${regime(reynolds)}`,
    };
  });
}
