import { TradeError } from '../core/tradeError';
import type { IncomingError } from './cellContent';

/** The five codes a worksheet function can return. Only #VALUE! and #N/A show their sentence in Excel. */
const RETURNABLE = new Set<string>(['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NULL!']);

function make(code: string, message?: string): CustomFunctions.Error {
  // An answer, as a TradeError is: the list of calls that led to it would take most of a row's time.
  const { stackTraceLimit } = Error;
  Error.stackTraceLimit = 0;
  const error = new CustomFunctions.Error(code as CustomFunctions.ErrorCode, message);
  Error.stackTraceLimit = stackTraceLimit;
  return error;
}

/** The one place where an error of the trade turns into a cell error. Anything but a TradeError is a defect and is thrown on. */
export function cellErrorOf(error: unknown): CustomFunctions.Error {
  if (!(error instanceof TradeError)) throw error;
  return make(error.code === 'notFound' || error.code === 'notApproved' ? '#N/A' : '#VALUE!', error.message);
}

/** An error value that came in, as it goes on: the five returnable ones unchanged, others as #N/A naming the original. */
export function passedOn(error: IncomingError, label: string): CustomFunctions.Error {
  if (RETURNABLE.has(error.code)) return make(error.code, error.message);
  return make('#N/A', `${label} holds ${error.code}: correct that cell first`);
}
