import type { Decimal } from '../../core/units/decimal';
import { commaAdvice, numberFromText } from '../../core/units/numberText';

/** What a field for something measured holds. */
export type Measured =
  | { readonly kind: 'blank' }
  | { readonly kind: 'value'; readonly value: Decimal }
  | { readonly kind: 'mistake'; readonly sentence: string };

/** Reads a field of the pane for a measured size, more than 0; inch marks count in inches only. */
export function measured(text: string, unit: 'mm' | 'in' | 'perInch'): Measured {
  if (text.trim() === '') return { kind: 'blank' };
  const found = numberFromText(text.replace(/\s*mm$/i, ''));
  if (!found || !found.value.isPositive() || found.value.isZero()) {
    return { kind: 'mistake', sentence: commaAdvice(text) ?? 'A number above 0' };
  }
  if (found.mark === 'inch' && unit !== 'in') return { kind: 'mistake', sentence: 'That is in inches: change the unit' };
  return { kind: 'value', value: found.value };
}
