import type { CutPlan, CutPlanProblem } from '../../../core/cutplan/cutPlan';
import { TradeError, type TradeErrorCode } from '../../../core/tradeError';
import { Decimal } from '../../../core/units/decimal';

/** What goes to the worker. Decimals travel as text. */
export type ToWorker = { readonly kind: 'solve'; readonly problem: unknown } | { readonly kind: 'cancel' };

/** What comes back. */
export type FromWorker =
  | { readonly kind: 'progress'; readonly best: number | undefined; readonly bound: number }
  | { readonly kind: 'plan'; readonly plan: unknown }
  | { readonly kind: 'refusal'; readonly error: readonly [TradeErrorCode, string, string, string] }
  | { readonly kind: 'failure'; readonly message: string };

/** Mark of a decimal among plain values. */
const MARK = 'decimal';

/** A problem or plan as plain values that can be posted: every decimal becomes `{ decimal: '1.5' }`. */
export function packed(value: unknown): unknown {
  if (Decimal.isDecimal(value)) return { [MARK]: value.toString() };
  if (Array.isArray(value)) return value.map(packed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, packed(part)]));
}

function unpacked(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(unpacked);
  if (typeof value !== 'object' || value === null) return value;
  const decimal = (value as Record<string, unknown>)[MARK];
  if (typeof decimal === 'string') return new Decimal(decimal);
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, unpacked(part)]));
}

/** The way back for a problem. */
export const problemOfMessage = (value: unknown): CutPlanProblem => unpacked(value) as CutPlanProblem;

/** The way back for a plan. */
export const planOfMessage = (value: unknown): CutPlan => unpacked(value) as CutPlan;

/** A TradeError as plain values, and back. */
export const refusalOf = ({ code, argument, received, advice }: TradeError) => [code, argument, received, advice] as const;
export const errorOfRefusal = (error: ReturnType<typeof refusalOf>): TradeError => new TradeError(...error);
