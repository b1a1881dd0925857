import { typedNumber, type TypedNumber } from '../../cells/typedNumber';
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

const TYPED_NAMES = [
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

/** What a field is called in a sentence about it. */
const LABELS: Readonly<Record<TypedName, string>> = {
  target: 'target',
  tolerance: 'tolerance',
  largestSpread: 'largest spread',
  uncertainty: 'uncertainty U',
  step: 'step',
  perTurn: 'change per turn',
  lowest: 'lowest dial',
  highest: 'highest dial',
  largestMove: 'largest move',
};

/** A typed number: its value, or what is wrong with it. */
export function typedCrimpNumber(text: string, name: TypedName): TypedNumber {
  return typedNumber(text, LABELS[name], {
    like: '0.12',
    sign: ANY.has(name) ? 'any' : 'positive',
    isNever0: name === 'step',
  });
}

const WHOLE = 'enter a whole number from 2 to 10';

/** Readings that make a crimp, or what is wrong with what was typed. */
export function typedReadings(text: string): TypedNumber {
  return typedNumber(text, 'readings a crimp', { whole: WHOLE, least: 2, most: 10 });
}

/** Where nothing usable was typed. */
const USUAL_READINGS = 4;

/** The options that the fields stand for; what cannot be read counts as not said, and is a mistake at its field. */
export function readOptionsOf(fields: CrimpFields, take?: ReadonlySet<Takeable>): CrimpReadOptions {
  const typed = TYPED_NAMES.flatMap(name => {
    const { value } = typedCrimpNumber(fields[name], name);
    return value ? [[name, value]] : [];
  });
  return {
    readingsACrimp: typedReadings(fields.readingsACrimp).value?.toNumber() ?? USUAL_READINGS,
    machine: fields.machine.trim(),
    typed: Object.fromEntries(typed) as CrimpReadOptions['typed'],
    take,
  };
}
