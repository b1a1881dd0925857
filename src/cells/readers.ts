import { shortText } from '../core/quotedText';
import type { Decimal } from '../core/units/decimal';
import { decimalOfCell, scaled } from '../core/units/scaledDecimal';
import { commaAdvice, numberFromText } from '../core/units/numberText';
import { looksLikeDate } from '../core/units/sheetDate';
import { TradeError } from '../core/tradeError';
import type { CellContent } from './cellContent';

/** A cell that is neither blank nor an error. */
export type FilledCell = Exclude<CellContent, null | object>;

/** Reads one filled cell, or throws a TradeError that names the argument. */
export type CellReader<T> = (cell: FilledCell, label: string) => T;

/** The same reader, which remembers its texts: a column repeats them. */
export function readingOnce<T>(read: CellReader<T>): CellReader<T> {
  const known = new Map<string, T>();
  return (cell, label) => {
    if (typeof cell !== 'string') return read(cell, label);
    if (!known.has(cell)) known.set(cell, read(cell, label));
    return known.get(cell)!;
  };
}

/** What a number may be. */
export interface NumberRules {
  /** Sign allowed: `any`, `notNegative`, or `positive` (0 is an error). Default `any`. */
  readonly sign?: 'any' | 'notNegative' | 'positive';
  /** A whole number of 36,526 … 73,050 is a date that the sheet made of a fraction. */
  readonly mayBeDate?: boolean;
  /** 0 means that the host turned a blank into 0. */
  readonly zeroIsBlank?: boolean;
  /** What to enter instead, shown after the error; default `enter a number`. */
  readonly hint?: string;
  /** Numbers as they may be entered, shown after the hint; default `12.5, 3/8 or 1 1/2`. */
  readonly like?: string;
  /** True where the call is in millimetres, so that a number with an inch or foot mark is in the wrong unit. */
  readonly millimetres?: boolean;
  /**
   * What an inch or foot mark means elsewhere: that the number is to count inches (default) or feet, a unit that a metric call refuses
   * (`refused`), or nothing, since the number is no length (`noLength`).
   */
  readonly marks?: 'inches' | 'feet' | 'refused' | 'noLength';
}

const LARGEST = decimalOfCell(1e9);

/** A received cell as it is quoted in an error sentence. */
export function quoted(cell: FilledCell): string {
  return typeof cell === 'string' ? `"${shortText(cell)}"` : String(cell).toUpperCase();
}

function unreadable(cell: FilledCell, { hint = 'enter a number', like = '12.5, 3/8 or 1 1/2' }: NumberRules): string {
  return (typeof cell === 'string' ? commaAdvice(cell) : undefined) ?? `${hint}, like ${like}`;
}

function wrongMark({ hint = 'enter a number', millimetres, marks }: NumberRules): string | undefined {
  if (millimetres) return 'that is in inches, but this call is in mm; use one unit for all lengths';
  if (marks === 'refused') return 'that is in inches, but this call is metric; use one system of units';
  return marks === 'noLength' ? `inch and foot marks belong to lengths; ${hint} without one` : undefined;
}

function decimalOf(cell: FilledCell, label: string, rules: NumberRules): Decimal {
  if (typeof cell === 'number' && Number.isFinite(cell)) return decimalOfCell(cell);
  const found = typeof cell === 'string' ? numberFromText(cell) : undefined;
  if (!found) throw new TradeError('notANumber', label, `is ${quoted(cell)}`, unreadable(cell, rules));
  const value = scaled(found.value);
  if (found.mark === 'none') return value;
  const wrong = wrongMark(rules);
  if (wrong) throw new TradeError('unit', label, `is ${quoted(cell)}`, wrong);
  return rules.marks === 'feet' ? value.div(12) : value;
}

/** A reader of numbers and of numbers that arrived as text. */
export function number(rules: NumberRules = {}): CellReader<Decimal> {
  const { sign = 'any', mayBeDate = false, zeroIsBlank = false } = rules;
  return (cell, label) => {
    const value = decimalOf(cell, label, rules);
    const received = () => `is ${typeof cell === 'string' ? quoted(cell) : value.toString()}`;
    if (value.abs().gt(LARGEST))
      throw new TradeError('range', label, received(), 'that is too large to be right; check the cell');
    if (mayBeDate && looksLikeDate(value.toNumber())) {
      throw new TradeError(
        'date',
        label,
        received(),
        'that looks like a date; format the cell as text and type the fraction again',
      );
    }
    if (zeroIsBlank && value.isZero()) throw new TradeError('blank', label, 'is blank or zero', 'fill it in');
    if (sign === 'positive' && value.lte(0)) throw new TradeError('range', label, received(), 'it must be more than 0');
    if (sign === 'notNegative' && value.lt(0)) throw new TradeError('range', label, received(), 'it must not be less than 0');
    return value;
  };
}

/** The longest text that can stand in a formula: no name is longer, and a sentence that quotes one fits its cell. */
const LONGEST_TEXT = 255;

/** A reader of text; a number is taken as its text (part names may be numbers). A text too long for a name is cut off. */
export const text: CellReader<string> = cell => {
  const whole = String(cell).trim();
  return whole.length > LONGEST_TEXT ? `${whole.slice(0, LONGEST_TEXT)}…` : whole;
};

/** A reader of one word out of a list, without case and outer spaces; spaces inside count as one, of whatever kind they are. */
export function choice<T extends string>(...options: readonly T[]): CellReader<T> {
  return (cell, label) => {
    const wanted = String(cell).trim().replace(/\s+/g, ' ').toLowerCase();
    const found = options.find(option => option.toLowerCase() === wanted);
    if (found === undefined) {
      throw new TradeError('choice', label, `is ${quoted(cell)}`, `enter ${options.map(option => `"${option}"`).join(' or ')}`);
    }
    return found;
  };
}
