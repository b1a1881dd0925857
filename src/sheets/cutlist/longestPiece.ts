import { Decimal } from '../../core/units/decimal';
import type { CutSettings } from './cutSettings';

/** The longest piece that any of these pieces of stock gives, squared off; the last piece needs no kerf behind it. 0 where there are none. */
export function longestPiece(stock: readonly { readonly length: Decimal }[], { squaring }: CutSettings): Decimal {
  return Decimal.max(0, ...stock.map(({ length }) => length.minus(squaring ?? 0)));
}
