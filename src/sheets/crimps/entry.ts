import type { Decimal } from '../../core/units/decimal';
import type { CrimpRow } from './crimpRow';
import type { Judgement } from './judgeCrimpRow';
import type { EntryWriting } from './entryWriting';

/** A crimp that was entered. */
export interface EntryResult {
  /** With the dial that was used, and with what its cells hold then. */
  readonly row: CrimpRow;
  /** As it was in the sheet. */
  readonly before: CrimpRow;
  readonly index: number;
  readonly readings: readonly Decimal[];
  readonly judgement: Judgement;
  readonly writing: EntryWriting;
}

/** Something that stops the entry at a field: a refusal, or a question that Enter answers with yes. */
export interface Stop {
  readonly kind: 'refused' | 'ask' | 'overwrite';
  readonly sentence: string;
}

/** What a reload must not lose, by the place of the crimp (see placeOf). */
export interface EntryMemory {
  /** Readings that were typed and are not written. */
  readonly drafts: Readonly<Record<string, readonly string[]>>;
  /** Dials that crimps were made at, as typed or left in their field, where the sheet does not hold them. */
  readonly dials: Readonly<Record<string, string>>;
}

export const NOTHING_REMEMBERED: EntryMemory = { drafts: {}, dials: {} };

/** Where the entry is. Pure data; the view shows it and sends actions. */
export interface EntryState {
  readonly rows: readonly CrimpRow[];
  /** Position of the row in work; rows.length = all are done. */
  readonly index: number;
  readonly texts: readonly string[];
  readonly field: number;
  /** Grows whenever the field in work is to be shown and marked, ready to be typed over; typing leaves it. */
  readonly turn: number;
  /** Dial as typed; what the sheet holds or is suggested until it is changed. */
  readonly dialText: string;
  readonly stop: Stop | undefined;
  /** Readings that were asked about and kept, as typed. */
  readonly kept: readonly string[];
  readonly uncertainty: Decimal | undefined;
  /** Who crimps and measures; "" = not said. */
  readonly operator: string;
  /** Crimps to be written, in order; the view writes them one by one and answers with `written` or `failed`. */
  readonly pending: readonly EntryResult[];
  /** Nothing typed is lost by moving on, or by reading the rows again. */
  readonly memory: EntryMemory;
  readonly done: readonly EntryResult[];
  readonly last: EntryResult | undefined;
  readonly failure: { readonly result: EntryResult; readonly sentence: string } | undefined;
}

export type EntryAction =
  | {
      readonly type: 'open';
      readonly rows: readonly CrimpRow[];
      readonly startRow?: number | undefined;
      /** What was remembered with the workbook before this pane was loaded. */
      readonly remembered?: EntryMemory | undefined;
    }
  | { readonly type: 'type'; readonly field: number; readonly text: string }
  | { readonly type: 'dial'; readonly text: string }
  | { readonly type: 'uncertainty'; readonly value: Decimal | undefined }
  | { readonly type: 'operator'; readonly text: string }
  | { readonly type: 'focus'; readonly field: number }
  /** `moment`: day and time as the sheet's number, for the row's own columns. */
  | { readonly type: 'enter'; readonly moment?: number | undefined }
  | { readonly type: 'back' | 'forward' | 'escape' | 'skip' | 'previous' }
  | { readonly type: 'goTo'; readonly index: number }
  | { readonly type: 'written'; readonly result: EntryResult }
  | { readonly type: 'failed'; readonly result: EntryResult; readonly sentence: string }
  | { readonly type: 'undone'; readonly result: EntryResult };

export const EMPTY_ENTRY: EntryState = {
  rows: [],
  index: 0,
  texts: [],
  field: 0,
  turn: 0,
  dialText: '',
  stop: undefined,
  kept: [],
  uncertainty: undefined,
  operator: '',
  pending: [],
  memory: NOTHING_REMEMBERED,
  done: [],
  last: undefined,
  failure: undefined,
};
