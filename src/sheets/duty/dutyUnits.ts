import { HOSE_PLACES } from '../../core/units/decimalPlaces';
import type { FlowUnits } from '../../core/hydraulics/flowUnits';
import { Decimal } from '../../core/units/decimal';
import { convertMeasure, measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import { lengthText } from '../table/lengthText';

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

/** A way of rounding, like `Decimal.ROUND_CEIL`. */
type Rounding = NonNullable<Parameters<Decimal['toSignificantDigits']>[1]>;

const DIGITS_SHOWN = 5;

/** A number with at most `places` decimals, and no more digits than anybody reads. */
function rounded(value: Decimal, places: number, rounding: Rounding): Decimal {
  const few = value.toDecimalPlaces(places, rounding);
  const kept = few.isZero() && !value.isZero() ? value.toSignificantDigits(2, rounding) : few;
  return kept.precision(true) > DIGITS_SHOWN ? value.toSignificantDigits(DIGITS_SHOWN, rounding) : kept;
}

/** The same as text. */
export function roundedText(value: Decimal, places = 1): string {
  return rounded(value, places, Decimal.ROUND_HALF_UP).toString();
}

/** Digits that conversions of units leave right: rounding up or down must not take the rest for an amount. */
const SURE_DIGITS = 15;

/** A value as the form shows it. */
export function asShown(exact: Decimal, unit: MeasureUnit, rounding: Rounding = Decimal.ROUND_HALF_UP): Decimal {
  const value = exact.toSignificantDigits(SURE_DIGITS);
  return unit.symbol === 'in' ? value.toDecimalPlaces(HOSE_PLACES.in, rounding) : rounded(value, 1, rounding);
}

/** A value with its unit as the form writes it: `12.7 mm`, `3/4 in`, `262 bar`. */
export function withUnit(value: Decimal, unit: MeasureUnit): string {
  const number = asShown(value, unit);
  return `${unit.symbol === 'in' ? lengthText(number, 'in') : number.toString()} ${unit.symbol}`;
}

export const optionalDecimal = (value: number | undefined) => (value === undefined ? undefined : new Decimal(value));
