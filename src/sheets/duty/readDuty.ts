import { boreSize } from '../../core/hydraulics/boreSize';
import { SI_OF, type FlowUnits } from '../../core/hydraulics/flowUnits';
import { Decimal } from '../../core/units/decimal';
import type { MeasureUnit } from '../../core/units/measureUnit';
import { asSentence } from '../../core/asSentence';
import { typedNumber } from '../../cells/typedNumber';
import { UNITS_OF } from './dutyUnits';
import { TYPED, type DutyField, type DutyText, type RoutePartText } from './dutyFields';

/** One part of a route; radii are to the inside of the bend. */
export type RoutePart =
  | { readonly kind: 'straight'; readonly length: Decimal }
  | { readonly kind: 'bend'; readonly radius: Decimal; readonly angleDegrees: Decimal; readonly turn: 'left' | 'right' };

export interface EndDemand {
  /** undefined = any. */
  readonly form: string | undefined;
  /** Degrees; undefined = any. */
  readonly angle: Decimal | undefined;
}

/** What is asked of an assembly, in the form's units. */
export interface Demand {
  readonly units: FlowUnits;
  readonly fluid: string | undefined;
  readonly flow: Decimal | undefined;
  /** The user's own limit of velocity. */
  readonly fastest: Decimal | undefined;
  /** Least bore: as typed, or what the flow needs, whichever is larger. */
  readonly bore: Decimal;
  readonly isBoreByFlow: boolean;
  readonly pressure: Decimal;
  readonly surge: Decimal | undefined;
  readonly fluidColdest: Decimal | undefined;
  readonly fluidHottest: Decimal | undefined;
  /** Of fluid and air. */
  readonly coldest: Decimal;
  readonly hottest: Decimal;
  readonly vacuum: Decimal | 'yes' | undefined;
  readonly route: readonly RoutePart[];
  /** Straight run at the couplings, in outside diameters; undefined = not asked. */
  readonly straightRun: Decimal | undefined;
  /** Fraction. */
  readonly slack: Decimal;
  readonly ends: readonly [EndDemand, EndDemand];
  /** From end A to end B, in degrees counter-clockwise; undefined = not given. */
  readonly twist: Decimal | undefined;
  readonly quantity: Decimal;
  /** mm²/s where typed, else the ISO viscosity grade; undefined = not known. */
  readonly oil: { readonly grade: number } | { readonly viscosity: Decimal } | undefined;
  /** kg/m³ */
  readonly density: Decimal | undefined;
}

/** The demand, or for each field that cannot be used what is wrong with it; fields of the route as `route 2 radius`. */
export interface ReadDuty {
  readonly demand: Demand | undefined;
  readonly mistakes: Readonly<Record<string, string>>;
}

type Sign = 'any' | 'positive' | 'notNegative';

class Reader {
  readonly mistakes: Record<string, string> = {};

  constructor(private readonly units: FlowUnits) {}

  /** A blank is undefined, or a mistake where it has advice. */
  read(key: string, text: string, label: string, sign: Sign, advice?: string, isLength = false): Decimal | undefined {
    const marks = isLength ? 'inches' : 'noLength';
    const millimetres = isLength && this.units === 'metric';
    const { value, mistake } = typedNumber(text, label, {
      sign,
      marks,
      millimetres,
      unit: this.unitOf(key, isLength),
      blank: advice,
    });
    if (mistake) this.mistakes[key] = mistake;
    return value;
  }

  /** Unit of a field, where a number may bring its own. */
  private unitOf(key: string, isLength: boolean): MeasureUnit | undefined {
    const { length, pressure, temperature } = UNITS_OF[this.units];
    if (isLength) return length;
    if (key === 'pressure' || key === 'surge' || key === 'vacuum') return pressure;
    return /^(?:fluid|air)(?:Coldest|Hottest)$/.test(key) ? temperature : undefined;
  }

  part(part: RoutePartText, index: number): RoutePart | undefined {
    const at = (field: string) => `route ${index + 1} ${field}`;
    const of = (what: string) => `${what} of part ${index + 1}`;
    if (part.kind === 'straight') {
      const length = this.read(at('length'), part.length, of('length'), 'positive', 'enter it, or take this part away', true);
      return length && { kind: 'straight', length };
    }
    const radius = this.read(at('radius'), part.radius, of('radius'), 'positive', 'enter it, or take this bend away', true);
    const angleDegrees = this.read(
      at('angle'),
      part.angle,
      of('angle'),
      'positive',
      'enter it in degrees, or take this bend away',
    );
    if (angleDegrees?.gt(360)) this.mistakes[at('angle')] = asSentence(`${of('angle')} is ${angleDegrees}: at most 360 degrees`);
    return radius && angleDegrees && { kind: 'bend', radius, angleDegrees, turn: part.turn };
  }
}

const extreme = (pick: 'min' | 'max', values: readonly (Decimal | undefined)[]) => {
  const known = values.filter(value => value !== undefined);
  return known.length > 0 ? Decimal[pick](...known) : undefined;
};

function boreByFlow(units: FlowUnits, flow: Decimal | undefined, fastest: Decimal | undefined): Decimal | undefined {
  if (!flow || !fastest) return undefined;
  const si = SI_OF[units];
  return new Decimal(boreSize(flow.toNumber() * si.flow, fastest.toNumber() * si.velocity) / si.bore).toSignificantDigits(12);
}

/** A route of one blank straight is no route given yet. */
const isBlankRoute = (route: DutyText['route']) =>
  route.every(part => (part.kind === 'straight' ? part.length : part.radius + part.angle).trim() === '');

function oilOf(fields: DutyText, typed: Decimal | undefined): Demand['oil'] {
  if (fields.grade === TYPED) return typed && { viscosity: typed };
  return fields.grade === '' ? undefined : { grade: Number(fields.grade) };
}

/** Reads the form. */
export function readDuty(fields: DutyText): ReadDuty {
  const reader = new Reader(fields.units);
  const { mistakes } = reader;
  const read = (field: DutyField, label: string, sign: Sign, advice?: string, isLength = false) =>
    reader.read(field, fields[field], label, sign, advice, isLength);
  const isTyped = fields.grade === TYPED;
  const typed = isTyped ? read('viscosity', 'viscosity', 'positive', 'enter it in mm²/s, or choose a grade') : undefined;
  const density = read('density', 'density', 'positive');
  const flow = read('flow', 'flow', 'positive');
  const fastest = read('fastest', 'fastest velocity', 'positive');
  const typedBore = read('bore', 'bore', 'positive', undefined, true);
  const needed = boreByFlow(fields.units, flow, fastest);
  const bore = extreme('max', [typedBore, needed]);
  if (!bore && !mistakes.bore && !mistakes.flow && !mistakes.fastest) {
    mistakes.bore = 'Bore is blank: enter the smallest that will do, or flow and fastest velocity';
  }
  const pressure = read('pressure', 'working pressure', 'positive', 'enter the highest in steady work');
  const surge = read('surge', 'highest surge', 'positive');
  const fluidColdest = read('fluidColdest', 'coldest of the fluid', 'any');
  const fluidHottest = read('fluidHottest', 'hottest of the fluid', 'any');
  const airColdest = read('airColdest', 'coldest of the air', 'any');
  const airHottest = read('airHottest', 'hottest of the air', 'any');
  const coldest = extreme('min', [fluidColdest, airColdest]);
  const hottest = extreme('max', [fluidHottest, airHottest]);
  if (!coldest && !mistakes.fluidColdest) mistakes.fluidColdest = 'Coldest is blank: enter it for fluid or air';
  if (!hottest && !mistakes.fluidHottest) mistakes.fluidHottest = 'Hottest is blank: enter it for fluid or air';
  if (coldest && hottest?.lt(coldest)) mistakes.fluidHottest = 'Hottest is below coldest: swap them';
  const isVacuum = fields.vacuum.trim().toLowerCase() === 'yes';
  const vacuum = isVacuum ? ('yes' as const) : read('vacuum', 'vacuum', 'positive');
  const route = isBlankRoute(fields.route) ? [] : fields.route.map((part, index) => reader.part(part, index));
  const straightRun = read('straightRun', 'straight run', 'notNegative');
  const slack = read('slack', 'slack', 'notNegative')?.div(100) ?? new Decimal(0);
  if (slack.gt(1)) mistakes.slack = `Slack is ${slack.times(100)} %: at most 100`;
  const angles = [read('angleA', 'angle A', 'notNegative'), read('angleB', 'angle B', 'notNegative')] as const;
  const twist = read('twist', 'twist angle', 'any');
  if (twist?.abs().gt(360)) mistakes.twist = `Twist angle is ${twist}: at most 360 degrees`;
  const quantity = read('quantity', 'quantity', 'positive', 'enter how many');
  if (quantity && !quantity.isInteger()) mistakes.quantity = `Quantity is ${quantity}: enter a whole number`;
  if (Object.keys(mistakes).length > 0 || !bore || !pressure || !coldest || !hottest || !quantity) {
    return { demand: undefined, mistakes };
  }
  const demand: Demand = {
    units: fields.units,
    fluid: fields.fluid.trim() || undefined,
    ...{ flow, fastest, bore, pressure, surge, fluidColdest, fluidHottest, coldest, hottest, vacuum },
    isBoreByFlow: needed !== undefined && bore.eq(needed),
    route: route as readonly RoutePart[],
    ...{ straightRun, slack, twist, quantity, density },
    ends: [
      { form: fields.formA || undefined, angle: angles[0] },
      { form: fields.formB || undefined, angle: angles[1] },
    ],
    oil: oilOf(fields, typed),
  };
  return { demand, mistakes };
}
