import { TradeError } from '../core/tradeError';
import { listBlock } from '../host/cells/lists';
import { number } from '../host/cells/readers';
import type { Cells } from '../host/cells/singles';

const read = number({ mayBeDate: true, hint: 'enter the measured value' });
const SIZES_ARE_ALIKE = 0.8;

/** Measured sizes lie close together and far from 0; deviations do not. Only among sizes a 0 is a blank. */
export function areSizes(values: readonly number[]): boolean {
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
