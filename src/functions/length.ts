import { cutLength as coreCutLength } from '../core/length/cutLength';
import { answer } from '../host/cells/answer';
import { column, optionalColumn } from '../host/cells/columns';
import { number } from '../host/cells/readers';
import { mapRows } from '../host/cells/rows';

const readLength = number({ sign: 'positive', zeroIsBlank: true, hint: 'enter a length' });
const readCutOff = number({ mayBeDate: true, hint: 'enter a length' });

/**
 * Length to cut the hose to: overall length less both couplings' cut-offs, plus an allowance.
 * @customfunction CUTLENGTH CUTLENGTH
 * @param {any[][]} overall Overall length of the assembly: one value or a column, in one unit with all other lengths (mm or in).
 * @param {any[][]} cutOffA Cut-off of coupling A, from the hose's cut end to the point the overall length is measured to (same unit; may be negative).
 * @param {any[][]} cutOffB Cut-off of coupling B (same unit; may be negative).
 * @param {any[][]} [allowance] Added to the cut, positive = cut longer (same unit; blank = none).
 * @returns {any[][]} Cut length, one a row, in the same unit.
 */
export function cutLength(overall: any[][], cutOffA: any[][], cutOffB: any[][], allowance?: any[][]): any[][] {
  return answer(() =>
    mapRows(
      [
        column('overall length', overall, readLength),
        column('cut-off A', cutOffA, readCutOff),
        column('cut-off B', cutOffB, readCutOff),
        optionalColumn('allowance', allowance, readCutOff),
      ],
      1,
      (length, a, b, extra) => coreCutLength({ overall: length, cutOffA: a, cutOffB: b, allowance: extra }),
    ),
  );
}
