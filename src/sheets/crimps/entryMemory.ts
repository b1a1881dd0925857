import * as v from 'valibot';
import { NOTHING_REMEMBERED, type EntryMemory, type EntryState } from './entry';
import { crimpPlace } from './crimpPlace';
import { leaveFor } from './rowInWork';
import { recalled, type WorkbookMemory } from '../table/recalled';

const KEY = 'entry';
/** So many crimps are remembered; older ones are in the sheet long since. */
const MOST = 200;

const Stored = v.object({
  drafts: v.record(v.string(), v.array(v.string())),
  dials: v.record(v.string(), v.string()),
});

/** What an entry that was cut short left behind. */
export const recallEntry = (workbook: Pick<WorkbookMemory, 'recall'>): Promise<EntryMemory> =>
  recalled(workbook, KEY, Stored, NOTHING_REMEMBERED);

const newest = <T>(all: Readonly<Record<string, T>>) => Object.fromEntries(Object.entries(all).slice(-MOST));

/** The memory of an entry as text; undefined where there is nothing to remember. */
export function memoryText(state: EntryState): string | undefined {
  const { drafts: typed, dials } = leaveFor(state, state.index).memory;
  // What is on its way to the sheet may not arrive before a reload.
  const sent = state.pending.map(({ before, readings }) => [crimpPlace(before), readings.map(String)] as const);
  const drafts = { ...Object.fromEntries(sent), ...typed };
  if (Object.keys(drafts).length + Object.keys(dials).length === 0) return undefined;
  return JSON.stringify({ drafts: newest(drafts), dials: newest(dials) });
}

/** Remembers with the workbook what is typed and not written. */
export const rememberEntry = (workbook: Pick<WorkbookMemory, 'remember'>, text: string | undefined): Promise<void> =>
  workbook.remember(KEY, text);
