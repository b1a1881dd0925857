import type { Decimal } from '../../core/units/decimal';
import { numberFromText } from '../../core/units/numberText';
import type { Takeable } from '../table/tableRows';
import type { CrimpReadOptions, TypedName } from './crimpReadOptions';

/** What counts where neither the sheet nor the catalogue says anything, as typed; "" = not said. The same in all views that read crimps. */
export type CrimpFields = Readonly<Record<TypedName | 'readingsACrimp' | 'machine' | 'operator', string>>;

export const NO_CRIMP_FIELDS: CrimpFields = {
  readingsACrimp: '4',
  machine: '',
  operator: '',
  target: '',
  tolerance: '',
  largestSpread: '',
  uncertainty: '',
  step: '',
  perTurn: '',
  lowest: '',
  highest: '',
  largestMove: '',
};

export const TYPED_NAMES = [
  'target',
  'tolerance',
  'largestSpread',
  'uncertainty',
  'step',
  'perTurn',
  'lowest',
  'highest',
  'largestMove',
] as const satisfies readonly TypedName[];

/** Dials and the step may be 0 or below. */
const ANY: ReadonlySet<TypedName> = new Set(['step', 'lowest', 'highest']);

/** A typed number: its value, or what is wrong with it. */
export function typedCrimpNumber(text: string, name: TypedName): { readonly value?: Decimal; readonly mistake?: string } {
  if (text.trim() === '') return {};
  const value = numberFromText(text)?.value;
  if (!value) return { mistake: 'A number, like 0.12' };
  if (name === 'step' && value.isZero()) return { mistake: 'Not 0' };
  if (!ANY.has(name) && !value.gt(0)) return { mistake: 'More than 0' };
  return { value };
}

/** Readings that make a crimp: a whole number of 2 or more; 4 where nothing usable was typed. */
function typedReadings(text: string): number {
  const count = Number(text);
  return Number.isInteger(count) && count >= 2 && count <= 10 ? count : 4;
}

/** The options that the fields stand for; what cannot be read counts as not said, and is a mistake at its field. */
export function readOptionsOf(fields: CrimpFields, take?: ReadonlySet<Takeable>): CrimpReadOptions {
  const typed = TYPED_NAMES.flatMap(name => {
    const { value } = typedCrimpNumber(fields[name], name);
    return value ? [[name, value]] : [];
  });
  return {
    readingsACrimp: typedReadings(fields.readingsACrimp),
    machine: fields.machine.trim(),
    typed: Object.fromEntries(typed) as CrimpReadOptions['typed'],
    take,
  };
}
