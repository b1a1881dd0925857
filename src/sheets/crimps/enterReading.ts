import { impossibleReading } from '../../core/crimp/impossibleReading';
import type { Decimal } from '../../core/units/decimal';
import { typedDial } from '../table/typedFields';
import { AS_ENTERED, type CrimpRow } from './crimpRow';
import type { EntryResult, EntryState, Stop } from './entry';
import { judgeCrimpRow } from './judgeCrimpRow';
import { crimpPlace, without } from './crimpPlace';
import { checkReading, type ReadingLimits } from './readingCheck';
import { at, nextOpen } from './rowInWork';
import { besideAfter, entryWriting, overwritten, rowAfter } from './writeEntry';

const stopAt = (state: EntryState, field: number, stop: Stop): EntryState => ({ ...state, field, stop });
const refuseAt = (state: EntryState, field: number, sentence: string) => stopAt(state, field, { kind: 'refused', sentence });

/** What a crimp was made at is remembered where the sheet has no cell for it. */
function memoryAfter({ memory, dialText }: EntryState, row: CrimpRow): EntryState['memory'] {
  const place = crimpPlace(row);
  const drafts = without(memory.drafts, place);
  const dials = without(memory.dials, place);
  return { drafts, dials: row.fields.dial ? dials : { ...dials, [place]: dialText } };
}

function complete(state: EntryState, row: CrimpRow, readings: readonly Decimal[], moment: number | undefined): EntryState {
  const { value: dial, mistake } = typedDial(state.dialText);
  if (mistake) return refuseAt(state, state.field, `${mistake}.`);
  if (row.locked) return refuseAt(state, state.field, row.locked);
  const writing = entryWriting(row, readings, { dial, operator: state.operator, moment });
  const over = overwritten(writing);
  if (over && state.stop?.kind !== 'overwrite') return stopAt(state, state.field, { kind: 'overwrite', sentence: over });
  const isAsWas = dial && [row.dial, row.wantedDial].find(each => each?.value.eq(dial));
  const made: CrimpRow = { ...row, dial: dial && { value: dial, from: isAsWas ? isAsWas.from : AS_ENTERED } };
  const used = rowAfter(made, writing, readings);
  const judgement = judgeCrimpRow(used, readings, state.uncertainty);
  const result: EntryResult = { row: used, before: row, index: state.index, readings, judgement, writing };
  const rows = state.rows.map((each, index) => (index === state.index ? used : besideAfter(each, writing)));
  const pending = [...state.pending, result];
  const memory = memoryAfter(state, row);
  return at({ ...state, rows, memory, pending, last: result, failure: undefined }, nextOpen(rows, state.index + 1));
}

/** Enter: the field's reading is checked; then the next blank field, or the row is complete. */
export function enter(state: EntryState, moment?: number): EntryState {
  const row = state.rows[state.index];
  if (!row || row.problem) return state;
  const limits = { unit: row.unit, target: row.target!.value, tolerance: row.tolerance!.value };
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
  return completeChecked({ ...state, kept }, row, limits, moment);
}

/** All fields are filled: each must be a reading of this crimp, and those far off must have been kept on purpose. */
function completeChecked(state: EntryState, row: CrimpRow, limits: ReadingLimits, moment: number | undefined): EntryState {
  const readings: Decimal[] = [];
  for (const [field, text] of state.texts.entries()) {
    const answer = checkReading(text, limits);
    if (answer.kind === 'refused' || (answer.kind === 'ask' && state.kept[field] !== text)) return stopAt(state, field, answer);
    readings.push(answer.value);
  }
  const stray = impossibleReading({ readings, target: limits.target, tolerance: limits.tolerance });
  if (stray) return refuseAt(state, stray.index, `Reading ${stray.index + 1} is ${stray.reading}: ${stray.advice}.`);
  return complete(state, row, readings, moment);
}
