import type { FlowUnits } from '../../core/hydraulics/flowUnits';
import type { Decimal } from '../../core/units/decimal';
import { convertMeasure, measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import { lengthText } from '../sheets/lengthCell';

/** Units of the form and of what it answers. Flows, velocities and viscosities have no catalogue unit to be turned into. */
export interface DutyUnits {
  readonly length: MeasureUnit;
  readonly pressure: MeasureUnit;
  readonly temperature: MeasureUnit;
  readonly flow: string;
  readonly velocity: string;
}

const named = (quantity: MeasureUnit['quantity'], symbol: string) => measureUnit(quantity, symbol)!;

export const UNITS_OF: Readonly<Record<FlowUnits, DutyUnits>> = {
  metric: {
    length: named('length', 'mm'),
    pressure: named('pressure', 'bar'),
    temperature: named('temperature', '°C'),
    flow: 'L/min',
    velocity: 'm/s',
  },
  US: {
    length: named('length', 'in'),
    pressure: named('pressure', 'psi'),
    temperature: named('temperature', '°F'),
    flow: 'gpm',
    velocity: 'ft/s',
  },
};

/** A value of the catalogue in the form's unit, or the other way; a blank stays blank. */
export function converted<T extends Decimal | undefined>(value: T, from: MeasureUnit | undefined, to: MeasureUnit): T {
  return (value === undefined || from === undefined ? value : convertMeasure(value, from, to)) as T;
}

const DIGITS_SHOWN = 5;

/** A number with at most `places` decimals, and no more digits than anybody reads. */
export function shown(value: Decimal, places = 1): string {
  const rounded = value.toDecimalPlaces(places);
  const text = rounded.isZero() && !value.isZero() ? value.toSignificantDigits(2) : rounded;
  return (text.precision(true) > DIGITS_SHOWN ? value.toSignificantDigits(DIGITS_SHOWN) : text).toString();
}

/** A value with its unit as the form writes it: `12.7 mm`, `3/4 in`, `262 bar`. */
export function withUnit(value: Decimal, unit: MeasureUnit): string {
  if (unit.symbol === 'in') return `${lengthText(value.toDecimalPlaces(4), 'in')} in`;
  return `${shown(value)} ${unit.symbol}`;
}
