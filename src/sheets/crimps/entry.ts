import type { Decimal } from '../../core/units/decimal';
import type { EntrySlot } from './entrySlot';
import type { Judgement } from './judgeSlot';
import type { SlotWriting } from './writeSlot';

/** A crimp that was entered. */
export interface EntryResult {
  /** With the dial that was used. */
  readonly slot: EntrySlot;
  /** As it stood in the sheet. */
  readonly before: EntrySlot;
  readonly index: number;
  readonly readings: readonly Decimal[];
  readonly judgement: Judgement;
  readonly writing: SlotWriting;
}

/** Something that stops the entry at a field: a refusal, or a question that Enter answers with yes. */
export interface Stop {
  readonly kind: 'refused' | 'ask' | 'overwrite';
  readonly sentence: string;
}

/** Where the entry stands. Pure data; the view shows it and sends actions. */
export interface EntryState {
  readonly slots: readonly EntrySlot[];
  /** Position of the slot in work; slots.length = all are done. */
  readonly index: number;
  readonly texts: readonly string[];
  readonly field: number;
  /** Grows whenever the field in work is to be shown and marked, ready to be typed over; typing leaves it. */
  readonly turn: number;
  /** Dial as typed; what stands in the sheet or is suggested until it is changed. */
  readonly dialText: string;
  readonly stop: Stop | undefined;
  /** Readings that were asked about and kept, as typed. */
  readonly kept: readonly string[];
  readonly uncertainty: Decimal | undefined;
  /** Crimps to be written, in order; the view writes them one by one and answers with `written` or `failed`. */
  readonly pending: readonly EntryResult[];
  /** What was typed into slots that are not written, by their position: nothing typed is lost by moving on. */
  readonly drafts: Readonly<Record<number, readonly string[]>>;
  readonly done: readonly EntryResult[];
  readonly last: EntryResult | undefined;
  readonly failure: { readonly result: EntryResult; readonly sentence: string } | undefined;
}

export type EntryAction =
  | { readonly type: 'open'; readonly slots: readonly EntrySlot[]; readonly startRow?: number | undefined }
  | { readonly type: 'type'; readonly field: number; readonly text: string }
  | { readonly type: 'dial'; readonly text: string }
  | { readonly type: 'uncertainty'; readonly value: Decimal | undefined }
  | { readonly type: 'focus'; readonly field: number }
  | { readonly type: 'enter' }
  | { readonly type: 'back' | 'forward' | 'escape' | 'skip' | 'previous' }
  | { readonly type: 'goTo'; readonly index: number }
  | { readonly type: 'written'; readonly result: EntryResult }
  | { readonly type: 'failed'; readonly result: EntryResult; readonly sentence: string }
  | { readonly type: 'undone'; readonly result: EntryResult };

export const EMPTY_ENTRY: EntryState = {
  slots: [],
  index: 0,
  texts: [],
  field: 0,
  turn: 0,
  dialText: '',
  stop: undefined,
  kept: [],
  uncertainty: undefined,
  pending: [],
  drafts: {},
  done: [],
  last: undefined,
  failure: undefined,
};
