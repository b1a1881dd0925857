import type { Decimal } from '../units/decimal';

/** What is to be cut, from what. All lengths in one unit. */
export interface CutPlanProblem {
  readonly pieces: readonly { readonly length: Decimal; readonly quantity: number }[];
  /** Quantity undefined = unlimited. */
  readonly stock: readonly { readonly length: Decimal; readonly quantity?: number | undefined }[];
  /** Width of a cut. */
  readonly kerf: Decimal;
  /** Cut off every piece of stock first, to start square; default 0. */
  readonly squaring?: Decimal | undefined;
  /** Shortest offcut worth keeping; undefined: nothing left over is worth anything. */
  readonly keep?: Decimal | undefined;
  /** The length of stock that fetching one more piece of it from the rack is worth; default 0. */
  readonly handling?: Decimal | undefined;
  /** Lengths are worked in whole 0.1 mm or 1/64 in: stock rounded down, everything else up. */
  readonly unit: 'mm' | 'in';
  /** `any`: the first plan found ends the search, and where there is none, little is spent on naming what is short; default `best`. */
  readonly wanted?: 'best' | 'any' | undefined;
  /** How much work to spend, as seconds of an ordinary machine, and when to stop for safety; default 3. */
  readonly seconds?: number | undefined;
}

/** Pieces of stock that are cut alike. */
export interface CutPlanRow {
  readonly stock: Decimal;
  readonly times: number;
  /** Longest first. */
  readonly cuts: readonly { readonly length: Decimal; readonly count: number }[];
  /** Pieces and kerfs, per piece of stock. */
  readonly used: Decimal;
  /** What is left, per piece of stock, squaring taken off. */
  readonly left: Decimal;
}

/** A plan that cuts everything. */
export interface CutPlan {
  /** Longest stock first, longest cuts first. */
  readonly rows: readonly CutPlanRow[];
  readonly stockCut: number;
  readonly used: Decimal;
  readonly left: Decimal;
  /** Σ over the stock cut of v(before) − v(left) + handling; v(x) = x − keep and nothing below keep; without keep the stock counts whole. */
  readonly loss: Decimal;
  /** No plan loses less. */
  readonly bound: Decimal;
  /** True where the bound shows that no plan loses less than this one. */
  readonly isProven: boolean;
  /** (loss − bound) ÷ length of stock cut in %, rounded up to 0.01; 0 where proven. */
  readonly percentOver: number;
}
