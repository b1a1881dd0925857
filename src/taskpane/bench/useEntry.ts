import { useCallback, useEffect, useMemo, useReducer, useRef, useState } from 'react';
import { dayNumber } from '../../core/units/sheetDate';
import type { Workbook } from '../../workbook/workbook';
import { EMPTY_ENTRY, type EntryAction } from '../../sheets/crimps/entry';
import { memoryText, recallEntry, rememberEntry } from '../../sheets/crimps/entryMemory';
import { entryState, isUnderWay, isUnwritten } from '../../sheets/crimps/entryState';
import { readOptionsOf, type CrimpFields } from '../../sheets/crimps/crimpFields';
import { readCrimpSheet, type CrimpSheet } from '../../sheets/crimps/crimpSheet';
import { crimpRowsOf, type CrimpReading } from '../../sheets/crimps/readCrimpRows';
import { undoEntry, writeEntry } from '../../sheets/crimps/writeEntry';
import type { EntryWriting } from '../../sheets/crimps/entryWriting';
import type { Takeable } from '../../sheets/table/tableRows';
import { today } from '../../sheets/table/today';
import { useCrimpFields } from '../controls/useCrimpFields';
import { useStored } from '../controls/useStored';
import { errorSentence } from '../../workbook/errorSentence';

/** Whether there are rows to fill. */
export type EntryStatus = { readonly kind: 'loading' | 'none' | 'ready' } | { readonly kind: 'failed'; readonly reason: string };

/** Day and time of this computer as the sheet's number. */
function now(): number {
  const clock = new Date();
  return dayNumber(today())! + (clock.getHours() * 60 + clock.getMinutes()) / 1440;
}

/** Is called when a row was written: what was, and its row as the sheet shows it. */
export type WhenEntered = (writing: EntryWriting, row: number) => void;

/** A sheet and its crimps, as they were read for the entry. */
export interface EntrySheet {
  readonly sheet: CrimpSheet;
  readonly reading: CrimpReading;
}

const SETTLED_MS = 250;

/** What is typed and not written is remembered with the workbook, so that a reload loses nothing. */
function useMemory(workbook: Workbook, text: string | undefined, isOpen: boolean) {
  const last = useRef<string>();
  useEffect(() => {
    if (!isOpen || text === last.current) return;
    const timer = setTimeout(() => {
      last.current = text;
      // A host that cannot remember loses what is typed with a reload; the entry itself goes on.
      rememberEntry(workbook, text).catch(() => undefined);
    }, SETTLED_MS);
    return () => clearTimeout(timer);
  }, [workbook, text, isOpen]);
}

/**
 * The entry of readings: its rows, its state, and what is written to the workbook as it goes.
 * @param whenWritten a row was written, or taken back
 */
export function useEntry(workbook: Workbook, whenWritten: WhenEntered = () => {}) {
  const onWritten = useRef(whenWritten);
  useEffect(() => {
    onWritten.current = whenWritten;
  });
  const [fields, setFields] = useCrimpFields();
  const [take, setTake] = useState<ReadonlySet<Takeable>>(new Set());
  const [status, setStatus] = useState<EntryStatus>({ kind: 'loading' });
  const [read, setRead] = useState<EntrySheet>();
  const [undoRefusal, setUndoRefusal] = useState('');
  const [state, act] = useReducer(entryState, EMPTY_ENTRY);
  const isWriting = useRef(false);
  // Two readings may overlap, as when a tag is scanned while the view opens: the one begun last counts.
  const turn = useRef(0);
  const [, setCheck] = useStored('machineCheck', { machine: '' });

  const dispatch = useCallback((action: EntryAction) => act(action.type === 'enter' ? { ...action, moment: now() } : action), []);

  const readRows = useCallback(
    async (wishes: CrimpFields, taken: ReadonlySet<Takeable>, startRow?: number) => {
      const own = ++turn.current;
      try {
        const [sheet, selection, remembered] = await Promise.all([
          readCrimpSheet(workbook),
          workbook.selection(),
          recallEntry(workbook),
        ]);
        if (own !== turn.current) return;
        const options = readOptionsOf(wishes, taken);
        const reading = sheet?.own && crimpRowsOf(sheet, options);
        // A crimp of one reading is none to be measured.
        const rows = (reading?.rows ?? []).filter(({ cells }) => cells.length >= 2);
        act({ type: 'uncertainty', value: reading?.uncertainty ?? options.typed.uncertainty });
        act({ type: 'operator', text: wishes.operator });
        act({ type: 'open', rows, startRow: startRow ?? selection.row + 1, remembered });
        setRead(sheet && reading && { sheet, reading });
        setStatus({ kind: rows.length > 0 ? 'ready' : 'none' });
      } catch (error) {
        if (own === turn.current) setStatus({ kind: 'failed', reason: errorSentence(error) });
      }
    },
    [workbook],
  );

  const latest = useRef({ fields, state, take });
  useEffect(() => {
    latest.current = { fields, state, take };
  });
  // Read when the view is shown; when it is shown again, only where nothing is under way in it, or all is written and another
  // sheet is selected by now.
  useEffect(() => {
    const again = async () => {
      const { sheet } = await workbook.selection();
      const before = latest.current;
      const isElsewhere = before.state.rows.length > 0 && before.state.rows[0]!.sheet !== sheet;
      if (isElsewhere ? !isUnwritten(before.state) : !isUnderWay(before.state)) await readRows(before.fields, before.take);
    };
    again().catch((error: unknown) => setStatus({ kind: 'failed', reason: errorSentence(error) }));
  }, [readRows, workbook]);

  const load = (startRow?: number, taken = take) => {
    setStatus({ kind: 'loading' });
    setUndoRefusal('');
    setTake(taken);
    void readRows(fields, taken, startRow);
  };

  useEffect(() => {
    const [result] = state.pending;
    if (!result || isWriting.current) return;
    isWriting.current = true;
    void writeEntry(workbook, result.before, result.writing, state.operator, now()).then(
      () => {
        isWriting.current = false;
        onWritten.current(result.writing, result.before.row);
        act({ type: 'written', result });
      },
      error => {
        isWriting.current = false;
        act({ type: 'failed', result, sentence: errorSentence(error) });
      },
    );
  }, [state.pending, state.operator, workbook]);

  const undo = async () => {
    const result = state.done.at(-1);
    if (!result || state.pending.length > 0) return;
    try {
      await undoEntry(workbook, result.before, result.writing, state.operator, now());
      onWritten.current({ ...result.writing, cells: [] }, result.before.row);
      setUndoRefusal('');
      act({ type: 'undone', result });
    } catch (error) {
      setUndoRefusal(errorSentence(error));
    }
  };

  useMemory(
    workbook,
    useMemo(() => memoryText(state), [state]),
    status.kind === 'ready',
  );

  // The machine's check is of the machine that is worked on.
  const machine = state.rows[state.index]?.machine ?? '';
  const checked = useRef('');
  useEffect(() => {
    if (machine === '' || machine === checked.current) return;
    checked.current = machine;
    setCheck({ machine });
  }, [machine, setCheck]);

  const setOperator = (text: string) => {
    setFields({ operator: text });
    act({ type: 'operator', text });
  };
  return { state, dispatch, status, read, take, fields, setFields, setOperator, load, undo, undoRefusal };
}
