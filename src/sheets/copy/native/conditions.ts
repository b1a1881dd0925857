import type { NativeArgument } from './nativeFunction';
import { NotNative } from '../notNative';

/** What a number may be, as our functions read it. */
export interface NumberLimits {
  readonly sign?: 'any' | 'notNegative' | 'positive' | 'notZero';
  /** A whole number that looks like a date is refused. */
  readonly mayBeDate?: boolean;
}

/** Larger numbers are refused as typing errors, by functions and copies alike. */
const LARGEST = '1000000000';
const [FIRST_DATE, LAST_DATE] = [36_526, 73_050];

export const anyOf = (conditions: readonly string[]): string =>
  conditions.length === 1 ? conditions[0]! : `OR(${conditions.join(',')})`;

const SIGNS: Readonly<Record<NonNullable<NumberLimits['sign']>, (x: string) => string[]>> = {
  any: () => [],
  notNegative: x => [`${x}<0`],
  positive: x => [`${x}<=0`],
  notZero: x => [`${x}=0`],
};

function limitsOf(x: string, { sign = 'any', mayBeDate = false }: NumberLimits): string[] {
  const large = sign === 'positive' || sign === 'notNegative' ? `${x}>${LARGEST}` : `ABS(${x})>${LARGEST}`;
  const date = mayBeDate ? [`AND(${x}>=${FIRST_DATE},${x}<=${LAST_DATE},${x}=INT(${x}))`] : [];
  return [...SIGNS[sign](x), large, ...date];
}

function isWithin(value: number, { sign = 'any', mayBeDate = false }: NumberLimits): boolean {
  if (sign === 'positive' ? value <= 0 : sign === 'notNegative' ? value < 0 : sign === 'notZero' && value === 0) return false;
  return Math.abs(value) <= 1e9 && !(mayBeDate && Number.isInteger(value) && value >= FIRST_DATE && value <= LAST_DATE);
}

/** True where a constant is a number that the function takes, so that nothing has to be asked of it in the formula. */
function isSettled({ isConstant, value }: NativeArgument, limits: NumberLimits): boolean {
  if (!isConstant) return false;
  if (typeof value === 'number' && isWithin(value, limits)) return true;
  throw new NotNative('the formula holds a constant that the function refuses');
}

/** Conditions under which a number that is needed is refused. */
export function refusedNumber(argument: NativeArgument, limits: NumberLimits = {}): string[] {
  if (isSettled(argument, limits)) return [];
  return [`COUNT(${argument.text})=0`, ...limitsOf(argument.text, limits)];
}

/** Conditions under which a number that may be left out is refused. */
export function refusedOptional(argument: NativeArgument | undefined, limits: NumberLimits = {}): string[] {
  if (!argument || isSettled(argument, limits)) return [];
  const x = argument.text;
  return [`IF(${x}="",FALSE(),${anyOf([`COUNT(${x})=0`, ...limitsOf(x, limits)])})`];
}

/** A number that may be left out, as 0 where it is. */
export function orZero(argument: NativeArgument | undefined): string {
  if (!argument) return '0';
  return argument.isConstant ? argument.text : `N(${argument.text})`;
}

/** `yes` where a number that may be left out is there, else `no`. */
export function ifThere(argument: NativeArgument | undefined, yes: string, no: string): string {
  if (!argument) return no;
  return argument.isConstant ? yes : `IF(${argument.text}="",${no},${yes})`;
}

/**
 * A row's formula: blank while the row is not filled in, #N/A where the function refuses it.
 * @param ofCall what is refused for the whole call, whether the row is filled in or not
 */
export function rowFormula(isBlank: string, refused: readonly string[], result: string, ofCall: readonly string[] = []): string {
  const value = refused.length > 0 ? `IF(${anyOf(refused)},NA(),${result})` : result;
  const row = isBlank === '' ? value : `IF(${isBlank},"",${value})`;
  return ofCall.length > 0 ? `IF(${anyOf(ofCall)},NA(),${row})` : row;
}

/** The condition under which a row is not filled in: its first argument is blank. */
export function blankKey(argument: NativeArgument): string {
  return argument.isConstant ? '' : `${argument.text}=""`;
}

/** Sums and differences at 9 decimals, so that binary noise decides nothing. */
export const rounded = (expression: string): string => `ROUND(${expression},9)`;
