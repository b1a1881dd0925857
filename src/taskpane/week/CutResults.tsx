import {
  Body1,
  Button,
  Caption1,
  Checkbox,
  makeStyles,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  tokens,
} from '@fluentui/react-components';
import type { CutWishes } from '../../sheets/cutlist/gatherCuts';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { lengthSentence } from '../../sheets/cutlist/leftOutSentences';
import { overallResult } from '../../sheets/cutlist/overallResult';
import type { HosePlan } from '../../sheets/cutlist/planHose';
import {
  barredSentences,
  rackOfAnew,
  tooOldSentence,
  twiceSentence,
  unconfirmedSentence,
} from '../../sheets/cutlist/rackSentences';
import { worthSentence } from '../../sheets/cutlist/planText';
import type { Workbook } from '../../workbook/workbook';
import { JobsNote } from '../controls/JobsNote';
import { CUT_CAUTION } from '../../sheets/print/cautions';
import type { HostServices } from '../controls/viewProps';
import { WriteButton } from '../controls/WriteButton';
import { HoseResult } from './HoseResult';
import { OffcutLabels } from './OffcutLabels';
import { RackNote } from './RackNote';
import { LookAlikeNote } from './LookAlikeNote';
import { WaitingNote } from './WaitingNote';
import type { CutsOutcome, ReadyCuts } from './useCutPlans';
import { CutsWritten } from './CutsWritten';

const useStyles = makeStyles({ outcome: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM } });

interface Props {
  readonly view: ReadyCuts;
  readonly workbook: Workbook;
  readonly services: HostServices;
  readonly writing: CutsOutcome;
  readonly onWrite: () => void;
  readonly onAddStatus: () => void;
  /** Reads the same lines again, with other ticks, and plans anew. */
  readonly onAgain: (wishes: CutWishes) => void;
  /** Plans the same lines on another rack. */
  readonly onRack: (sheet: string) => void;
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

const isShort = ({ later, tooLong }: HosePlan) => later.length + tooLong.length > 0;

/** What came of it all, in a few sentences. */
export function OverallBar({ plans, unit }: { readonly plans: readonly HosePlan[]; readonly unit: LengthUnit }) {
  if (plans.length === 0) return null;
  return (
    <MessageBar intent={plans.some(isShort) ? 'warning' : 'info'} layout="multiline">
      <MessageBarBody>
        {overallResult(plans, unit).map(sentence => (
          <div key={sentence}>{sentence}</div>
        ))}
      </MessageBarBody>
    </MessageBar>
  );
}

/** What was read, what came of it hose by hose, and the button that writes it. */
export function CutResults({ view, workbook, services, writing, onWrite, onAddStatus, onAgain, onRack, onColumns }: Props) {
  const styles = useStyles();
  const { gathered, plans } = view;
  const { settings, wishes, read, report, rack } = gathered;
  const unconfirmed = unconfirmedSentence(gathered, plans);
  const twice = twiceSentence(gathered);
  const rackOfThem = rackOfAnew(gathered);
  const changedLengths = lengthSentence(gathered);
  const tooOld = tooOldSentence(gathered);
  const barred = barredSentences(gathered, plans);
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
      {barred.length > 0 && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{barred.join(' ')}</MessageBarBody>
        </MessageBar>
      )}
      {changedLengths && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{changedLengths}</MessageBarBody>
        </MessageBar>
      )}
      {unconfirmed && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{unconfirmed}</MessageBarBody>
        </MessageBar>
      )}
      {twice && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{twice}</MessageBarBody>
          {rackOfThem !== undefined && (
            <MessageBarActions>
              <Button size="small" onClick={() => onRack(rackOfThem)}>
                Plan on {rackOfThem}
              </Button>
            </MessageBarActions>
          )}
        </MessageBar>
      )}
      {(tooOld || wishes.takesOld) && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            {tooOld ?? 'Hose older than your limit is used: have a qualified person check it first.'}
            <Checkbox
              label="Use hose beyond the age limit, too"
              checked={wishes.takesOld ?? false}
              onChange={(_, { checked }) => onAgain({ ...wishes, takesOld: checked === true })}
            />
          </MessageBarBody>
        </MessageBar>
      )}
      <LookAlikeNote gathered={gathered} onAgain={onAgain} />
      <WaitingNote gathered={gathered} onLeave={leavesWaiting => onAgain({ ...wishes, leavesWaiting })} />
      {plans.length === 0 && <Body1>There is nothing to cut in the selected lines.</Body1>}
      {plans.some(plan => plan.reels.length > 0) && (
        <WriteButton appearance="primary" onClick={onWrite}>
          Write cut list, rack and pieces
        </WriteButton>
      )}
      <OffcutLabels services={services} plans={plans} unit={settings.unit} />
      <div role="status" className={styles.outcome}>
        <CutsWritten writing={writing} workbook={workbook} onAddStatus={onAddStatus} />
      </div>
      {settings.keep && plans.some(plan => plan.totals) && <Caption1>{worthSentence(settings.keep, settings.unit)}</Caption1>}
      {plans.map((plan, index) => (
        <HoseResult key={plan.job.hose} plan={plan} firstReel={firsts[index]!} unit={settings.unit} />
      ))}
      {plans.length > 0 && <Caption1>{CUT_CAUTION}</Caption1>}
    </>
  );
}
