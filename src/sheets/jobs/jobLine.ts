import type { Measure } from '../../cells/sheetCell';
import type { Length } from '../../core/units/lengthUnit';

/** What a job sheet itself says of the crimp of an end; undefined where it does not. */
export interface SheetEnd {
  readonly fitting: string;
  readonly ferrule: string;
  readonly die: string;
  readonly dial: string;
  readonly target: Length | undefined;
  readonly smallest: Length | undefined;
  readonly largest: Length | undefined;
  readonly crimpLength: Length | undefined;
  readonly skiveOutside: Length | undefined;
  readonly skiveInside: Length | undefined;
  readonly insertionDepth: Length | undefined;
  readonly angle: number | undefined;
}

/** Whether a line may be made: the one answer for cut list, order, cards, tags, quotes, purchase and records. */
export type Standing =
  | { readonly kind: 'ready'; readonly partsChecked: boolean }
  | { readonly kind: 'stop'; readonly reasons: readonly string[] }
  | { readonly kind: 'done'; readonly status: string }
  /** With why it must not be made all the same: it may want more pieces than are planned. */
  | { readonly kind: 'planned'; readonly reasons: readonly string[] };

/** Pressure that an assembly may be used at, and what sets it. */
export interface RatedPressure extends Measure {
  readonly from: 'sheet' | 'weakest part';
}

/** One line of a job sheet. Lengths carry the unit that the sheet gives them in. */
export interface JobLine {
  readonly sheet: string;
  /** As the sheet shows it. */
  readonly row: number;
  /** The line as the sheet calls it; its row number where it has no such column. */
  readonly line: string;
  readonly label: string;
  readonly order: string;
  readonly assembly: string;
  /** As the cell has it; "" where the sheet does not say. */
  readonly due: string;
  readonly status: string;
  readonly hose: string;
  /** Both couplings; "" where an end stays plain hose. */
  readonly ends: readonly [SheetEnd, SheetEnd];
  /** Undefined where its cell cannot be read: then the line is a STOP. */
  readonly quantity: number | undefined;
  readonly overall: Length | undefined;
  /** What to cut: as the sheet says; for a hose alone its length. */
  readonly cutLength: Length | undefined;
  readonly limits: { readonly shortest: Length; readonly longest: Length } | undefined;
  readonly bore: Length | undefined;
  readonly twist: number | undefined;
  /** The weakest part's, derated at the line's temperature; a pressure of the sheet only where it is lower. */
  readonly pressure: RatedPressure | undefined;
  readonly temperature: Measure | undefined;
  /** The catalogue says what the hose loses when it is hot. */
  readonly hasDerating: boolean;
  readonly fluid: string;
  readonly guard: string;
  readonly note: string;
  readonly crimper: string;
  /** Whom it is for; "" where the sheet does not say. */
  readonly customer: string;
  readonly standing: Standing;
  /** Something to know about it though it can be made. */
  readonly notes: readonly string[];
  /** Addresses of the cells that are not blank, for formulas. */
  readonly places: Readonly<Partial<Record<JobPlace, string>>>;
}

/** Cells of a line that formulas of a paper refer to. */
export type JobPlace =
  'hose' | 'fittingA' | 'fittingB' | 'overall' | 'cutLength' | 'quantity' | 'guard' | 'label' | 'line' | 'temperature' | 'fluid';

/** True where nothing speaks against making it now. */
export const isReady = ({ standing }: JobLine): boolean => standing.kind === 'ready';

/** Why a line must not be made, in one sentence; "" where it may. */
export const stopSentence = ({ standing }: JobLine): string => (standing.kind === 'stop' ? standing.reasons.join('; ') : '');

/** Quantity of a line that may be made. */
export const quantityOf = ({ quantity }: JobLine): number => quantity ?? 0;
