import type { Decimal } from '../units/decimal';
import type { CutPlan } from './cutPlan';

/**
 * A plan as a table for a sheet: header, one row for all pieces of stock that are cut alike, total.
 * @param written how a length is written, as the user typed it
 * @returns rows of Stock, Times, Cuts (`3 x 1250 + 2 x 840`), Used, Left; the last row is `Total`, pieces of stock cut, `proven best` or
 * `at most x % over the best`, and the sums over all pieces of stock
 */
export function cutPlanTable(plan: CutPlan, written: (length: Decimal) => string): (Decimal | number | string)[][] {
  const verdict = plan.isProven ? 'proven best' : `at most ${plan.percentOver} % over the best`;
  return [
    ['Stock', 'Times', 'Cuts', 'Used', 'Left'],
    ...plan.rows.map(row => [
      row.stock,
      row.times,
      row.cuts.map(cut => `${cut.count} x ${written(cut.length)}`).join(' + '),
      row.used,
      row.left,
    ]),
    ['Total', plan.stockCut, verdict, plan.used, plan.left],
  ];
}
