import { sellPrice as sellPriceOf } from '../core/price/sellPrice';
import { answer } from '../cells/answer';
import { column } from '../cells/columns';
import { number } from '../cells/readers';
import { mapRows } from '../cells/rows';
import { optionalSingle } from '../cells/singles';

const money = (sign: 'positive' | 'notNegative', hint: string) => number({ sign, marks: 'noLength', hint, like: '12.50' });
const readMargin = number({ marks: 'noLength', hint: 'enter a share of the price', like: '0.4 for 40 %' });

/**
 * Price that leaves a margin on a cost, at least a minimum, rounded up to a step.
 * @customfunction SELLPRICE SELLPRICE
 * @param {any[][]} cost Cost: one value or a column, in the sheet's currency.
 * @param {any[][]} margin Share of the price that is not cost, below 1: one value or a column (0.4 = 40 %).
 * @param {any[][]} [roundTo] The price is rounded up to a multiple of this, one value in the same currency (blank = not rounded).
 * @param {any[][]} [minimum] Least price, one value in the same currency (blank = none).
 * @returns {any[][]} Price, one a row, in the same currency. #VALUE! where the margin is 1 or more.
 * Source: gross margin = (price - cost) / price.
 * @example =HOSE.SELLPRICE(30, 0.4, 0.5) gives 50
 */
export function sellPrice(cost: any[][], margin: any[][], roundTo?: any[][], minimum?: any[][]): any[][] {
  return answer(() => {
    const step = optionalSingle('round to', roundTo, money('positive', 'enter the step of the price'));
    const least = optionalSingle('minimum', minimum, money('notNegative', 'enter the least price'));
    return mapRows(
      [column('cost', cost, money('notNegative', 'enter the cost')), column('margin', margin, readMargin)],
      1,
      (amount, share) => sellPriceOf({ cost: amount, margin: share, roundTo: step, minimum: least }),
    );
  });
}
