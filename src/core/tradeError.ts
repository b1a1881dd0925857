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

/** An error without the list of calls that led to it: making that list takes longer than a row of a sheet, and nobody reads it. */
const Answer = class {} as new () => Error;
Object.setPrototypeOf(Answer.prototype, Error.prototype);

/** The one error of the trade's arithmetic: which argument, what came, what to do. It is an answer to a person, not a defect. */
export class TradeError extends Answer {
  /** What kind of mistake it is. */
  readonly code: TradeErrorCode;
  /** The argument as the user knows it, e.g. `cut-off A`; empty where no single argument is at fault. */
  readonly argument: string;
  /** What came, as text ready to be shown; empty where nothing came. */
  readonly received: string;
  /** What to do about it: one or two sentences. */
  readonly advice: string;

  constructor(code: TradeErrorCode, argument: string, received: string, advice: string) {
    super();
    const what = [argument, received].filter(Boolean).join(' ');
    this.message = what ? `${what}: ${advice}` : advice;
    this.name = 'TradeError';
    this.code = code;
    this.argument = argument;
    this.received = received;
    this.advice = advice;
  }
}
