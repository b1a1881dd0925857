import { useEffect, useRef, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import type { CutSettings } from '../../sheets/cutlist/cutSettings';
import { gatherAgain, gatherCuts, isSameWork, type CutWishes, type Gathered } from '../../sheets/cutlist/gatherCuts';
import { today } from '../../sheets/table/today';
import { planHoses, type PlanProgress } from '../../sheets/cutlist/planHoses';
import type { HosePlan } from '../../sheets/cutlist/planHose';
import type { JobChoice } from '../../sheets/jobs/jobChoice';
import type { PlanSolver } from '../../sheets/cutlist/planSolver';
import { cutsWriting, type CutsWriting, type CutsWritingOptions } from '../../sheets/cutlist/cutsWriting';
import { plannedLines } from '../../sheets/cutlist/ownLines';
import { addStatusColumn } from '../../sheets/pieces/jobStatusChanges';
import { rememberJobSheet } from '../../sheets/pieces/jobsOfPieces';
import { readPieces } from '../../sheets/pieces/readPieces';
import { rememberRack } from '../../sheets/rack/newestRack';
import { useWriting } from '../controls/useWriting';
import { errorSentence } from '../../workbook/errorSentence';

/** What the view shows. */
export type CutsView =
  | { readonly status: 'idle' }
  | { readonly status: 'failed'; readonly reason: string; readonly error: unknown }
  | { readonly status: 'planning'; readonly progress: PlanProgress | undefined; readonly isEnding: boolean }
  | ReadyCuts;

/** Plans that were made, and what became of their writing. */
export interface ReadyCuts {
  readonly status: 'ready';
  readonly gathered: Gathered;
  readonly plans: readonly HosePlan[];
}

const CHANGED = 'the job sheet, the rack or the sheet Pieces has changed since. Plan the cuts again.';

/** Plans, cancels and writes; the newest run counts. */
export function useCutPlans(workbook: Workbook, solve: PlanSolver, plansAtOnce: number) {
  const [view, setView] = useState<CutsView>({ status: 'idle' });
  const [written, setWritten] = useState<CutsWriting>();
  const [own, setOwn] = useState<ReadonlySet<string>>(new Set());
  const { outcome, write: writeNow, undo } = useWriting(workbook);
  const column = useWriting(workbook);
  const run = useRef({ aborted: false });
  // A pane that is closed, or shows another workbook, needs no plan any more.
  useEffect(
    () => () => {
      run.current.aborted = true;
    },
    [],
  );

  const plan = async (rackSheet: string, settings: CutSettings, wishes?: CutWishes, choice?: JobChoice) => {
    run.current.aborted = true;
    const signal = (run.current = { aborted: false });
    const isNewest = () => run.current === signal;
    setView({ status: 'planning', progress: undefined, isEnding: false });
    // Of pieces that were written from here it is known whose they are.
    const known = new Set([...own, ...(wishes?.known ?? [])]);
    try {
      const gathered = await gatherCuts(workbook, rackSheet, settings, today(), { ...wishes, known }, choice);
      const onProgress = (progress: PlanProgress) =>
        isNewest() && setView({ status: 'planning', progress, isEnding: signal.aborted });
      const plans = await planHoses(gathered, solve, onProgress, signal, plansAtOnce);
      if (isNewest()) setView({ status: 'ready', gathered, plans });
    } catch (error) {
      if (isNewest()) setView({ status: 'failed', reason: errorSentence(error), error });
    }
  };

  const cancel = () => {
    run.current.aborted = true;
    setView(before => (before.status === 'planning' ? { ...before, isEnding: true } : before));
  };

  const write = (optionsOf: (gathered: Gathered) => CutsWritingOptions) =>
    writeNow(async () => {
      if (view.status !== 'ready') throw new Error('There is no plan yet.');
      const { gathered, plans } = view;
      const now = await gatherAgain(workbook, gathered, today());
      if (!isSameWork(now, gathered)) throw new Error(CHANGED);
      const writing = await cutsWriting(workbook, now, plans, optionsOf(now));
      const { rackAfter, before } = writing;
      await Promise.all([rememberJobSheet(workbook, gathered.report.sheet), rememberRack(workbook, rackAfter, before)]);
      setWritten(writing);
      setOwn(before => new Set([...before, ...plannedLines(now)]));
      return writing;
    });

  /** A column for the status, where the job sheet has none, filled with that of the lines that have pieces. */
  const addStatus = () =>
    column.write(async () => {
      if (view.status !== 'ready') throw new Error('There is no plan yet.');
      const { read } = await gatherAgain(workbook, view.gathered, today());
      const pieces = (await readPieces(workbook))?.pieces;
      const table = read.tables.find(({ columns }) => columns.status === undefined);
      const writing = table && addStatusColumn(table, pieces, read.lines);
      if (!writing) throw new Error('The cells to the right of the job table are filled: add a column Status by hand.');
      return writing;
    });

  const writing = {
    outcome,
    written,
    undo: () => void undo(),
    column: column.outcome,
    undoColumn: () => void column.undo(),
  };
  return { view, plan, cancel, write, addStatus, writing };
}

/** What became of the writing of a plan. */
export type CutsOutcome = ReturnType<typeof useCutPlans>['writing'];
