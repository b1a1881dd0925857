import type { FlowUnits } from '../../core/hydraulics/flowUnits';
import { Decimal } from '../../core/units/decimal';
import { numberFromText } from '../../core/units/numberText';
import { convertMeasure, type MeasureUnit } from '../../core/units/measureUnit';
import { UNITS_OF } from './dutyUnits';

/** One part of the route as it stands in the fields. */
export type RoutePartText =
  | { readonly kind: 'straight'; readonly length: string }
  | { readonly kind: 'bend'; readonly radius: string; readonly angle: string; readonly turn: 'left' | 'right' };

/** Fields that hold one text each. */
export type DutyField =
  | 'fluid'
  | 'grade'
  | 'viscosity'
  | 'density'
  | 'flow'
  | 'fastest'
  | 'bore'
  | 'pressure'
  | 'surge'
  | 'fluidColdest'
  | 'fluidHottest'
  | 'airColdest'
  | 'airHottest'
  | 'vacuum'
  | 'straightRun'
  | 'slack'
  | 'formA'
  | 'angleA'
  | 'formB'
  | 'angleB'
  | 'twist'
  | 'quantity';

/** The form as it stands. */
export type DutyText = Readonly<Record<DutyField, string>> & {
  readonly units: FlowUnits;
  readonly route: readonly RoutePartText[];
};

/** Value of the field `grade` where the viscosity is typed. */
export const TYPED = 'typed';

/** The form before anybody has touched it. Density as PRESSUREDROP takes it; straight run: FAA-H-8083-30, 7-19. */
export const FRESH_DUTY: DutyText = {
  units: 'metric',
  fluid: '',
  grade: '',
  viscosity: '',
  density: '870',
  flow: '',
  fastest: '',
  bore: '',
  pressure: '',
  surge: '',
  fluidColdest: '',
  fluidHottest: '',
  airColdest: '',
  airHottest: '',
  vacuum: '',
  route: [{ kind: 'straight', length: '' }],
  straightRun: '2',
  slack: '',
  formA: '',
  angleA: '',
  formB: '',
  angleB: '',
  twist: '',
  quantity: '1',
};

const LITRES_IN_GALLON = new Decimal('3.785411784');
const METRES_IN_FOOT = new Decimal('0.3048');
const SAME_DIGITS = 5;

type Turn = (value: Decimal) => Decimal;

function textTurned(text: string, turn: Turn): string {
  const value = numberFromText(text)?.value;
  return value === undefined ? text : turn(value).toSignificantDigits(SAME_DIGITS).toString();
}

/** The form in the other system of units: numbers are turned, to five digits; what is no number stays as it is. */
export function inUnits(fields: DutyText, units: FlowUnits): DutyText {
  if (units === fields.units) return fields;
  const [from, to] = [UNITS_OF[fields.units], UNITS_OF[units]];
  const by = (a: MeasureUnit, b: MeasureUnit) => (text: string) => textTurned(text, value => convertMeasure(value, a, b));
  const [length, pressure, temperature] = [
    by(from.length, to.length),
    by(from.pressure, to.pressure),
    by(from.temperature, to.temperature),
  ];
  const flow = (text: string) =>
    textTurned(text, value => (units === 'US' ? value.div(LITRES_IN_GALLON) : value.times(LITRES_IN_GALLON)));
  const speed = (text: string) =>
    textTurned(text, value => (units === 'US' ? value.div(METRES_IN_FOOT) : value.times(METRES_IN_FOOT)));
  return {
    ...fields,
    units,
    flow: flow(fields.flow),
    fastest: speed(fields.fastest),
    bore: length(fields.bore),
    pressure: pressure(fields.pressure),
    surge: pressure(fields.surge),
    vacuum: pressure(fields.vacuum),
    fluidColdest: temperature(fields.fluidColdest),
    fluidHottest: temperature(fields.fluidHottest),
    airColdest: temperature(fields.airColdest),
    airHottest: temperature(fields.airHottest),
    route: fields.route.map(part =>
      part.kind === 'straight' ? { ...part, length: length(part.length) } : { ...part, radius: length(part.radius) },
    ),
  };
}

/** End forms of a catalogue that an assembly can end in, with their series where they have one. */
export function endFormsOf(fittings: readonly { readonly endForm: string; readonly series?: string | undefined }[]): string[] {
  const forms = fittings.map(({ endForm, series }) => (series === undefined ? endForm : `${endForm} ${series}`));
  return [...new Set(forms)].filter(form => form.trim().toLowerCase() !== 'ferrule').sort((a, b) => a.localeCompare(b));
}

/** Fluids that the hoses of a catalogue name, each once. */
export function fluidsOf(hoses: readonly { readonly fluids: string | undefined }[]): string[] {
  const items = hoses.flatMap(({ fluids }) => (fluids ?? '').split(/[,;\n]/).map(item => item.trim()));
  return [...new Set(items)].filter(Boolean).sort((a, b) => a.localeCompare(b));
}
