import { useCallback, useEffect, useReducer, useRef, useState } from 'react';
import { numberFromText } from '../../core/units/numberText';
import type { Workbook } from '../../workbook/workbook';
import { measurementsView } from '../../sheets/crimps/measurementsView';
import { settingsAbove } from '../../sheets/crimps/settingsAbove';
import { useStored } from '../controls/useStored';
import { EMPTY_ENTRY } from '../../sheets/crimps/entry';
import { entryState, isUnderWay, isUnwritten } from '../../sheets/crimps/entryState';
import { readSlots, type EntryDefaults } from '../../sheets/crimps/readSlots';
import { undoEntry, writeEntry } from '../../sheets/crimps/writeSlot';

/** What the user says once for all rows. */
export type EntrySettings = EntryDefaults & { readonly uncertainty: string };

const FRESH: EntrySettings = {
  machine: '',
  tolerance: '',
  largestSpread: '',
  step: '',
  lowest: '',
  highest: '',
  largestMove: '',
  uncertainty: '',
};

/** Whether there are rows to fill. */
export type EntryStatus = { readonly kind: 'loading' | 'none' | 'ready' } | { readonly kind: 'failed'; readonly reason: string };

const sentence = (error: unknown) => (error instanceof Error ? error.message : String(error));

/** The crimps around the selection, and the row to begin with. */
async function entryRows(workbook: Workbook, wishes: EntrySettings, startRow?: number) {
  const view = await measurementsView(workbook);
  const typed = numberFromText(wishes.uncertainty)?.value;
  const row = startRow ?? (await workbook.selection()).row + 1;
  if (view.status !== 'ready') return { slots: [], startRow: row, uncertainty: typed };
  const uncertainty = settingsAbove(view.used, view.table, view.unit).uncertainty ?? typed;
  return { slots: readSlots({ ...view, defaults: wishes }), startRow: row, uncertainty };
}

/** The entry of readings: its rows, its state, and what is written to the workbook as it goes. */
export function useEntry(workbook: Workbook) {
  const [settings, setSettings] = useStored('bench', FRESH);
  const [status, setStatus] = useState<EntryStatus>({ kind: 'loading' });
  const [undoRefusal, setUndoRefusal] = useState('');
  const [state, dispatch] = useReducer(entryState, EMPTY_ENTRY);
  const isWriting = useRef(false);

  const read = useCallback(
    (wishes: EntrySettings, startRow?: number) =>
      entryRows(workbook, wishes, startRow).then(
        ({ uncertainty, ...opened }) => {
          dispatch({ type: 'uncertainty', value: uncertainty });
          dispatch({ type: 'open', ...opened });
          setStatus({ kind: opened.slots.length > 0 ? 'ready' : 'none' });
        },
        error => setStatus({ kind: 'failed', reason: sentence(error) }),
      ),
    [workbook],
  );

  const latest = useRef({ settings, state });
  useEffect(() => {
    latest.current = { settings, state };
  });
  // Read when the view is shown; when it is shown again, only where nothing is under way in it, or all is written and another
  // sheet is selected by now.
  useEffect(() => {
    const again = async () => {
      const { sheet } = await workbook.selection();
      const { settings: wishes, state: now } = latest.current;
      const isElsewhere = now.slots.length > 0 && now.slots[0]!.sheet !== sheet;
      if (isElsewhere ? !isUnwritten(now) : !isUnderWay(now)) await read(wishes);
    };
    again().catch((error: unknown) => setStatus({ kind: 'failed', reason: sentence(error) }));
  }, [read, workbook]);

  const load = (startRow?: number) => {
    setStatus({ kind: 'loading' });
    setUndoRefusal('');
    void read(settings, startRow);
  };

  useEffect(() => {
    const [result] = state.pending;
    if (!result || isWriting.current) return;
    isWriting.current = true;
    void writeEntry(workbook, result.before, result.writing).then(
      () => {
        isWriting.current = false;
        dispatch({ type: 'written', result });
      },
      error => {
        isWriting.current = false;
        dispatch({ type: 'failed', result, sentence: sentence(error) });
      },
    );
  }, [state.pending, workbook]);

  const undo = async () => {
    const result = state.done.at(-1);
    if (!result || state.pending.length > 0) return;
    try {
      await undoEntry(workbook, result.writing);
      setUndoRefusal('');
      dispatch({ type: 'undone', result });
    } catch (error) {
      setUndoRefusal(sentence(error));
    }
  };

  return { state, dispatch, status, settings, setSettings, load, undo, undoRefusal };
}
