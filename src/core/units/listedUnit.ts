import { Decimal } from './decimal';

/** A unit of the list: how it is printed, how many base units it is, and the words that mean it besides its symbol. */
export interface UnitWords {
  readonly symbol: string;
  readonly factor: Decimal;
  /** Added before the factor counts (temperatures). */
  readonly offset?: Decimal;
  /** In lower case, as tidyUnitText leaves them. */
  readonly words: readonly string[];
}

export const INCH = new Decimal('0.0254');
export const FOOT = INCH.times(12);
export const POUND_FORCE = new Decimal('4.4482216152605');
export const POUND = new Decimal('0.45359237');
export const LITRE = new Decimal('0.001');
export const GALLON = LITRE.times('3.785411784');

/** A unit of the list, its words parted by `|`. */
export const unit = (symbol: string, factor: string | number | Decimal, words: string, offset?: string): UnitWords => ({
  symbol,
  factor: new Decimal(factor),
  words: words.split('|').filter(Boolean),
  ...(offset === undefined ? {} : { offset: new Decimal(offset) }),
});
