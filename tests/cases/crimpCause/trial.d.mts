/** A crimp of a simulated book, in tolerances. */
export interface TrialCrimp {
  c: string;
  g?: string;
  t?: number;
  d: number;
}
export interface TrialTruth {
  readonly m: number;
  readonly C: ReadonlyMap<string, number>;
  readonly D: ReadonlyMap<string, number>;
}
export interface TrialBook {
  readonly rows: TrialCrimp[];
  readonly sig: number;
  readonly truth: TrialTruth;
}
export interface TrialAnalysis {
  readonly finding?: string;
  readonly best: number;
  readonly info: readonly { readonly s: number; readonly fit: number; readonly w: number; readonly m: number; readonly T: readonly number[] }[];
  readonly names: readonly string[];
  readonly dies: readonly string[];
  readonly text: readonly string[];
}
export interface TrialDecision {
  readonly m: number;
  readonly mSure: boolean;
  readonly blank?: boolean;
  readonly C: ReadonlyMap<string, number>;
  readonly D: ReadonlyMap<string, number>;
  readonly Cu: ReadonlySet<string>;
  readonly Du: ReadonlySet<string>;
}
export function book(size: string, scenario: string, seed: number, options?: { bare?: boolean; sigma?: number; tau?: number; twoDies?: boolean }): TrialBook;
export function analyse(rows: readonly TrialCrimp[], tolerance: number): TrialAnalysis;
export function decide(analysis: TrialAnalysis): TrialDecision;
export function report(
  analysis: TrialAnalysis,
  tQuantile: (p: number, df: number) => number,
  confidence?: number,
): { m: number; half: number; s: number; df: number };
export function next(analysis: TrialAnalysis): { k: number; g: number; crimps: number; other: boolean; gain?: number } | null;
/** The rule before this one. */
export function today(
  rows: readonly TrialCrimp[],
  tolerance: number,
): { readonly finding: string; readonly m: number; readonly own: readonly (readonly [string, number])[] };
export function tQ(p: number, df: number): number;
