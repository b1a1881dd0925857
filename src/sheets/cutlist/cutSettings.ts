import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import { typedNumber, type TypedRules } from '../../cells/typedNumber';

/** How the bench cuts and what the rack keeps; lengths in `unit`. */
export interface CutSettings {
  readonly unit: LengthUnit;
  /** What the bench can cut. */
  readonly step: Decimal;
  readonly kerf: Decimal;
  readonly squaring: Decimal | undefined;
  /** Shortest piece worth keeping; undefined = nothing left over is worth anything. */
  readonly keep: Decimal | undefined;
  /** Hose older than this is warned of. */
  readonly ageLimitMonths: number | undefined;
  readonly isOldestFirst: boolean;
  /** Length of hose that fetching one more piece of stock is worth; undefined = 0. */
  readonly handling?: Decimal | undefined;
  /** The cut list is printed with a page for each hose. */
  readonly pagePerHose?: boolean | undefined;
  /** How long an assembly may be used; undefined: no day is written. */
  readonly useMonths?: number | undefined;
}

/** The settings as they stand in the fields. */
export interface CutSettingsText {
  readonly unit: LengthUnit;
  readonly step: string;
  readonly kerf: string;
  readonly squaring: string;
  /** Shortest offcut worth keeping; it may stay blank only where nothing is kept. */
  readonly keep: string;
  readonly keepsNothing: boolean;
  readonly handling: string;
  readonly ageLimit: string;
  readonly useYears: string;
  readonly isOldestFirst: boolean;
  readonly pagePerHose: boolean;
}

/** Fields before anybody has touched them: kerf, squaring and keep are the user's to say. */
export function freshSettings(unit: LengthUnit): CutSettingsText {
  const step = unit === 'mm' ? '1' : '1/16';
  return {
    ...{ unit, step, kerf: '', squaring: '', keep: '', keepsNothing: false, handling: '' },
    ...{ ageLimit: '', useYears: '', isOldestFirst: false, pagePerHose: false },
  };
}

type Field = 'step' | 'kerf' | 'squaring' | 'keep' | 'handling' | 'ageLimit' | 'useYears';

function monthsOf(text: string, label: string): number | undefined {
  const years = typedNumber(text, label, { sign: 'positive', marks: 'noLength' }).value;
  return years && Math.round(years.toNumber() * 12);
}

/** How many months an assembly may be used, as the fields say; undefined where they do not. */
export const monthsOfUse = ({ useYears }: Pick<CutSettingsText, 'useYears'>): number | undefined => monthsOf(useYears, 'use by');

/** From how many months on hose is too old, as the fields say; undefined where they do not. */
export const monthsOfAge = ({ ageLimit }: Pick<CutSettingsText, 'ageLimit'>): number | undefined =>
  monthsOf(ageLimit, 'age limit');

/** The settings, or for each field that cannot be used what is wrong with it. */
export interface ReadSettings {
  readonly settings: CutSettings | undefined;
  readonly mistakes: Readonly<Partial<Record<Field, string>>>;
}

const KEEP_ADVICE = 'enter a length, or tick “Nothing is kept”';

/** Reads the fields. A blank kerf is a mistake (0 is an answer), and so is not saying what is kept; squaring and age limit may stay blank. */
export function readSettings(fields: CutSettingsText): ReadSettings {
  const mistakes: Partial<Record<Field, string>> = {};
  const read = (field: Field, label: string, sign: 'positive' | 'notNegative', advice?: string): Decimal | undefined => {
    const length: TypedRules = { millimetres: fields.unit === 'mm', unit: measureUnit('length', fields.unit) };
    const rules: TypedRules = field === 'ageLimit' || field === 'useYears' ? { marks: 'noLength' } : length;
    const { value, mistake } = typedNumber(fields[field], label, { sign, blank: advice, ...rules });
    if (mistake) mistakes[field] = mistake;
    return value;
  };
  const step = read('step', 'bench step', 'positive', 'enter the smallest step the bench can cut');
  const kerf = read('kerf', 'kerf', 'notNegative', 'enter the width of your cut, 0 for a knife');
  const squaring = read('squaring', 'squaring', 'notNegative');
  const keep = fields.keepsNothing ? undefined : read('keep', 'shortest offcut worth keeping', 'positive', KEEP_ADVICE);
  const handling = read('handling', 'fetching a reel', 'notNegative');
  const years = read('ageLimit', 'age limit', 'positive');
  const useYears = read('useYears', 'use by', 'positive');
  if (!step || !kerf || Object.keys(mistakes).length > 0) return { settings: undefined, mistakes };
  const months = (typed: Decimal | undefined) => typed && Math.round(typed.toNumber() * 12);
  const age = { ageLimitMonths: months(years), useMonths: months(useYears), isOldestFirst: fields.isOldestFirst };
  const { pagePerHose } = fields;
  return { settings: { unit: fields.unit, step, kerf, squaring, keep, handling, pagePerHose, ...age }, mistakes };
}
