import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { numberFromText } from '../../core/units/numberText';

/** What a bench usually cuts to. */
export const usualStep = (unit: LengthUnit): Decimal => new Decimal(unit === 'mm' ? 1 : '0.0625');

/** The bench's step as said with the cut list, where it is said in this unit and can be read; else the usual one. */
export function benchStep(said: { readonly unit: LengthUnit; readonly step: string }, unit: LengthUnit): Decimal {
  const step = said.unit === unit ? numberFromText(said.step)?.value : undefined;
  return step?.gt(0) ? step : usualStep(unit);
}
