import { Decimal } from '../core/units/decimal';
import { TradeError } from '../core/tradeError';
import { cellErrorOf } from './cellError';

/** A value as the arithmetic gives it, ready for a cell. */
export type Answer = Decimal | number | string | boolean | CustomFunctions.Error | null | undefined;

/** A result for a cell: decimals as numbers, nothing as "" (blank); never NaN or Infinity. */
export function cellOf(answer: Answer): unknown {
  if (answer === null || answer === undefined) return '';
  const value = answer instanceof Decimal ? (answer as Decimal).toNumber() : answer;
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new TradeError('range', '', '', 'the result is too large for a cell; check the arguments');
  }
  return Object.is(value, -0) ? 0 : value;
}

/** Runs a whole call and throws a TradeError on as a cell error, the way a host expects it. */
export function answer<T>(call: () => T): T {
  try {
    return call();
  } catch (error) {
    if (error instanceof TradeError) throw cellErrorOf(error);
    throw error;
  }
}

/** As `answer`, for a call that takes its time. */
export async function answerLater<T>(call: () => Promise<T>): Promise<T> {
  try {
    return await call();
  } catch (error) {
    if (error instanceof TradeError) throw cellErrorOf(error);
    throw error;
  }
}

/** A table of results, or a single one, for the sheet. */
export function table(rows: readonly (readonly Answer[])[]): any[][] {
  return rows.map(row => row.map(cellOf));
}
