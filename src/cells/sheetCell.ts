import { TradeError } from '../core/tradeError';
import { Decimal } from '../core/units/decimal';
import { decimalOfCell } from '../core/units/scaledDecimal';
import { measureFromText } from '../core/units/measureText';
import type { MeasureUnit, Quantity } from '../core/units/measureUnit';
import { commaAdvice, hasOpenPoint, isTwoNumbers, numberFromText, type CommaRule } from '../core/units/numberText';
import { ambiguousDate, isDateFormat, looksLikeDate, momentNumber, type DateOrders } from '../core/units/sheetDate';
import { quoted } from './readers';

/** A cell of somebody's sheet as it is read: blank is "". */
export type SheetCell = string | number | boolean | { readonly error: string; readonly sentence?: string | undefined };

/** A number of a sheet with its unit; the two stay together until the arithmetic is called. */
export interface Measure {
  readonly value: Decimal;
  readonly unit: MeasureUnit;
}

/** How a comma that may mean decimals or thousands is taken: as its column says, or not at all. */
export type ColumnComma = CommaRule | 'thousands';

/** What is known of a cell's column. */
export interface ColumnRules {
  /** How the comma of `1,250` is taken. */
  readonly comma?: ColumnComma | undefined;
  /** Number format of the cell. */
  readonly format?: string | undefined;
  /** A tolerance may be written with its sign: `± 0.1`. */
  readonly eitherWay?: boolean | undefined;
  /** Default `positive`. */
  readonly sign?: 'any' | 'notNegative' | 'positive' | undefined;
}

const EITHER_WAY = /^\s*(?:±|\+\s*\/?\s*-)\s*/;
const LARGEST = new Decimal('1e9');

/** A comma with three digits behind it, taken as thousands. */
const withoutThousands = (text: string) => text.replace(/(?<=\d),(?=\d{3}(?!\d))/g, '');

const isBlank = (cell: SheetCell) => cell === '' || (typeof cell === 'string' && cell.trim() === '');

/** The text of a cell; "" for a blank and for an error value. */
export function nameOfCell(cell: SheetCell): string {
  return typeof cell === 'object' ? '' : String(cell).replace(/\s+/g, ' ').trim();
}

function refuseErrors(cell: SheetCell, label: string): asserts cell is string | number {
  if (typeof cell === 'object') {
    throw new TradeError('notANumber', label, `is ${cell.error}`, cell.sentence ?? 'correct that cell first');
  }
  if (typeof cell === 'boolean') throw new TradeError('notANumber', label, `is ${quoted(cell)}`, 'enter a number');
}

/** A point with three digits behind it, in a column whose commas are decimal ones: it may be either. */
function refuseOpenPoint(text: string, label: string, { comma }: ColumnRules): void {
  if (comma !== 'decimal' || !hasOpenPoint(text.replace(/(?<=\d)\s*[a-z]+\.?$/i, ''))) return;
  const advice = 'other cells of its column have decimal commas, so its point may mean thousands; write it as the others';
  throw new TradeError('notANumber', label, `is ${quoted(text)}`, advice);
}

function refuseSign(value: Decimal, label: string, { sign = 'positive' }: ColumnRules): Decimal {
  if (value.abs().gt(LARGEST))
    throw new TradeError('range', label, `is ${value}`, 'that is too large to be right; check the cell');
  if (sign === 'positive' && value.lte(0)) throw new TradeError('range', label, `is ${value}`, 'it must be more than 0');
  if (sign === 'notNegative' && value.lt(0)) throw new TradeError('range', label, `is ${value}`, 'it must not be less than 0');
  return value;
}

/** Text that a number is looked for in, and how its commas are taken. */
function textRead(text: string, comma: ColumnComma = 'refuse'): readonly [string, CommaRule] {
  return comma === 'thousands' ? [withoutThousands(text), 'refuse'] : [text, comma];
}

/**
 * A number with its unit out of a cell: the cell's own unit (`27.5 mm`, `4' 3 1/2"`), else that of its column.
 * @param unit of the column; undefined where nothing says it
 * @param why what to say where neither cell nor column has a unit
 * @returns undefined where the cell is blank
 * @throws TradeError naming `label`: an error value, no number, a date, no unit, the wrong sign
 */
export function measureOfCell(
  cell: SheetCell,
  label: string,
  quantity: Quantity,
  unit: MeasureUnit | undefined,
  rules: ColumnRules = {},
  why = 'its column has no unit: write it in the heading, like (mm)',
): Measure | undefined {
  if (isBlank(cell)) return undefined;
  refuseErrors(cell, label);
  if (typeof cell === 'number' && quantity === 'length' && isDateFormat(rules.format ?? '')) {
    const advice = 'the sheet made a date of what was typed; set the column to text and type it again';
    throw new TradeError('date', label, 'is a date', advice);
  }
  const whole = rules.eitherWay ? String(cell).replace(EITHER_WAY, '') : String(cell);
  const [text, comma] = textRead(whole, rules.comma);
  if (typeof cell === 'string') refuseOpenPoint(cell, label, rules);
  const found =
    typeof cell === 'number' ? { value: decimalOfCell(cell), unit: undefined } : measureFromText(quantity, text, comma);
  if (!found)
    throw new TradeError(
      'notANumber',
      label,
      `is ${quoted(cell)}`,
      commaAdvice(text) ?? 'enter a number, like 12.5, 3/8 or 27.5 mm',
    );
  const own = found.unit ?? unit;
  if (!own) throw new TradeError('unit', label, `is ${quoted(cell)}`, why);
  return { value: refuseSign(found.value, label, rules), unit: own };
}

/**
 * A number without a unit out of a cell: a dial, an angle, a count.
 * @returns undefined where the cell is blank
 * @throws TradeError naming `label`
 */
export function numberOfCell(cell: SheetCell, label: string, rules: ColumnRules = {}): Decimal | undefined {
  if (isBlank(cell)) return undefined;
  refuseErrors(cell, label);
  if (typeof cell === 'number') return refuseSign(decimalOfCell(cell), label, rules);
  const [text, comma] = textRead(cell.replace(/(?<=\d)\s*(?:°|×|x|pcs?\.?|pieces?|off|ea\.?|each|nos?\.?)$/i, ''), rules.comma);
  refuseOpenPoint(cell, label, rules);
  const found = isTwoNumbers(text) ? undefined : numberFromText(text, comma);
  if (found?.mark === 'inch') throw new TradeError('unit', label, `is ${quoted(cell)}`, 'inch and foot marks belong to lengths');
  if (!found) throw new TradeError('notANumber', label, `is ${quoted(cell)}`, commaAdvice(text) ?? 'enter a number, like 12');
  return refuseSign(found.value, label, rules);
}

/** A whole number of things out of a cell; undefined where the cell is blank. */
export function countOfCell(cell: SheetCell, label: string, rules: ColumnRules = {}): number | undefined {
  // `10/5` may be ten in five lots, or five of ten: nobody writes a count as a fraction.
  if (typeof cell === 'string' && /\d\s*\/\s*\d/.test(cell))
    throw new TradeError('notANumber', label, `is ${quoted(cell)}`, 'enter a whole number, like 12');
  const value = numberOfCell(cell, label, { sign: 'notNegative', ...rules });
  if (value && isDateFormat(rules.format ?? '') && looksLikeDate(value.toNumber())) {
    throw new TradeError('date', label, 'is a date', 'enter a whole number');
  }
  if (value && !value.isInteger()) throw new TradeError('range', label, `is ${value}`, 'enter a whole number');
  return value?.toNumber();
}

/**
 * A date, with its time of day, as the sheet's number.
 * @param orders of day and month in its column
 * @returns undefined where the cell is blank
 * @throws TradeError naming `label` where it is no date, or may be read either way round
 */
export function momentOfCell(cell: SheetCell, label: string, orders?: DateOrders): number | undefined {
  if (isBlank(cell)) return undefined;
  refuseErrors(cell, label);
  const moment = momentNumber(cell, orders);
  if (moment !== undefined) return moment;
  const advice = (typeof cell === 'string' && ambiguousDate(cell)) || 'enter a date, like 2026-11-29';
  throw new TradeError('date', label, `is ${quoted(cell)}`, advice);
}
