import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';
import { number } from '../../cells/readers';
import type { CellValue } from '../../workbook/workbook';

/** Units in which a sheet may give lengths: what stands behind a heading, the unit of this project and how many of it. */
const SHEET_UNITS: Readonly<Record<string, readonly [LengthUnit, number]>> = {
  mm: ['mm', 1],
  cm: ['mm', 10],
  m: ['mm', 1000],
  in: ['in', 1],
  inch: ['in', 1],
  inches: ['in', 1],
  '"': ['in', 1],
  ft: ['in', 12],
  feet: ['in', 12],
};

/** The unit of this project that a heading's unit belongs to; undefined where the heading names none. */
export function unitOfHeading(unit: string): LengthUnit | undefined {
  return SHEET_UNITS[unit]?.[0];
}

/**
 * A length out of a cell, in `unit`.
 * @param sheetUnit what stands in brackets behind the heading; "" = the cell is in `unit` already
 * @returns undefined where the cell is blank
 * @throws TradeError naming `label` where the cell holds an error, no number, or not more than 0
 */
export function lengthOfCell(cell: CellValue, label: string, sheetUnit: string, unit: LengthUnit): Decimal | undefined {
  if (cell === '') return undefined;
  if (typeof cell === 'object') {
    throw new TradeError('notANumber', label, `is ${cell.error}`, cell.sentence ?? 'put that cell right first');
  }
  const [from, factor] = SHEET_UNITS[sheetUnit] ?? [unit, 1];
  const read = number({ sign: 'positive', hint: 'enter a length', millimetres: from === 'mm' });
  return convertLength(read(cell, label).times(factor), from, unit);
}

/** A whole number of pieces out of a cell; undefined where the cell is blank. */
export function countOfCell(cell: CellValue, label: string): number | undefined {
  if (cell === '') return undefined;
  if (typeof cell === 'object') throw new TradeError('notANumber', label, `is ${cell.error}`, 'put that cell right first');
  const value = number({ sign: 'notNegative', marks: 'noLength', hint: 'enter a whole number', like: '12' })(cell, label);
  if (!value.isInteger()) throw new TradeError('range', label, `is ${value}`, 'enter a whole number');
  return value.toNumber();
}

/** Length as people write it: whole millimetres or tenths, or inches with a fraction where it is one of 64ths. */
export function lengthText(length: Decimal, unit: LengthUnit): string {
  if (unit === 'mm') return length.toDecimalPlaces(2).toString();
  const sixtyFourths = length.times(64);
  if (!sixtyFourths.isInteger()) return length.toDecimalPlaces(4).toString();
  const whole = length.floor();
  let [top, bottom] = [sixtyFourths.minus(whole.times(64)).toNumber(), 64];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  if (top === 0) return whole.toString();
  return `${whole.isZero() ? '' : `${whole} `}${top}/${bottom}`;
}
