import { Body1, Button, Caption1, Link, MessageBar, MessageBarActions, MessageBarBody } from '@fluentui/react-components';
import type { CutWishes } from '../../sheets/cutlist/gatherCuts';
import { worthSentence } from '../../sheets/cutlist/planText';
import type { Workbook } from '../../workbook/workbook';
import { JobsNote } from '../controls/JobsNote';
import { CUT_CAUTION } from '../../sheets/print/cautions';
import { WriteButton } from '../controls/WriteButton';
import { HoseResult } from './HoseResult';
import { RackNote } from './RackNote';
import type { ReadyCuts } from './useCutPlans';

interface Props {
  readonly view: ReadyCuts;
  readonly workbook: Workbook;
  readonly onWrite: () => void;
  /** Reads the same lines again, with other ticks, and plans anew. */
  readonly onAgain: (wishes: CutWishes) => void;
  /** Leads to where a cut length can be added. */
  readonly onColumns: () => void;
}

/** The button that adds what the job sheet lacks. */
function CutLengthOffer({ onColumns }: Pick<Props, 'onColumns'>) {
  return (
    <MessageBar intent="warning" layout="multiline">
      <MessageBarBody>The sheet names couplings and overall lengths, but no column says what to cut.</MessageBarBody>
      <MessageBarActions>
        <Button size="small" onClick={onColumns}>
          Add a column Cut length
        </Button>
      </MessageBarActions>
    </MessageBar>
  );
}

function Outcome({ view: { written, refusal }, workbook }: Pick<Props, 'view' | 'workbook'>) {
  if (refusal) {
    return (
      <MessageBar intent="error" layout="multiline">
        <MessageBarBody>Nothing was written: {refusal}</MessageBarBody>
      </MessageBar>
    );
  }
  if (!written) return null;
  return (
    <MessageBar intent="success" layout="multiline">
      <MessageBarBody>
        Written:{' '}
        {written.map((sheet, index) => (
          <span key={sheet}>
            {index > 0 && ', '}
            <Link inline onClick={() => void workbook.select({ sheet, address: 'A1' })}>
              {sheet}
            </Link>
          </span>
        ))}
      </MessageBarBody>
    </MessageBar>
  );
}

/** What was read, what came of it hose by hose, and the button that writes it. */
export function CutResults({ view, workbook, onWrite, onAgain, onColumns }: Props) {
  const { gathered, plans } = view;
  const { settings, wishes, read, report, rack } = gathered;
  const firsts = plans.map((_, index) => 1 + plans.slice(0, index).reduce((sum, plan) => sum + plan.reels.length, 0));
  return (
    <>
      <JobsNote
        workbook={workbook}
        view={{ status: 'ready', jobs: read }}
        report={report}
        ticks={wishes}
        onTicks={ticks => onAgain({ ...wishes, ...ticks })}
        onAnswered={() => onAgain(wishes)}
      />
      {gathered.lacksCutLength && <CutLengthOffer onColumns={onColumns} />}
      <RackNote
        workbook={workbook}
        rack={rack}
        take={wishes.takeRack ?? new Set()}
        onTake={takeRack => onAgain({ ...wishes, takeRack })}
        onAnswered={() => onAgain(wishes)}
      />
      {plans.length === 0 && <Body1>There is nothing to cut in the selected lines.</Body1>}
      {plans.some(plan => plan.reels.length > 0) && (
        <WriteButton appearance="primary" onClick={onWrite}>
          Write cut list and rack as new sheets
        </WriteButton>
      )}
      <Outcome view={view} workbook={workbook} />
      {settings.keep && plans.some(plan => plan.totals) && <Caption1>{worthSentence(settings.keep, settings.unit)}</Caption1>}
      {plans.map((plan, index) => (
        <HoseResult key={plan.job.hose} plan={plan} firstReel={firsts[index]!} unit={settings.unit} />
      ))}
      {plans.length > 0 && <Caption1>{CUT_CAUTION}</Caption1>}
    </>
  );
}
