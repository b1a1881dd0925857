import type { Decimal } from '../../core/units/decimal';
import type { Length } from '../../core/units/lengthUnit';
import { convertMeasure, type MeasureUnit } from '../../core/units/measureUnit';

/** A measure counted in another unit. */
export const inUnit = ({ value, unit }: Length, to: MeasureUnit): Decimal => convertMeasure(value, unit, to);
