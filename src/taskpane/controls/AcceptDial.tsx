import { Button, Caption1, Field, Input, makeStyles, MessageBar, MessageBarBody, Text, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { thisMoment } from '../../sheets/table/today';
import type { DialProposal, StandingDial } from '../../sheets/machines/dialProposal';
import type { DialPlan } from '../../sheets/machines/dialRegister';
import { planDial } from '../../sheets/machines/planDial';
import { useStored } from './useStored';
import { useWriting } from './useWriting';
import { WriteButton } from './WriteButton';
import { WritingBar } from './WritingBar';
import { errorSentence } from '../../workbook/errorSentence';

const useStyles = makeStyles({
  box: { display: 'flex', flexDirection: 'column', alignItems: 'start', gap: tokens.spacingVerticalS },
  row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
  large: { fontSize: tokens.fontSizeBase400, lineHeight: tokens.lineHeightBase400, overflowWrap: 'anywhere' },
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalXL },
});

interface Props {
  readonly workbook: Workbook;
  readonly proposal: DialProposal;
  /** What the first button says. */
  readonly label: string;
  /** What speaks against writing it into the register now. */
  readonly caution?: string | undefined;
}

const dialText = ({ dial, from, date, by = '' }: StandingDial) =>
  dial === '' ? 'none' : `${dial} (${[from === 'MACHINE' ? 'Machines' : 'Catalogue', date, by].filter(Boolean).join(', ')})`;

function Plan({ plan, proposal }: { readonly plan: DialPlan; readonly proposal: DialProposal }) {
  const styles = useStyles();
  const { comparison } = plan;
  return (
    <>
      {comparison && (
        <>
          <Text>{[proposal.machine, `die ${comparison.setUp.die}`, proposal.hose, proposal.fitting].join(' · ')}</Text>
          <Text className={styles.large}>
            Now <b>{dialText(comparison.old)}</b>, new <b>{proposal.dial.toString()}</b> from {comparison.from}
          </Text>
          {comparison.history.length > 0 && <Caption1>Recorded before: {comparison.history.map(dialText).join('; ')}</Caption1>}
        </>
      )}
      {plan.kind === 'refused' && (
        <MessageBar intent="error" layout="multiline" role="alert">
          <MessageBarBody>{plan.sentence}</MessageBarBody>
        </MessageBar>
      )}
      {plan.kind === 'ready' && (
        <ul className={styles.list}>
          {[...plan.comparison.warnings, ...plan.message].map(line => (
            <li key={line}>
              <Caption1>{line}</Caption1>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** Records a dial in Machines: shows what counts now and what would, and writes only when that is confirmed. */
export function AcceptDial({ workbook, proposal: asked, label, caution }: Props) {
  const styles = useStyles();
  const [{ by }, setBy] = useStored('dialsBy', { by: '' });
  const proposal = { ...asked, by };
  const [plan, setPlan] = useState<DialPlan>();
  const { outcome, write, undo } = useWriting(workbook);
  const look = () =>
    planDial(workbook, proposal, thisMoment()).then(setPlan, error =>
      setPlan({ kind: 'refused', sentence: errorSentence(error) }),
    );
  const record = () =>
    void write(async () => {
      // The workbook may have changed since the plan was shown.
      const fresh = await planDial(workbook, proposal, thisMoment());
      if (fresh.kind === 'refused') throw new Error(fresh.sentence);
      return fresh.writing;
    }).then(() => setPlan(undefined));
  return (
    <div className={styles.box}>
      <div role="status">{plan && <Plan plan={plan} proposal={proposal} />}</div>
      {!plan && <Button onClick={() => void look()}>{label}</Button>}
      {plan?.kind === 'ready' && caution && <Caption1>{caution}</Caption1>}
      {plan?.kind === 'ready' && (
        <Field label="By (blank: not recorded)" size="small">
          <Input size="small" value={by} onChange={(_, { value }) => setBy({ by: value })} />
        </Field>
      )}
      {plan && (
        <div className={styles.row}>
          {plan.kind === 'ready' && (
            <WriteButton appearance="primary" disabled={outcome.kind === 'busy'} onClick={record}>
              Record dial {proposal.dial.toString()}
            </WriteButton>
          )}
          <Button onClick={() => setPlan(undefined)}>{plan.kind === 'ready' ? 'Do not record' : 'Close'}</Button>
        </div>
      )}
      <WritingBar outcome={plan ? { kind: 'none' } : outcome} onUndo={() => void undo()} />
    </div>
  );
}
