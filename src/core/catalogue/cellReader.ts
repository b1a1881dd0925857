import { shortText } from '../quotedText';
import { Decimal } from '../units/decimal';
import { convertMeasure, type MeasureUnit } from '../units/measureUnit';
import { commaAdvice, numberFromText } from '../units/numberText';
import { ambiguousDate, looksLikeDate, momentNumber } from '../units/sheetDate';
import { cellNumber } from './cellNumber';
import type { TableColumn } from './headings';
import type { RawCell, RawError } from './rawTable';
import type { Field } from './tableSchema';

/** A value of a catalogue row. */
export type Value = string | number;

/** A cell that could not be read: what was expected instead. */
export class Misread {
  constructor(readonly expected: string) {}
}

type Filled = Exclude<RawCell, null | RawError>;

/** Reads one filled cell of a column. */
export type FieldReader = (cell: Filled) => Value | Misread;

const LARGEST = 1e9;
const YES = new Set(['yes', 'y', 'x', 'true', '✓']);
const NO = new Set(['no', 'n', 'false', '-', '–']);

const readText: FieldReader = cell => (typeof cell === 'boolean' ? String(cell).toUpperCase() : String(cell).trim());

const readDate: FieldReader = cell => {
  const moment = typeof cell === 'boolean' ? undefined : momentNumber(cell);
  if (moment !== undefined) return moment;
  const either = typeof cell === 'string' ? ambiguousDate(cell) : undefined;
  return new Misread(either ? `a date (${either})` : 'a date, like 2025-03-14 or 2025-03-14 15:30');
};

function expectedNumber(field: Field, unit: MeasureUnit | undefined): string {
  const what = unit
    ? `a number in ${isInches(unit) ? 'inches' : unit.symbol}`
    : field.kind === 'fraction'
      ? 'a fraction of 0 … 1 (4 % is 0.04)'
      : 'a number';
  return what + (field.sign === 'positive' ? ', more than 0' : field.sign === 'notNegative' ? ', not less than 0' : '');
}

const isInches = (unit: MeasureUnit | undefined) => unit?.symbol === 'in';

function typed(cell: Filled, unit: MeasureUnit | undefined): number | undefined {
  if (typeof cell === 'number') return Number.isFinite(cell) ? cellNumber(cell) : undefined;
  const found = typeof cell === 'string' ? numberFromText(cell) : undefined;
  if (!found || (found.mark === 'inch' && !isInches(unit))) return undefined;
  return cellNumber(found.value);
}

const inRange = (value: number, { sign, kind }: Field) =>
  Math.abs(value) <= LARGEST &&
  (sign !== 'positive' || value > 0) &&
  (sign !== 'notNegative' || value >= 0) &&
  (kind !== 'fraction' || (value >= 0 && value <= 1));

function numberReader({ field, unit, percent }: TableColumn, to: MeasureUnit | undefined): FieldReader {
  const expected = expectedNumber(field, unit);
  const same = !unit || !to || unit.symbol === to.symbol;
  return cell => {
    let value = typed(cell, unit);
    if (value === undefined) {
      const comma = typeof cell === 'string' ? commaAdvice(cell) : undefined;
      return new Misread(comma ? `${expected} (${comma})` : expected);
    }
    if (field.mayBeDate && looksLikeDate(value)) {
      return new Misread(`${expected} (that looks like a date; format the cell as text and type the fraction again)`);
    }
    if (percent && field.kind === 'fraction') value = cellNumber(new Decimal(value).div(100));
    if (!inRange(value, field)) return new Misread(expected);
    if (Object.is(value, -0)) return 0;
    return same ? value : cellNumber(convertMeasure(new Decimal(value), unit, to));
  };
}

function angleReader(column: TableColumn): FieldReader {
  const read = numberReader(column, undefined);
  return cell => {
    const text = typeof cell === 'string' ? cell.trim().toLowerCase() : undefined;
    if (text === 'straight') return 0;
    return read(text === undefined ? cell : text.replace(/\s*(?:°|º|deg)$/, ''));
  };
}

function yesOrNo(cell: Filled): 'yes' | 'no' | undefined {
  const word = String(cell).trim().toLowerCase();
  return YES.has(word) ? 'yes' : NO.has(word) ? 'no' : undefined;
}

const readYesNo: FieldReader = cell => yesOrNo(cell) ?? new Misread('yes or no');

/** A vacuum is a pressure (its sign does not matter) or yes or no. Without a unit in its heading, a number says yes and no more. */
function vacuumReader(column: TableColumn, to: MeasureUnit | undefined): FieldReader {
  const read = numberReader(column, to);
  return cell => {
    const word = yesOrNo(cell);
    if (word) return word;
    const value = read(cell);
    if (typeof value !== 'number') return new Misread(`a pressure in ${(column.unit ?? to)!.symbol}, yes or no`);
    return column.unit || value === 0 ? Math.abs(value) : 'yes';
  };
}

/** How a column's cells are read; numbers are turned into the unit `to`. */
export function cellReader(column: TableColumn, to: MeasureUnit | undefined): FieldReader {
  switch (column.field.kind) {
    case 'name':
    case 'text':
      return readText;
    case 'date':
      return readDate;
    case 'yesNo':
      return readYesNo;
    case 'angle':
      return angleReader(column);
    case 'vacuum':
      return vacuumReader(column, to);
    default:
      return numberReader(column, to);
  }
}

/** A cell that came, as it is quoted in a problem. */
export function quotedCell(cell: RawCell | undefined): string {
  if (cell === null || cell === undefined) return 'blank';
  if (typeof cell === 'object') return cell.error;
  if (typeof cell !== 'string') return String(cell).toUpperCase();
  return cell.trim() === '' ? 'blank' : `"${shortText(cell)}"`;
}
