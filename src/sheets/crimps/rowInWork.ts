import type { Decimal } from '../../core/units/decimal';
import { AS_ENTERED, cellText, combinationKey, hasAllReadings, type CrimpRow } from './crimpRow';
import type { EntryState } from './entry';
import { crimpPlace } from './crimpPlace';

/** A dial that follows from the combination's last crimp here. */
export interface SuggestedDial {
  readonly dial: Decimal;
  /** Whether that crimp asked for it, or was made at it and left it. */
  readonly why: 'asked' | 'used';
}

/** What the combination's last crimp here asked for, else the dial that was entered for it; undefined where neither is there. */
export function suggestedDial({ done, pending }: EntryState, row: CrimpRow): SuggestedDial | undefined {
  const latest = [...done, ...pending].filter(result => combinationKey(result.row) === combinationKey(row)).at(-1);
  if (latest?.judgement.next.kind === 'move') return { dial: latest.judgement.next.to, why: 'asked' };
  const used = latest?.row.dial;
  return used?.from === AS_ENTERED ? { dial: used.value, why: 'used' } : undefined;
}

/**
 * The dial that a crimp was, or will be, made at: the row's own counts; then the one it was entered with; then what follows from the
 * combination's last crimp; then the catalogue's. A crimp that is in the sheet already keeps what is known of it, and gets no dial of later ones.
 */
export function assumedDial(state: EntryState, row: CrimpRow): string {
  if (row.dial) return row.dial.value.toString();
  const entered = state.memory.dials[crimpPlace(row)];
  if (entered !== undefined) return entered;
  // Made before, at a dial that nobody wrote down: what the next crimp is to be made at says nothing about it.
  if (hasAllReadings(row)) return row.fields.dial ? '' : (row.wantedDial?.value.toString() ?? '');
  return (suggestedDial(state, row)?.dial ?? row.wantedDial?.value)?.toString() ?? '';
}

/** Moves to a row: its fields hold what was typed before or is in the sheet, the first blank one is in work. */
export function at(state: EntryState, index: number): EntryState {
  const row = state.rows[index];
  if (!row) return { ...state, index, texts: [], field: 0, stop: undefined, kept: [], dialText: '' };
  const inSheet = row.cells.map(cellText);
  const texts = state.memory.drafts[crimpPlace(row)] ?? inSheet;
  const field = Math.max(
    0,
    texts.findIndex(text => text === ''),
  );
  return { ...state, index, texts, field, dialText: assumedDial(state, row), stop: undefined, kept: inSheet };
}

/** True where something was typed into the row in work that is not in the sheet. */
export function isTyped({ rows, index, texts }: EntryState): boolean {
  const row = rows[index];
  return row !== undefined && texts.some((text, field) => text !== cellText(row.cells[field]!));
}

/** As `at`, keeping what was typed into the row that is left. */
export function leaveFor(state: EntryState, index: number): EntryState {
  const row = state.rows[state.index];
  if (!row) return at(state, index);
  const { drafts, dials } = state.memory;
  const memory = {
    drafts: isTyped(state) ? { ...drafts, [crimpPlace(row)]: state.texts } : drafts,
    dials: state.dialText === assumedDial(state, row) ? dials : { ...dials, [crimpPlace(row)]: state.dialText },
  };
  return at({ ...state, memory }, index);
}

/** The next row that waits for readings, from `from` on; rows.length where none does. */
export function nextOpen(rows: readonly CrimpRow[], from: number): number {
  const found = rows.findIndex((row, index) => index >= from && !hasAllReadings(row) && !row.problem);
  return found < 0 ? rows.length : found;
}

/** The next row that can take readings, filled or not; rows.length where there is none. */
export function usableAfter(rows: readonly CrimpRow[], from: number): number {
  const found = rows.findIndex((row, index) => index > from && !row.problem);
  return found < 0 ? rows.length : found;
}

/** The row before that can take readings; undefined where there is none. */
export function usableBefore(rows: readonly CrimpRow[], from: number): number | undefined {
  for (let index = Math.min(from, rows.length) - 1; index >= 0; index--) if (!rows[index]!.problem) return index;
  return undefined;
}
