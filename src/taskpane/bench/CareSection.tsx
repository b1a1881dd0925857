import { Body1, Button, Caption1, makeStyles, Spinner, Subtitle2, Text, tokens } from '@fluentui/react-components';
import { CalendarRegular, ErrorCircleRegular, WarningRegular } from '@fluentui/react-icons';
import { useCallback, useEffect, useState } from 'react';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { thisMoment, today } from '../../sheets/table/today';
import { CARE_SHEET, careSheet, careTasks, doneChanges, undoneChanges, type CareTask } from '../../sheets/machines/machineCare';
import { logEntry } from '../../sheets/machines/machineLog';
import { useWriting } from '../controls/useWriting';
import type { Writing } from '../../sheets/print/writing';
import { WritingBar } from '../controls/WritingBar';

const useStyles = makeStyles({
  section: { display: 'flex', flexDirection: 'column', alignItems: 'start', gap: tokens.spacingVerticalS },
  list: { listStyle: 'none', margin: 0, padding: 0, width: '100%' },
  item: {
    display: 'flex',
    flexWrap: 'wrap',
    justifyContent: 'space-between',
    alignItems: 'center',
    gap: tokens.spacingHorizontalS,
    padding: `${tokens.spacingVerticalS} 0`,
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  words: { display: 'flex', flexDirection: 'column', minWidth: 0, flex: '1 1 160px', overflowWrap: 'anywhere' },
});

interface CareState {
  readonly exists: boolean;
  readonly content: RangeContent | undefined;
}

async function careOf(workbook: Workbook): Promise<CareState> {
  const sheets = await workbook.sheets();
  const name = sheets.find(sheet => sheet.toLowerCase() === CARE_SHEET.toLowerCase());
  return { exists: name !== undefined, content: name ? await workbook.used(name) : undefined };
}

async function doneWriting(workbook: Workbook, task: CareTask): Promise<Writing> {
  const day = today();
  const line = { date: thisMoment(), machine: task.machine, kind: 'Care', what: task.task, by: '', note: task.sentence } as const;
  const logged = await logEntry(workbook, line);
  return {
    changes: [...doneChanges(task, day), ...logged.changes],
    undo: [...logged.undo, ...undoneChanges(task)],
    message: `${task.task}: done ${day}${task.lastDone && `, before ${task.lastDone}`}; written to Machine log, row ${logged.row}.`,
  };
}

const iconOf = ({ dueIn }: CareTask) =>
  dueIn === undefined ? <WarningRegular /> : dueIn <= 0 ? <ErrorCircleRegular /> : <CalendarRegular />;

/** What the user's list says is due. */
export function CareSection({ workbook }: { readonly workbook: Workbook }) {
  const styles = useStyles();
  const [care, setCare] = useState<CareState>();
  const [reason, setReason] = useState('');
  const refresh = useCallback(() => careOf(workbook).then(setCare, (error: Error) => setReason(error.message)), [workbook]);
  useEffect(() => void refresh(), [refresh]);
  const { outcome, write, undo } = useWriting(workbook, () => void refresh());
  const tasks = care && careTasks(care.content, today());
  const make = (): Writing => ({
    changes: careSheet(care!.exists),
    undo: [{ kind: 'values', at: { sheet: CARE_SHEET, address: 'A1:D1' }, values: [['', '', '', '']] }],
    message: `Sheet ${CARE_SHEET} is there: write your tasks into it, one a row.`,
  });
  return (
    <section className={styles.section} aria-label="Care of the machine">
      <Subtitle2 as="h2">Care by date</Subtitle2>
      {!care && !reason && <Spinner size="tiny" label="Reading the list" />}
      {reason && <Body1>The list cannot be read: {reason}</Body1>}
      {care && !tasks && (
        <>
          <Body1>
            {care.content
              ? `Sheet ${CARE_SHEET} needs the headings Task, Every (days) and Last done.`
              : `There is no list yet. The machines’ manuals say what they need, and how often: write it into a sheet ${CARE_SHEET}.`}
          </Body1>
          {!care.content && <Button onClick={() => void write(make)}>Make the sheet {CARE_SHEET}</Button>}
        </>
      )}
      {tasks?.length === 0 && <Body1>Sheet {CARE_SHEET} has no tasks yet: write one a row, with how often it is done.</Body1>}
      <ul className={styles.list}>
        {(tasks ?? []).map(task => (
          <li key={task.row} className={styles.item}>
            <span className={styles.words}>
              <Text weight="semibold">
                {iconOf(task)} {task.task}
              </Text>
              <Caption1>{[task.machine, task.sentence].filter(Boolean).join(': ')}</Caption1>
            </span>
            <Button
              size="small"
              disabled={task.dueIn === undefined || outcome.kind === 'busy'}
              onClick={() => void write(() => doneWriting(workbook, task))}
              aria-label={`Done today: ${task.task}`}
            >
              Done today
            </Button>
          </li>
        ))}
      </ul>
      <WritingBar outcome={outcome} onUndo={() => void undo()} />
      {care && (
        <Button size="small" appearance="subtle" onClick={() => void refresh()}>
          Read the list again
        </Button>
      )}
    </section>
  );
}
