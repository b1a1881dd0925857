import { Decimal } from '../../core/units/decimal';
import { convertMeasure, type MeasureUnit } from '../../core/units/measureUnit';

/** Factors of units have fewer decimals than that, or none that end. */
const PLACES = 12;

/**
 * A cell's value in another unit, as a formula without `=`: `(K5-32)/1.8`. Temperatures have an offset, which a factor alone would lose.
 * @param cell reference to the cell; a blank one counts as 0
 */
export function turnedCell(cell: string, from: MeasureUnit, to: MeasureUnit): string {
  if (from.symbol === to.symbol) return cell;
  const zero = (a: MeasureUnit, b: MeasureUnit) => convertMeasure(new Decimal(0), a, b).toDecimalPlaces(PLACES);
  const slope = (a: MeasureUnit, b: MeasureUnit) =>
    convertMeasure(new Decimal(1), a, b)
      .minus(convertMeasure(new Decimal(0), a, b))
      .toDecimalPlaces(PLACES);
  const plus = (value: Decimal) => (value.isZero() ? '' : value.lt(0) ? String(value) : `+${value}`);
  const times = (value: Decimal, sign: string) => (value.eq(1) ? '' : `${sign}${value}`);
  if (slope(from, to).decimalPlaces() <= slope(to, from).decimalPlaces())
    return `${cell}${times(slope(from, to), '*')}${plus(zero(from, to))}`;
  const shift = plus(zero(to, from).neg());
  return `${shift ? `(${cell}${shift})` : cell}${times(slope(to, from), '/')}`;
}

/** How a formula turns a cell of one unit into another, exactly: `*25.4`, `/25.4`, "" where they are the same. */
export function turnedBy(from: MeasureUnit, to: MeasureUnit): string {
  if (from.symbol === to.symbol) return '';
  const [times, over] = [convertMeasure(new Decimal(1), from, to), convertMeasure(new Decimal(1), to, from)];
  return times.decimalPlaces() <= over.decimalPlaces() ? `*${times}` : `/${over}`;
}
