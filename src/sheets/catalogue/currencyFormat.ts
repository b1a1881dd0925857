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

/** Money where the workbook shows no currency. */
export const PLAIN_MONEY = '0.00';

/** Currencies that have no smaller coin in use. Source: ISO 4217, minor unit 0. */
const WHOLE = /[¥￥₩₫]|\b(?:JPY|KRW|VND|CLP|ISK|PYG|UGX|XAF|XOF)\b/;

/**
 * The one format of money in what the pane writes: two decimals, and the currency that the sheet shows. A price per length may have more
 * decimals in its own table, and a table of whole prices none.
 * @param found number format of a price column
 */
export function moneyFormatOf(found: string): string {
  const [positive = ''] = found.split(';');
  // Colours, conditions, blanks as wide as a sign, and signs that fill a cell are looks of that column.
  const plain = positive.replace(/\[(?!\$)[^\]]*\]|[_*]./g, '').trim();
  const currency = plain.replace(/[0#?.,\s]|"\s*"/g, '');
  const digits = plain.includes(',') ? '#,##0' : '0';
  if (currency === '') return `${digits}.00`;
  const decimals = WHOLE.test(currency) && decimalsOf(plain) === 0 ? '' : '.00';
  // Digits in quotes and in brackets are none of the number.
  let isWritten = false;
  return plain.replace(/\[[^\]]*\]|"[^"]*"|\\.|[0#?][0#?,.]*/g, part => {
    if (isWritten || !/^[0#?]/.test(part)) return part;
    isWritten = true;
    return `${digits}${decimals}`;
  });
}

/** Decimals that a number format shows: 2 of `#,##0.00 "€"`. */
export function decimalsOf(format: string): number {
  const plain = format.split(';')[0]!.replace(/"[^"]*"|\[[^\]]*\]|\\./g, '');
  return /\.([0#?]+)/.exec(plain)?.[1]!.length ?? 0;
}
