import type { PageSetup } from '../../workbook/workbook';
import { pageScale } from './pageScale';

/** Scale in per cent below which nobody can read a printed row, and the one at which letters of 11 points are read at arm's length. */
const [LEAST, READABLE] = [50, 82] as const;
/** In points. */
const MARGIN = 18;

/**
 * How a wide table is printed lying: on one page's width where that can be read; else on pages side by side, each with the first column,
 * by which its rows are told apart.
 * @param widths of all columns, in points
 */
export function printedWidth(widths: readonly number[]): PageSetup {
  const page = { orientation: 'landscape', margin: MARGIN } as const;
  if (pageScale(widths, 'landscape', MARGIN) >= LEAST) return { ...page, fitWidth: true };
  return { ...page, scale: READABLE, titleColumns: 'A:A' };
}
