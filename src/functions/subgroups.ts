import { mean } from '../core/quality/mean';
import { TradeError } from '../core/tradeError';
import { listBlock } from '../cells/lists';
import { number } from '../cells/readers';
import type { Cells } from '../cells/singles';

const read = number({ mayBeDate: true, hint: 'enter the measured value' });
const SIZES_ARE_ALIKE = 0.8;

/** Measured sizes lie close together and far from 0; deviations do not. Only among sizes a 0 is a blank. */
function areSizes(values: readonly number[]): boolean {
  const filled = values.filter(value => value !== 0);
  return filled.length > 0 && Math.min(...filled) > SIZES_ARE_ALIKE * Math.max(...filled) && Math.min(...filled) > 0;
}

/**
 * Subgroups, one a row: diameters or deviations. Blank rows are skipped. Some hosts deliver blanks as 0: among diameters a row of zeros is
 * blank and a single 0 an error; among deviations 0 is a value.
 */
export function subgroupsOf(cells: Cells): number[][] {
  const rows = listBlock('subgroups', cells, read).map(row => row.map(value => value.toNumber()));
  if (!areSizes(rows.flat())) return rows;
  const filled = rows.filter(row => row.some(value => value !== 0));
  if (filled.some(row => row.includes(0))) {
    throw new TradeError('blank', 'subgroups', 'hold a value that is blank or zero', 'fill in the whole row, or clear it');
  }
  return filled;
}

/** Limits of diameters lie close about them; a spread or an ovality has 0 for its lower limit and no such neighbour. */
const BLANK_BEYOND = 20;

/**
 * Refuses a 0 for a limit where it can only be a blank that the host turned into 0: among sizes, with no other limit, or with one that lies
 * far nearer to their mean.
 */
export function refuseBlankLimit(
  values: readonly number[],
  limits: { lower: number | undefined; upper: number | undefined },
): void {
  if (!areSizes(values)) return;
  const centre = mean(values);
  for (const [label, limit, other] of [
    ['lower limit', limits.lower, limits.upper],
    ['upper limit', limits.upper, limits.lower],
  ] as const) {
    if (limit !== 0) continue;
    if (other && centre <= BLANK_BEYOND * Math.abs(other - centre)) continue;
    throw new TradeError('blank', label, 'is blank or zero', 'fill it in');
  }
}
