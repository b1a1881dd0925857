/**
 * What kind of mistake it is. `unsettled`: no answer was found, though there may be one. `notFound` and `notApproved` become #N/A in a cell, everything else #VALUE!.
 */
export type TradeErrorCode =
  | 'blank'
  | 'notANumber'
  | 'date'
  | 'range'
  | 'unit'
  | 'shape'
  | 'choice'
  | 'impossible'
  | 'unsettled'
  | 'notFound'
  | 'notApproved';

/** The one error of the trade's arithmetic: which argument, what came, what to do. */
export class TradeError extends Error {
  /** What kind of mistake it is. */
  readonly code: TradeErrorCode;
  /** The argument as the user knows it, e.g. `cut-off A`; empty where no single argument is at fault. */
  readonly argument: string;
  /** What came, as text ready to be shown; empty where nothing came. */
  readonly received: string;
  /** What to do about it: one or two sentences. */
  readonly advice: string;

  constructor(code: TradeErrorCode, argument: string, received: string, advice: string) {
    super([argument, received].filter(Boolean).join(' ') + (argument || received ? ': ' : '') + advice);
    this.name = 'TradeError';
    this.code = code;
    this.argument = argument;
    this.received = received;
    this.advice = advice;
  }
}
