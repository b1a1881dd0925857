import { EMPTY_ENTRY, type EntryAction, type EntryResult, type EntryState } from './entry';
import { enter } from './enterReading';
import { cellText, type CrimpRow } from './crimpRow';
import { crimpPlace, without } from './crimpPlace';
import { at, isTyped, leaveFor, nextOpen, usableAfter, usableBefore } from './rowInWork';

/** True where something was typed that is not written yet. */
export function isUnwritten(state: EntryState): boolean {
  const { pending, memory, failure } = state;
  return isTyped(state) || pending.length > 0 || Object.keys(memory.drafts).length > 0 || failure !== undefined;
}

/** True where something was typed or written that reading the rows again would forget. */
export function isUnderWay(state: EntryState): boolean {
  return isUnwritten(state) || state.done.length > 0;
}

type Opening = Extract<EntryAction, { type: 'open' }>;

/** What was typed stays with its crimps; what stood in another sheet waits there. */
function open(state: EntryState, { rows, startRow, remembered }: Opening): EntryState {
  const from = startRow === undefined ? 0 : rows.findIndex(row => row.row >= startRow);
  const index = nextOpen(rows, Math.max(0, from));
  const now = leaveFor(state, state.index).memory;
  const memory = {
    drafts: { ...remembered?.drafts, ...now.drafts },
    dials: { ...remembered?.dials, ...now.dials },
  };
  const { turn, uncertainty, operator } = state;
  return at({ ...EMPTY_ENTRY, turn, uncertainty, operator, rows, memory }, index < rows.length ? index : nextOpen(rows, 0));
}

/** The rows with one result taken out of its row again. */
function restored({ rows }: EntryState, { before, index }: EntryResult): readonly CrimpRow[] {
  return rows.map((each, position) => (position === index ? before : each));
}

function undone(state: EntryState, result: EntryResult): EntryState {
  const done = state.done.filter(each => each !== result);
  return at({ ...state, rows: restored(state, result), done, last: done.at(-1), failure: undefined }, result.index);
}

const LEAVES_FOCUS: ReadonlySet<EntryAction['type']> = new Set([
  'type',
  'dial',
  'focus',
  'uncertainty',
  'operator',
  'written',
  'failed',
]);

/** What the entry becomes by an action. */
export function entryState(state: EntryState, action: EntryAction): EntryState {
  const after = changed(state, action);
  return LEAVES_FOCUS.has(action.type) ? after : { ...after, turn: state.turn + 1 };
}

function changed(state: EntryState, action: EntryAction): EntryState {
  switch (action.type) {
    case 'open':
      return open(state, action);
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
    case 'operator':
      return { ...state, operator: action.text };
    case 'focus':
      return state.field === action.field ? state : { ...state, field: action.field, stop: undefined };
    case 'enter':
      return enter(state, action.moment);
    case 'back':
      return { ...state, field: Math.max(0, state.field - 1), stop: undefined };
    case 'forward':
      return { ...state, field: Math.min(Math.max(0, state.texts.length - 1), state.field + 1), stop: undefined };
    case 'escape':
      return escape(state);
    case 'skip':
      return leaveFor(state, usableAfter(state.rows, state.index));
    case 'previous':
      return leaveFor(state, usableBefore(state.rows, state.index) ?? state.index);
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

/** Escape: what was asked is answered with no; a field that was being typed is as it was. */
function escape(state: EntryState): EntryState {
  const row = state.rows[state.index];
  if (!row) return state;
  if (state.stop?.kind === 'overwrite') {
    const drafts = without(state.memory.drafts, crimpPlace(row));
    return at({ ...state, memory: { ...state.memory, drafts } }, nextOpen(state.rows, state.index + 1));
  }
  const cell = row.cells[state.field];
  const before = cell ? cellText(cell) : '';
  return {
    ...state,
    stop: undefined,
    texts: state.texts.map((text, index) => (index === state.field ? before : text)),
    kept: state.kept.map((text, index) => (index === state.field ? before : text)),
  };
}

/** Nothing was written: the row is open again and its readings are kept for it. */
function failed(state: EntryState, result: EntryResult, sentence: string): EntryState {
  const rows = restored(state, result);
  const drafts = { ...state.memory.drafts, [crimpPlace(result.before)]: result.readings.map(reading => reading.toString()) };
  const pending = state.pending.filter(each => each !== result);
  const last = state.last === result ? state.done.at(-1) : state.last;
  return { ...state, rows, memory: { ...state.memory, drafts }, pending, last, failure: { result, sentence } };
}
