import type { Measure } from '../../cells/sheetCell';
import { measureFromText } from '../../core/units/measureText';
import { measureUnit, type Quantity } from '../../core/units/measureUnit';
import { dayNumber } from '../../core/units/sheetDate';
import type { LotOf, RecallRequest } from './recallRequest';

/** What a gauge read too high, with its unit. */
export type GaugeError = Measure;

/** What somebody types to ask something back. */
export interface RecallFields {
  readonly by: RecallRequest['by'];
  readonly lot: string;
  readonly of: LotOf;
  readonly part: string;
  readonly gauge: string;
  readonly since: string;
  readonly from: string;
  readonly to: string;
  /** `0.03 mm`: what the gauge read too high. */
  readonly error: string;
}

export const FRESH_RECALL: RecallFields = {
  by: 'lot',
  lot: '',
  of: 'any',
  part: '',
  gauge: '',
  since: '',
  from: '',
  to: '',
  error: '',
};

/** The request of the fields, or what is missing in a sentence. */
export function requestOf(fields: RecallFields, kindOf: (gauge: string) => string): RecallRequest | string {
  const { by, lot, of, part, gauge, since } = fields;
  if (by === 'lot') return lot.trim() === '' ? 'Enter the lot.' : { by, lot: lot.trim(), of, part: part.trim() };
  if (by === 'gauge') {
    const day = since.trim() === '' ? undefined : dayNumber(since.trim());
    if (gauge.trim() === '') return 'Enter the gauge.';
    if (since.trim() !== '' && day === undefined) return 'Since: enter a date, like 2026-09-01, or leave it blank.';
    return { by, name: gauge.trim(), kind: kindOf(gauge), since: day };
  }
  const [from, to] = [dayNumber(fields.from.trim()), dayNumber(fields.to.trim())];
  if (from === undefined || to === undefined) return 'Enter both days, like 2026-09-01.';
  return from > to ? 'The first day is after the last.' : { by, from, to };
}

const MEASURED: Readonly<Record<string, readonly [quantity: Quantity, unit: string]>> = {
  caliper: ['length', 'mm'],
  'pressure gauge': ['pressure', 'bar'],
};

/**
 * What a gauge read wrong, with its unit: `0.03` or `-0.001 in`. A bare number is in mm for a caliper, in bar for a pressure gauge.
 * @param kind what the gauge is; where nobody knows it, the unit says what it measures
 * @returns undefined where the field is blank, a sentence where it cannot be read
 */
export function errorOf(text: string, kind: string): GaugeError | string | undefined {
  if (text.trim() === '') return undefined;
  const isNegative = /^\s*[-−]/.test(text);
  const digits = text.replace(/^\s*[-−+]/, '');
  const known = MEASURED[kind];
  if (!known) {
    const byUnit = Object.values(MEASURED).map(([quantity]) => measureFromText(quantity, digits, 'decimal'));
    const said = byUnit.find(measure => measure?.unit);
    if (said?.unit) return { value: isNegative ? said.value.negated() : said.value, unit: said.unit };
    return 'Nobody knows what this gauge measures: sheet Gauges does not say. Enter the unit, too: 0.03 mm or 5 bar.';
  }
  const [quantity, unit] = known;
  const found = measureFromText(quantity, digits, 'decimal');
  const own = found?.unit ?? measureUnit(quantity, unit);
  if (!found || !own) return `Enter by how much it read too high, with its unit, like 0.03 ${unit}; negative if too low.`;
  return { value: isNegative ? found.value.negated() : found.value, unit: own };
}
