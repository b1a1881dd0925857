import { cutPlanTable } from '../core/cutplan/cutPlanTable';
import { answerLater, table } from '../cells/answer';
import { planCuts } from '../host/cutplan/planCuts';
import { cutPlanProblem } from './cutPlanArguments';

/**
 * Plans which pieces to cut from which stock so that the least is lost, offcuts worth keeping and the fetching of stock counted.
 * @customfunction CUTPLAN CUTPLAN
 * @cancelable
 * @param {any[][]} lengths Lengths to cut, a column (one unit for all lengths, mm or in; wholly blank rows are skipped).
 * @param {any[][]} quantities How many of each length, a column of whole numbers.
 * @param {any[][]} stockLengths Lengths of the stock there is, a column (same unit).
 * @param {any[][]} stockQuantities How many pieces of stock of each length, a column of whole numbers (blank = unlimited).
 * @param {any[][]} kerf Width of one cut (same unit; 0 = none).
 * @param {any[][]} [keep] Shortest offcut worth keeping (same unit; blank = offcuts count nothing, least stock wins).
 * @param {any[][]} [squaring] Taken off every piece of stock first, to start square (same unit; blank = none).
 * @param {any[][]} [seconds] Work to spend, in seconds of an ordinary machine (blank = 3).
 * @param {any[][]} [unit] "mm" (blank) or "in": lengths are worked in whole 0.1 mm or 1/64 in.
 * @param {any[][]} [handling] Length of stock that fetching one more piece of it from the rack is worth (same unit; blank = 0).
 * @param {CustomFunctions.CancelableInvocation} invocation
 * @returns {Promise<any[][]>} Table with the header Stock, Times, Cuts, Used, Left (per piece of stock) and a last row Total: pieces of stock, "proven best" or "at most x % over the best", length used, length left. #VALUE! says which lengths are short where the stock is not enough.
 * Source: column generation (Gilmore and Gomory 1961), exact bound by Lagrange duality.
 * @example =HOSE.CUTPLAN({1250;840}, {3;2}, 6000, "", 3) gives Stock, Times, Cuts, Used, Left, 6000, 1, 3 x 1250 + 2 x 840, 5445, 555, Total, 1, proven best, 5445, 555
 */
export function cutPlan(
  lengths: any[][],
  quantities: any[][],
  stockLengths: any[][],
  stockQuantities: any[][],
  kerf: any[][],
  keep: any[][],
  squaring: any[][],
  seconds: any[][],
  unit: any[][],
  handling: any[][],
  invocation?: CustomFunctions.CancelableInvocation,
): Promise<any[][]> {
  return answerLater(async () => {
    const { problem, asTyped } = cutPlanProblem({
      lengths,
      quantities,
      stockLengths,
      stockQuantities,
      kerf,
      keep,
      squaring,
      seconds,
      unit,
      handling,
    });
    const signal = { aborted: false };
    if (invocation) invocation.onCanceled = () => (signal.aborted = true);
    return table(cutPlanTable(await planCuts(problem, { signal }), asTyped));
  });
}
