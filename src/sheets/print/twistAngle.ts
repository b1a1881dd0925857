import { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';

/** The convention, printed wherever a twist angle is shown: others exist. */
export const TWIST_CONVENTION =
  'Twist angle: look along the hose from end A with end A at six o’clock, and turn counter-clockwise to end B (MIL-DTL-83796/5). Other conventions are in use: compare with the drawing.';

/** Length up to which the finer tolerance holds: 2 ft. Source: MIL-DTL-83796/5. */
const SHORT_INCHES = 24;

/** Allowed deviation of a twist angle in degrees, both ways: 3 up to 2 ft of length, 5 above. Source: MIL-DTL-83796/5. */
export function twistTolerance(overall: Decimal, unit: LengthUnit): number {
  return convertLength(overall, unit, 'in').lte(SHORT_INCHES) ? 3 : 5;
}

/** A twist angle within 0 … 360 degrees. */
export function wholeTurn(twist: number): number {
  return ((twist % 360) + 360) % 360;
}

/**
 * Time on the clock's face at which end B points: counter-clockwise from six, hours and minutes of the hour hand.
 * @example clockTime(90) // 3:00
 */
export function clockTime(twist: number): string {
  const minutes = Math.round((wholeTurn(360 - twist) / 360) * 720 + 360) % 720;
  const hours = Math.floor(minutes / 60) || 12;
  return `${hours}:${String(minutes % 60).padStart(2, '0')}`;
}

/** A point on a clock's face for a twist angle; x to the right, y down, six o'clock at the bottom. */
export function clockPoint(twist: number, radius: number): { readonly x: number; readonly y: number } {
  const angle = (wholeTurn(twist) * Math.PI) / 180;
  const round = (value: number) => Math.round(value * 100) / 100 + 0;
  return { x: round(radius * Math.sin(angle)), y: round(radius * Math.cos(angle)) };
}

/** The orientation in words. */
export function twistText(twist: number, overall: Decimal | undefined, unit: LengthUnit): string {
  const tolerance = overall ? ` ±${twistTolerance(overall, unit)}°` : '';
  return `End A at six o’clock, end B ${new Decimal(wholeTurn(twist)).toDecimalPlaces(1)}°${tolerance} counter-clockwise: ${clockTime(twist)} on the clock`;
}
