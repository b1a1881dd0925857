import type { CutPlan, CutPlanProblem, CutPlanRow } from '../../core/cutplan/cutPlan';
import { TradeError, type TradeErrorCode } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { errorSentence } from '../../workbook/errorSentence';

/** A message between page and worker: plain data, decimals as text. */
export type ToWorker = { readonly problem: Plain<CutPlanProblem> } | { readonly cancel: true };

/** What the worker answers: that it lives, how far it is, the plan, or why there is none. */
export type FromWorker =
  | { readonly ready: true }
  | { readonly best: number | undefined; readonly bound: number }
  | { readonly plan: Plain<CutPlan> }
  | { readonly error: PlainError };

/** The same shape with decimals as text. */
export type Plain<T> = T extends Decimal
  ? string
  : T extends readonly (infer U)[]
    ? readonly Plain<U>[]
    : T extends object
      ? { readonly [K in keyof T]: Plain<T[K]> }
      : T;

/** An error on its way; without `code` it is a defect. */
export interface PlainError {
  readonly code?: TradeErrorCode;
  readonly argument: string;
  readonly received: string;
  readonly advice: string;
}

/** Decimals turned into text, all the way down. */
export function plain<T>(value: T): Plain<T> {
  if (value instanceof Decimal) return (value as Decimal).toFixed() as Plain<T>;
  if (Array.isArray(value)) return value.map(plain) as Plain<T>;
  if (typeof value !== 'object' || value === null) return value as Plain<T>;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, plain(inner)])) as Plain<T>;
}

const decimal = (text: string | undefined) => (text === undefined ? undefined : new Decimal(text));

/** The problem as the solver takes it. */
export function problemFrom(given: Plain<CutPlanProblem>): CutPlanProblem {
  const rows = <R extends { readonly length: string }>(list: readonly R[]) =>
    list.map(row => ({ ...row, length: new Decimal(row.length) }));
  return {
    ...given,
    pieces: rows(given.pieces),
    stock: rows(given.stock),
    kerf: new Decimal(given.kerf),
    squaring: decimal(given.squaring),
    keep: decimal(given.keep),
    handling: decimal(given.handling),
  };
}

/** The plan as the solver made it. */
export function planFrom(given: Plain<CutPlan>): CutPlan {
  const row = ({ stock, times, cuts, used, left }: Plain<CutPlanRow>): CutPlanRow => ({
    stock: new Decimal(stock),
    times,
    cuts: cuts.map(({ length, count }) => ({ length: new Decimal(length), count })),
    used: new Decimal(used),
    left: new Decimal(left),
  });
  const { used, left, loss, bound } = given;
  return {
    ...given,
    rows: given.rows.map(row),
    used: new Decimal(used),
    left: new Decimal(left),
    loss: new Decimal(loss),
    bound: new Decimal(bound),
  };
}

/** An error made ready for its way. */
export function plainError(error: unknown): PlainError {
  if (error instanceof TradeError) {
    const { code, argument, received, advice } = error;
    return { code, argument, received, advice };
  }
  return { argument: '', received: '', advice: errorSentence(error) };
}

/** The error as it was thrown. */
export function errorFrom({ code, argument, received, advice }: PlainError): Error {
  return code ? new TradeError(code, argument, received, advice) : new Error(advice);
}
