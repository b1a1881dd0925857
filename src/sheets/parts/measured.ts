import { typedNumber } from '../../cells/typedNumber';
import type { Decimal } from '../../core/units/decimal';

/** What a field for something measured holds. */
export type Measured =
  | { readonly kind: 'blank' }
  | { readonly kind: 'value'; readonly value: Decimal }
  | { readonly kind: 'mistake'; readonly sentence: string };

const INCH_MARK = /["'″′]/;

/** Reads a field of the pane for a measured size, more than 0; inch marks count in inches only. */
export function measured(text: string, unit: 'mm' | 'in' | 'perInch'): Measured {
  if (text.trim() === '') return { kind: 'blank' };
  const { value, mistake } = typedNumber(text.replace(/\s*mm$/i, ''), 'size', { sign: 'positive' });
  if (!value) return { kind: 'mistake', sentence: mistake! };
  if (INCH_MARK.test(text) && unit !== 'in') return { kind: 'mistake', sentence: 'That is in inches: change the unit' };
  return { kind: 'value', value };
}
