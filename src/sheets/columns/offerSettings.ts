import { typedNumber } from '../../cells/typedNumber';
import type { OfferOptions } from './offer';

/** What is typed beside the offers. */
export interface OfferSettings {
  readonly machine: string;
  readonly margin: string;
  readonly roundTo: string;
  readonly minimum: string;
}

export const NO_SETTINGS: OfferSettings = { machine: '', margin: '', roundTo: '', minimum: '' };

const marginOf = (text: string) => typedNumber(text, 'margin', { share: true });
const amountOf = (text: string) => typedNumber(text, 'amount', { sign: 'positive', marks: 'noLength' });

/** What is wrong with a typed margin; undefined where it is blank or fine. */
export function marginTrouble(text: string): string | undefined {
  const { value, mistake } = marginOf(text);
  const isWrong = mistake !== undefined || value?.gte(1) || value?.lt(0);
  return isWrong ? 'Enter a share of the price below 1, like 0.4 or 40 %.' : undefined;
}

/** What is wrong with a typed amount of money; undefined where it is blank or fine. */
export function amountTrouble(text: string): string | undefined {
  return amountOf(text).mistake === undefined ? undefined : 'Enter an amount above 0, or leave it blank.';
}

/** The settings as formulas take them; what is blank or wrong is left out. */
export function offerOptions({ machine, margin, roundTo, minimum }: OfferSettings, spill: boolean): OfferOptions {
  const amount = (text: string) => amountOf(text).value?.toString();
  return {
    machine,
    spill,
    margin: marginTrouble(margin) ? undefined : marginOf(margin).value?.toString(),
    roundTo: amount(roundTo),
    minimum: amount(minimum),
  };
}
