import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { typedNumber } from '../../cells/typedNumber';

/** What a bench usually cuts to. */
export const usualStep = (unit: LengthUnit): Decimal => new Decimal(unit === 'mm' ? 1 : '0.0625');

/** The bench's step as said with the cut list, where it is said in this unit and can be read; else the usual one. */
export function benchStep(said: { readonly unit: LengthUnit; readonly step: string }, unit: LengthUnit): Decimal {
  const step = said.unit === unit ? typedNumber(said.step, 'bench step', { sign: 'positive' }).value : undefined;
  return step ?? usualStep(unit);
}
