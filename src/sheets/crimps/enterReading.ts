import { quotedText } from '../../core/quotedText';
import type { Decimal } from '../../core/units/decimal';
import { numberFromText } from '../../core/units/numberText';
import { AS_ENTERED, type EntrySlot } from './entrySlot';
import type { EntryResult, EntryState, Stop } from './entry';
import { judgeSlot } from './judgeSlot';
import { checkReading, type ReadingLimits } from './readingCheck';
import { at, nextOpen } from './slotInWork';
import { overwritten, writingOf, type SlotWriting } from './writeSlot';

const stopAt = (state: EntryState, field: number, stop: Stop): EntryState => ({ ...state, field, stop });

/** The dial that the user corrected; undefined where it is as it stood. */
function correctedDial(slot: EntrySlot, text: string): Decimal | undefined | 'unreadable' {
  const typed = text.trim();
  if (typed === '' || typed === (slot.dial?.value.toString() ?? '')) return undefined;
  const found = numberFromText(typed);
  return found && found.mark === 'none' ? found.value : 'unreadable';
}

/** The dial that the row lacks and the bench confirmed by leaving it in its field. */
function confirmedDial({ dial, dialStanding }: EntrySlot, text: string): Decimal | undefined {
  return dialStanding === '' && text.trim() !== '' ? dial?.value : undefined;
}

function withoutDraft(drafts: EntryState['drafts'], index: number): EntryState['drafts'] {
  return Object.fromEntries(Object.entries(drafts).filter(([key]) => Number(key) !== index));
}

/** What stands in the dial's cell once that is written. */
function standingDialOf({ cells }: SlotWriting, { dialCell, dialStanding }: EntrySlot) {
  return cells.find(({ address }) => address === dialCell)?.after ?? dialStanding;
}

function complete(state: EntryState, slot: EntrySlot, readings: readonly Decimal[]): EntryState {
  const dial = correctedDial(slot, state.dialText);
  if (dial === 'unreadable') {
    return stopAt(state, state.field, {
      kind: 'refused',
      sentence: `Dial ${quotedText(state.dialText)} is no number: correct it first.`,
    });
  }
  if (slot.formulaCells.length > 0) {
    const sentence = `${slot.formulaCells.join(', ')} hold formulas: readings are not written over formulas.`;
    return stopAt(state, state.field, { kind: 'refused', sentence });
  }
  const noted = dial ?? confirmedDial(slot, state.dialText);
  const writing = writingOf(slot, readings, noted);
  const over = overwritten(writing);
  if (over && state.stop?.kind !== 'overwrite') return stopAt(state, state.field, { kind: 'overwrite', sentence: over });
  const used = dial ? { ...slot, dial: { value: dial, from: AS_ENTERED } } : slot;
  const judgement = judgeSlot(used, readings, state.uncertainty);
  const result: EntryResult = { slot: used, before: slot, index: state.index, readings, judgement, writing };
  const slots = state.slots.map((each, index) =>
    index === state.index
      ? { ...used, standing: readings.map(reading => reading.toNumber()), dialStanding: standingDialOf(writing, slot) }
      : each,
  );
  const drafts = withoutDraft(state.drafts, state.index);
  const pending = [...state.pending, result];
  return at({ ...state, slots, drafts, pending, last: result, failure: undefined }, nextOpen(slots, state.index + 1));
}

/** Enter: the field's reading is checked; then the next blank field, or the row is complete. */
export function enter(state: EntryState): EntryState {
  const slot = state.slots[state.index];
  if (!slot || slot.problem) return state;
  const limits = { unit: slot.unit, target: slot.target!.value, tolerance: slot.tolerance!.value };
  const { field } = state;
  const answer = checkReading(state.texts[field]!, limits);
  if (answer.kind === 'refused') return stopAt(state, field, answer);
  const isKept = state.kept[field] === state.texts[field];
  if (answer.kind === 'ask' && state.stop?.kind !== 'ask' && !isKept) return stopAt(state, field, answer);
  const kept = state.kept.map((text, index) => (index === field ? state.texts[field]! : text));
  const blank = state.texts.findIndex((text, index) => index > field && text.trim() === '');
  const next = field + 1 < state.texts.length ? field + 1 : state.texts.findIndex(text => text.trim() === '');
  if (field + 1 < state.texts.length || next >= 0) {
    return { ...state, kept, stop: undefined, field: blank >= 0 ? blank : next };
  }
  return completeChecked({ ...state, kept }, slot, limits);
}

/** All fields are filled: each must be a reading, and those far off must have been kept on purpose. */
function completeChecked(state: EntryState, slot: EntrySlot, limits: ReadingLimits): EntryState {
  const readings: Decimal[] = [];
  for (const [field, text] of state.texts.entries()) {
    const answer = checkReading(text, limits);
    if (answer.kind === 'refused' || (answer.kind === 'ask' && state.kept[field] !== text)) return stopAt(state, field, answer);
    readings.push(answer.value);
  }
  return complete(state, slot, readings);
}
