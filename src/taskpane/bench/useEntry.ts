import { useCallback, useEffect, useReducer, useRef, useState } from 'react';
import { numberFromText } from '../../core/units/numberText';
import type { Workbook } from '../../host/workbook';
import { measurementsView } from '../readings/measurementsView';
import { useStored } from '../useStored';
import { EMPTY_ENTRY, entryState } from './entryState';
import { readSlots, type EntryDefaults } from './readSlots';
import { undoEntry, writeEntry } from './writeSlot';

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
  const slots = view.status === 'ready' ? readSlots({ ...view, defaults: wishes }) : [];
  return { slots, startRow: startRow ?? (await workbook.selection()).row + 1 };
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
        opened => {
          dispatch({ type: 'uncertainty', value: numberFromText(wishes.uncertainty)?.value });
          dispatch({ type: 'open', ...opened });
          setStatus({ kind: opened.slots.length > 0 ? 'ready' : 'none' });
        },
        error => setStatus({ kind: 'failed', reason: sentence(error) }),
      ),
    [workbook],
  );

  const [atFirst] = useState(settings);
  useEffect(() => void read(atFirst), [read, atFirst]);

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
