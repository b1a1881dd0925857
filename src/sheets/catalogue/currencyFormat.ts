import type { RangeContent } from '../../workbook/workbook';
import { plainHeading } from '../table/heading';

const PRICE = /^(?:.*\bprices?\b.*|.*\bcosts?\b.*|amount|line total)$/;

/** Whether a number format shows amounts: it has digits, is no date and no share. */
export function isAmountFormat(format: string): boolean {
  return /[0#]/.test(format) && !/[dymhs%@]/i.test(format.replace(/"[^"]*"|\[[^\]]*\]|\\./g, ''));
}

/**
 * The number format of the first price column of a sheet that has one; undefined where its prices have no format of their own.
 */
export function currencyFormatOf(content: RangeContent | undefined): string | undefined {
  if (!content) return undefined;
  for (const [r, row] of content.values.entries()) {
    for (const [c, cell] of row.entries()) {
      if (typeof cell !== 'string' || !PRICE.test(plainHeading(cell))) continue;
      const below = content.values.slice(r + 1).findIndex((cells, down) => {
        return typeof cells[c] === 'number' && isAmountFormat(content.formats[r + 1 + down]![c]!);
      });
      if (below >= 0) return content.formats[r + 1 + below]![c]!;
    }
  }
  return undefined;
}

/** Decimals that a number format shows: 2 of `#,##0.00 "€"`. */
export function decimalsOf(format: string): number {
  const plain = format.split(';')[0]!.replace(/"[^"]*"|\[[^\]]*\]|\\./g, '');
  return /\.([0#?]+)/.exec(plain)?.[1]!.length ?? 0;
}
