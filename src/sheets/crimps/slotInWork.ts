import type { Decimal } from '../../core/units/decimal';
import { AS_ENTERED, combinationKey, isFilled, standingText, type EntrySlot } from './entrySlot';
import type { EntryState } from './entry';

/** A dial that follows from the combination's last crimp here. */
export interface SuggestedDial {
  readonly dial: Decimal;
  /** Whether that crimp asked for it, or was made at it and left it. */
  readonly why: 'asked' | 'used';
}

/** What the combination's last crimp here asked for, else the dial that was entered for it; undefined where neither is there. */
export function suggestedDial({ done, pending }: EntryState, slot: EntrySlot): SuggestedDial | undefined {
  const latest = [...done, ...pending].filter(result => combinationKey(result.slot) === combinationKey(slot)).at(-1);
  if (latest?.judgement.next.kind === 'move') return { dial: latest.judgement.next.to, why: 'asked' };
  const used = latest?.slot.dial;
  return used?.from === AS_ENTERED ? { dial: used.value, why: 'used' } : undefined;
}

/** The sheet's dial counts; where its cell is blank, what follows from the combination's last crimp, else the catalogue's. */
function assumedDial(state: EntryState, slot: EntrySlot): string {
  const suggested = slot.dialStanding === '' ? suggestedDial(state, slot) : undefined;
  return (suggested?.dial ?? slot.dial?.value)?.toString() ?? '';
}

/** Moves to a slot: its fields hold what was typed before or stands in the sheet, the first blank one is in work. */
export function at(state: EntryState, index: number): EntryState {
  const slot = state.slots[index];
  if (!slot) return { ...state, index, texts: [], field: 0, stop: undefined, kept: [], dialText: '' };
  const standing = slot.standing.map(standingText);
  const texts = state.drafts[index] ?? standing;
  const field = Math.max(
    0,
    texts.findIndex(text => text === ''),
  );
  return { ...state, index, texts, field, dialText: assumedDial(state, slot), stop: undefined, kept: standing };
}

/** True where something was typed into the slot in work that does not stand in the sheet. */
export function isTyped({ slots, index, texts }: EntryState): boolean {
  const slot = slots[index];
  return slot !== undefined && texts.some((text, field) => text !== standingText(slot.standing[field]!));
}

/** As `at`, keeping what was typed into the slot that is left. */
export function leaveFor(state: EntryState, index: number): EntryState {
  return at(isTyped(state) ? { ...state, drafts: { ...state.drafts, [state.index]: state.texts } } : state, index);
}

/** The next slot that waits for readings, from `from` on; slots.length where none does. */
export function nextOpen(slots: readonly EntrySlot[], from: number): number {
  const found = slots.findIndex((slot, index) => index >= from && !isFilled(slot) && !slot.problem);
  return found < 0 ? slots.length : found;
}

/** The next slot that can take readings, filled or not; slots.length where there is none. */
export function usableAfter(slots: readonly EntrySlot[], from: number): number {
  const found = slots.findIndex((slot, index) => index > from && !slot.problem);
  return found < 0 ? slots.length : found;
}

/** The slot before that can take readings; undefined where there is none. */
export function usableBefore(slots: readonly EntrySlot[], from: number): number | undefined {
  for (let index = Math.min(from, slots.length) - 1; index >= 0; index--) if (!slots[index]!.problem) return index;
  return undefined;
}
