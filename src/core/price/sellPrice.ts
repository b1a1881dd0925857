import { TradeError } from '../tradeError';
import { Decimal } from '../units/decimal';

/** A cost and what is to be earned on it; money in one currency. */
export interface SellPriceInput {
  readonly cost: Decimal;
  /** Share of the price that is not cost: 0.4 = 40 %; below 1, negative = sold below cost. */
  readonly margin: Decimal;
  /** The price is rounded up to a multiple of this; omitted = not rounded. */
  readonly roundTo?: Decimal | undefined;
  /** Least price. */
  readonly minimum?: Decimal | undefined;
}

/**
 * Price that leaves a margin on a cost: cost ÷ (1 − margin), at least the minimum, rounded up to a multiple of `roundTo`.
 * @returns the price, in the currency of the cost
 * @throws TradeError `range` where the margin is 1 or more
 * Source: definition of gross margin, g = (price − cost) ÷ price.
 */
export function sellPrice({ cost, margin, roundTo, minimum }: SellPriceInput): Decimal {
  if (margin.gte(1)) {
    const advice = 'a margin is a share of the price and lies below 1; enter 0.4 for 40 %';
    throw new TradeError('range', 'margin', `is ${margin}`, advice);
  }
  const price = Decimal.max(cost.div(new Decimal(1).minus(margin)), minimum ?? 0);
  if (!roundTo) return price;
  // A quotient without end (cost ÷ 0.7) carries noise in its 40th digit, which must not lift the price by a whole step.
  const steps = price.div(roundTo).toDecimalPlaces(25, Decimal.ROUND_HALF_UP);
  return steps.toDecimalPlaces(0, Decimal.ROUND_UP).times(roundTo);
}
