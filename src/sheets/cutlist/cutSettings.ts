import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { number, type NumberRules } from '../../cells/readers';
import { asSentence } from '../table/asSentence';

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
  readonly ageLimit: string;
  readonly isOldestFirst: boolean;
}

/** Fields before anybody has touched them: kerf, squaring and keep are the user's to say. */
export function freshSettings(unit: LengthUnit): CutSettingsText {
  const step = unit === 'mm' ? '1' : '1/16';
  return { unit, step, kerf: '', squaring: '', keep: '', keepsNothing: false, ageLimit: '', isOldestFirst: false };
}

type Field = 'step' | 'kerf' | 'squaring' | 'keep' | 'ageLimit';

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
    try {
      const rules: NumberRules = field === 'ageLimit' ? { marks: 'noLength' } : { millimetres: fields.unit === 'mm' };
      if (fields[field].trim() !== '') return number({ sign, ...rules })(fields[field], label);
      if (advice) throw new TradeError('blank', label, 'is blank', advice);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      mistakes[field] = asSentence(error.message);
    }
    return undefined;
  };
  const step = read('step', 'bench step', 'positive', 'enter the smallest step the bench can cut');
  const kerf = read('kerf', 'kerf', 'notNegative', 'enter the width of your cut, 0 for a knife');
  const squaring = read('squaring', 'squaring', 'notNegative');
  const keep = fields.keepsNothing ? undefined : read('keep', 'shortest offcut worth keeping', 'positive', KEEP_ADVICE);
  const years = read('ageLimit', 'age limit', 'positive');
  if (!step || !kerf || Object.keys(mistakes).length > 0) return { settings: undefined, mistakes };
  const ageLimitMonths = years && Math.round(years.toNumber() * 12);
  return {
    settings: { unit: fields.unit, step, kerf, squaring, keep, ageLimitMonths, isOldestFirst: fields.isOldestFirst },
    mistakes,
  };
}
