import { numberFromText } from '../../core/units/numberText';
import type { OfferOptions } from './offer';

/** What is typed beside the offers. */
export interface OfferSettings {
  readonly machine: string;
  readonly margin: string;
  readonly roundTo: string;
  readonly minimum: string;
}

export const NO_SETTINGS: OfferSettings = { machine: '', margin: '', roundTo: '', minimum: '' };

/** A typed number as it stands in a formula; undefined where it is none. A per cent sign counts. */
function typedNumber(text: string): string | undefined {
  const percent = text.trim().endsWith('%');
  const found = numberFromText(text.replace(/%\s*$/, '').replace(/^(\s*\d+),(\d+\s*)$/, '$1.$2'));
  return found?.mark === 'none' ? (percent ? found.value.div(100) : found.value).toString() : undefined;
}

/** What is wrong with a typed margin; undefined where it is blank or fine. */
export function marginTrouble(text: string): string | undefined {
  if (text.trim() === '') return undefined;
  const value = Number(typedNumber(text) ?? NaN);
  return value >= 0 && value < 1 ? undefined : 'Enter a share of the price below 1, like 0.4 or 40 %.';
}

/** What is wrong with a typed amount of money; undefined where it is blank or fine. */
export function amountTrouble(text: string): string | undefined {
  if (text.trim() === '') return undefined;
  return Number(typedNumber(text) ?? NaN) > 0 ? undefined : 'Enter an amount above 0, or leave it blank.';
}

/** The settings as formulas take them; what is blank or wrong is left out. */
export function offerOptions({ machine, margin, roundTo, minimum }: OfferSettings, spill: boolean): OfferOptions {
  const amount = (text: string) => (amountTrouble(text) ? undefined : typedNumber(text));
  return {
    machine,
    spill,
    margin: marginTrouble(margin) ? undefined : typedNumber(margin),
    roundTo: amount(roundTo),
    minimum: amount(minimum),
  };
}
