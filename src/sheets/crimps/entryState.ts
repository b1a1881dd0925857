import { EMPTY_ENTRY, type EntryAction, type EntryResult, type EntryState } from './entry';
import { enter } from './enterReading';
import { standingText, type EntrySlot } from './entrySlot';
import { at, isTyped, leaveFor, nextOpen, usableAfter, usableBefore } from './slotInWork';

/** True where something was typed that is not written yet. */
export function isUnwritten(state: EntryState): boolean {
  const { pending, drafts, failure } = state;
  return isTyped(state) || pending.length > 0 || Object.keys(drafts).length > 0 || failure !== undefined;
}

/** True where something was typed or written that reading the rows anew would forget. */
export function isUnderWay(state: EntryState): boolean {
  return isUnwritten(state) || state.done.length > 0;
}

const placeOf = ({ sheet, cells }: EntrySlot) => `${sheet}!${cells.join(' ')}`;

/** What was typed and is not written yet, for the slots that have the same cells. */
function carriedDrafts(state: EntryState, slots: readonly EntrySlot[]): EntryState['drafts'] {
  const { drafts } = leaveFor(state, state.index);
  const typed = new Map(Object.entries(drafts).map(([index, texts]) => [placeOf(state.slots[Number(index)]!), texts]));
  return Object.fromEntries(
    slots.flatMap((slot, index) => {
      const texts = typed.get(placeOf(slot));
      return texts ? [[index, texts]] : [];
    }),
  );
}

function open(state: EntryState, slots: readonly EntrySlot[], startRow: number | undefined): EntryState {
  const from = startRow === undefined ? 0 : slots.findIndex(slot => slot.row >= startRow);
  const index = nextOpen(slots, Math.max(0, from));
  return at(
    { ...EMPTY_ENTRY, turn: state.turn, uncertainty: state.uncertainty, slots, drafts: carriedDrafts(state, slots) },
    index < slots.length ? index : nextOpen(slots, 0),
  );
}

/** The slots with one result taken out of its row again. */
function restored({ slots }: EntryState, { before, index }: EntryResult): readonly EntrySlot[] {
  return slots.map((each, position) => (position === index ? before : each));
}

function undone(state: EntryState, result: EntryResult): EntryState {
  const done = state.done.filter(each => each !== result);
  return at({ ...state, slots: restored(state, result), done, last: done.at(-1), failure: undefined }, result.index);
}

const LEAVES_FOCUS: ReadonlySet<EntryAction['type']> = new Set(['type', 'dial', 'focus', 'uncertainty', 'written', 'failed']);

/** What the entry becomes by an action. */
export function entryState(state: EntryState, action: EntryAction): EntryState {
  const after = changed(state, action);
  return LEAVES_FOCUS.has(action.type) ? after : { ...after, turn: state.turn + 1 };
}

function changed(state: EntryState, action: EntryAction): EntryState {
  switch (action.type) {
    case 'open':
      return open(state, action.slots, action.startRow);
    case 'type':
      return {
        ...state,
        field: action.field,
        stop: undefined,
        texts: state.texts.map((text, index) => (index === action.field ? action.text : text)),
        kept: state.kept.map((text, index) => (index === action.field ? '' : text)),
      };
    case 'dial':
      return { ...state, dialText: action.text, stop: undefined };
    case 'uncertainty':
      return { ...state, uncertainty: action.value };
    case 'focus':
      return state.field === action.field ? state : { ...state, field: action.field, stop: undefined };
    case 'enter':
      return enter(state);
    case 'back':
      return { ...state, field: Math.max(0, state.field - 1), stop: undefined };
    case 'forward':
      return { ...state, field: Math.min(Math.max(0, state.texts.length - 1), state.field + 1), stop: undefined };
    case 'escape':
      return escape(state);
    case 'skip':
      return leaveFor(state, usableAfter(state.slots, state.index));
    case 'previous':
      return leaveFor(state, usableBefore(state.slots, state.index) ?? state.index);
    case 'goTo':
      return leaveFor(state, action.index);
    case 'written':
      return { ...state, pending: state.pending.filter(each => each !== action.result), done: [...state.done, action.result] };
    case 'failed':
      return failed(state, action.result, action.sentence);
    case 'undone':
      return undone(state, action.result);
  }
}

/** Escape: what was asked is answered with no; a field that was being typed is as it stood. */
function escape(state: EntryState): EntryState {
  const slot = state.slots[state.index];
  if (!slot) return state;
  if (state.stop?.kind === 'overwrite') return at(state, nextOpen(state.slots, state.index + 1));
  const standing = standingText(slot.standing[state.field] ?? '');
  return {
    ...state,
    stop: undefined,
    texts: state.texts.map((text, index) => (index === state.field ? standing : text)),
    kept: state.kept.map((text, index) => (index === state.field ? standing : text)),
  };
}

/** Nothing was written: the slot is open again and its readings are kept for it. */
function failed(state: EntryState, result: EntryResult, sentence: string): EntryState {
  const { index } = result;
  const slots = restored(state, result);
  const drafts = { ...state.drafts, [index]: result.readings.map(reading => reading.toString()) };
  const pending = state.pending.filter(each => each !== result);
  const last = state.last === result ? state.done.at(-1) : state.last;
  return { ...state, slots, drafts, pending, last, failure: { result, sentence } };
}
