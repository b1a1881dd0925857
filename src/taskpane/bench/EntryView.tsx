import { Button, Caption1, makeStyles, MessageBar, MessageBarBody, Spinner, Text, tokens } from '@fluentui/react-components';
import { today } from '../../sheets/table/today';
import type { ViewProps } from '../controls/viewProps';
import { ProblemList } from '../controls/ProblemList';
import { AcceptDial } from '../controls/AcceptDial';
import type { DialProposal } from '../../sheets/machines/dialProposal';
import { EntrySettingsFields } from './EntrySettingsFields';
import { AS_ENTERED, isFilled } from '../../sheets/crimps/entrySlot';
import type { EntryResult } from '../../sheets/crimps/entry';
import { CrimpInWork } from './CrimpInWork';
import { useEntry } from './useEntry';
import { VerdictCard } from './VerdictCard';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

const NOT_PROVED = 'Not proved yet: better recorded once a trial piece made with it is in spec.';
const NONE =
  'No rows for readings here. Select a cell of a table with columns Reading 1 … Reading 4 (or A 1 … A 4 and B 1 … B 4) and a target, then read the rows.';

/** The dial that is worth keeping: what the last crimp asks for, or one that was set by hand and proved right. */
function proposalOf({ slot, judgement: { next, verdict } }: EntryResult): DialProposal | undefined {
  const { machine, die, hose, fitting, dial } = slot;
  const isProved = verdict === 'IN SPEC' && dial?.from === AS_ENTERED;
  const wanted = next.kind === 'move' ? next.to : isProved ? dial.value : undefined;
  return wanted && { machine, die, hose, fitting, dial: wanted, date: today(), note: '' };
}

/** At the bench: one crimp after the other, typed by the caliper, judged at once, written to its row. */
export function EntryView({ workbook }: ViewProps) {
  const styles = useStyles();
  const { state, dispatch, status, settings, setSettings, load, undo, undoRefusal } = useEntry(workbook);
  const { slots, last, failure } = state;
  const open = slots.filter(slot => !isFilled(slot) && !slot.problem).length;
  const problems = slots.flatMap(({ row, end, problem }) =>
    problem ? [{ row, sentence: end ? `end ${end}: ${problem}` : problem }] : [],
  );
  const proposal = last && proposalOf(last);
  const show = (row: number) => void workbook.select({ sheet: slots[0]!.sheet, address: `A${row}` });
  return (
    <div className={styles.view}>
      {status.kind === 'loading' && <Spinner label="Reading the rows" />}
      {status.kind === 'failed' && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>The rows cannot be read: {status.reason}</MessageBarBody>
        </MessageBar>
      )}
      {status.kind === 'none' && <Text>{NONE}</Text>}
      {failure && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            {failure.result.slot.title} was NOT written: {failure.sentence} Its readings are kept here.{' '}
            <Button size="small" onClick={() => dispatch({ type: 'goTo', index: failure.result.index })}>
              Go back to it
            </Button>
          </MessageBarBody>
        </MessageBar>
      )}
      {status.kind === 'ready' && (
        <>
          <Caption1>
            Sheet {slots[0]!.sheet}: {open} of {slots.length} crimps wait for readings.
          </Caption1>
          {last && <VerdictCard slot={last.slot} judgement={last.judgement} isWritten={!state.pending.includes(last)} />}
          {proposal && last && (
            <AcceptDial
              key={`${last.index} ${proposal.dial}`}
              workbook={workbook}
              proposal={proposal}
              label={`Record dial ${proposal.dial} in Machines …`}
              caution={last.judgement.verdict === 'IN SPEC' ? undefined : NOT_PROVED}
            />
          )}
          <CrimpInWork state={state} dispatch={dispatch} onUndo={() => void undo()} />
          {undoRefusal && (
            <MessageBar intent="error" layout="multiline">
              <MessageBarBody>{undoRefusal}</MessageBarBody>
            </MessageBar>
          )}
          <ProblemList title="Rows that cannot take readings" problems={problems} onShow={show} />
        </>
      )}
      {status.kind !== 'loading' && (
        <div className={styles.row}>
          <Button onClick={() => load()}>Read the selected rows</Button>
          <Button disabled={state.done.length === 0 || state.pending.length > 0} onClick={() => void undo()}>
            Undo the last crimp
          </Button>
        </div>
      )}
      <EntrySettingsFields
        settings={settings}
        onChange={setSettings}
        onUse={() => load(slots[state.index]?.row ?? slots[0]?.row)}
      />
      <Caption1>
        A new dial is tried on one trial piece before the batch goes on. Keep hands out of the crimper. The makers’ current data
        come first; local codes and a qualified person decide.
      </Caption1>
    </div>
  );
}
