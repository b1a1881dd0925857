import { Decimal } from '../../core/units/decimal';
import { convertMeasure, type MeasureUnit } from '../../core/units/measureUnit';

/** How a formula turns a cell of one unit into another, exactly: `*25.4`, `/25.4`, "" where they are the same. */
export function turnedBy(from: MeasureUnit, to: MeasureUnit): string {
  if (from.symbol === to.symbol) return '';
  const [times, over] = [convertMeasure(new Decimal(1), from, to), convertMeasure(new Decimal(1), to, from)];
  return times.decimalPlaces() <= over.decimalPlaces() ? `*${times}` : `/${over}`;
}
