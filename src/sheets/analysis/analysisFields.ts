import type { Decimal } from '../../core/units/decimal';
import { numberFromText } from '../../core/units/numberText';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { AnalysisChoice } from './analysisOf';
import type { MeasurementColumns, MeasurementLayout } from '../crimps/measurementRoles';

/** What the fields of the pane hold, as typed; "" = nothing entered. */
export interface AnalysisFields {
  readonly unit: '' | LengthUnit;
  readonly readingsACrimp: string;
  readonly machine: string;
  readonly target: string;
  readonly tolerance: string;
  readonly largestSpread: string;
  readonly uncertainty: string;
  readonly step: string;
  readonly perTurn: string;
}

export const NO_FIELDS: AnalysisFields = {
  unit: '',
  readingsACrimp: '4',
  machine: '',
  target: '',
  tolerance: '',
  largestSpread: '',
  uncertainty: '',
  step: '',
  perTurn: '',
};

export type NumberField = 'target' | 'tolerance' | 'largestSpread' | 'uncertainty' | 'step' | 'perTurn';

/** A typed number: its value, or what is wrong with it. The step alone may be negative. */
export function typedNumber(text: string, name: NumberField): { readonly value?: Decimal; readonly mistake?: string } {
  if (text.trim() === '') return {};
  const value = numberFromText(text)?.value;
  if (!value) return { mistake: 'A number, like 0.12' };
  if (value.isZero() || (value.isNegative() && name !== 'step')) {
    return { mistake: name === 'step' ? 'Not 0' : 'More than 0' };
  }
  return { value };
}

/** Readings that make a crimp: a whole number of 2 or more; 4 where nothing usable was typed. */
function typedReadings(text: string): number {
  const count = Number(text);
  return Number.isInteger(count) && count >= 2 && count <= 10 ? count : 4;
}

/** The choice that the fields stand for; what cannot be read counts as not entered. */
export function choiceOf(
  fields: AnalysisFields,
  chosen: { readonly layout?: MeasurementLayout | undefined; readonly columns?: MeasurementColumns | undefined },
): AnalysisChoice {
  const number = (name: NumberField) => typedNumber(fields[name], name).value;
  return {
    ...chosen,
    unit: fields.unit || undefined,
    readingsACrimp: typedReadings(fields.readingsACrimp),
    machine: fields.machine.trim(),
    target: number('target'),
    tolerance: number('tolerance'),
    largestSpread: number('largestSpread'),
    uncertainty: number('uncertainty'),
    step: number('step'),
    perTurn: number('perTurn'),
  };
}
