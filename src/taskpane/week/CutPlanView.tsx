import {
  Body1,
  Button,
  Caption1,
  Link,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  tokens,
} from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { useFirstMistake } from '../controls/useFirstMistake';
import { useStored } from '../controls/useStored';
import { CutFields } from '../controls/CutFields';
import { freshSettings, readSettings, type CutSettings } from '../../sheets/cutlist/cutSettings';
import { rackSheets } from '../../sheets/cutlist/gatherCuts';
import { HoseResult } from './HoseResult';
import { PlanProgressView } from '../controls/PlanProgressView';
import { worthSentence } from '../../sheets/cutlist/planText';
import { ProblemList } from '../controls/ProblemList';
import { WriteButton } from '../controls/WriteButton';
import { useOnSheets } from '../controls/useOnSheets';
import type { ViewProps } from '../controls/viewProps';
import { useCutPlans, type CutsView } from './useCutPlans';

const useStyles = makeStyles({ view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM } });

/** Sheets with a rack; looked for when the pane opens, when sheets come or go, and when asked to. */
function useRacks(workbook: Workbook): readonly [racks: readonly string[], look: () => Promise<readonly string[]>] {
  const [racks, setRacks] = useState<readonly string[]>([]);
  const look = useCallback(async () => {
    const found = await rackSheets(workbook).catch(() => []);
    setRacks(found);
    return found;
  }, [workbook]);
  useOnSheets(workbook, look);
  return [racks, look];
}

type Ready = Extract<CutsView, { status: 'ready' }>;

/** True where a plan was made with another rack or other settings than stand in the fields now. */
function isOfOtherFields({ gathered }: Ready, rack: string, settings: CutSettings | undefined): boolean {
  return gathered.rackSheet !== rack || JSON.stringify(gathered.settings) !== JSON.stringify(settings);
}

function Results({
  view,
  workbook,
  onWrite,
}: {
  readonly view: Ready;
  readonly workbook: Workbook;
  readonly onWrite: () => void;
}) {
  const { gathered, plans, written, refusal } = view;
  const { unit } = gathered.settings;
  const firsts = plans.map((_, index) => 1 + plans.slice(0, index).reduce((sum, plan) => sum + plan.reels.length, 0));
  const show = (sheet: string, row: number) => void workbook.select({ sheet, address: `A${row}` });
  return (
    <>
      <ProblemList title="Lines left out" problems={gathered.lineProblems} onShow={row => show(gathered.picked.sheet, row)} />
      <ProblemList title="Rack rows left out" problems={gathered.rack.problems} onShow={row => show(gathered.rackSheet, row)} />
      {plans.length === 0 && <Body1>There is nothing to cut in the selected lines.</Body1>}
      {plans.some(plan => plan.reels.length > 0) && (
        <WriteButton appearance="primary" onClick={onWrite}>
          Write cut list and rack as new sheets
        </WriteButton>
      )}
      {refusal && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>Nothing was written: {refusal}</MessageBarBody>
        </MessageBar>
      )}
      {written && (
        <MessageBar intent="success" layout="multiline">
          <MessageBarBody>
            Written:{' '}
            {written.map((sheet, index) => (
              <span key={sheet}>
                {index > 0 && ', '}
                <Link inline onClick={() => show(sheet, 1)}>
                  {sheet}
                </Link>
              </span>
            ))}
          </MessageBarBody>
        </MessageBar>
      )}
      {gathered.settings.keep && plans.some(plan => plan.totals) && (
        <Caption1>{worthSentence(gathered.settings.keep, unit)}</Caption1>
      )}
      {plans.map((plan, index) => (
        <HoseResult key={plan.job.hose} plan={plan} firstReel={firsts[index]!} unit={unit} />
      ))}
    </>
  );
}

/** Plans what to cut from which reel for the selected job lines, shows it, and writes it to new sheets. */
export function CutPlanView({ workbook, services: { solve, plansAtOnce } }: Pick<ViewProps, 'workbook' | 'services'>) {
  const styles = useStyles();
  const [fields, setFields] = useStored('cuts', freshSettings('mm'));
  const [chosenRack, setChosenRack] = useState('');
  const [isAsked, setIsAsked] = useState(false);
  const [form, leadToMistake] = useFirstMistake<HTMLDivElement>();
  const [racks, look] = useRacks(workbook);
  const rack = racks.includes(chosenRack) ? chosenRack : (racks[0] ?? '');
  const { settings, mistakes } = readSettings(fields);
  const { view, plan, cancel, write } = useCutPlans(workbook, solve, plansAtOnce);
  const start = async () => {
    setIsAsked(true);
    leadToMistake();
    const sheet = rack || (await look())[0];
    if (settings && sheet) await plan(sheet, settings);
  };
  return (
    <div ref={form} className={styles.view}>
      <Body1>
        Select the lines to cut in your job sheet (columns Hose, Cut length, Quantity), or one cell of it for all lines.
      </Body1>
      <CutFields
        fields={fields}
        mistakes={mistakes}
        isAsked={isAsked}
        racks={racks}
        rack={rack}
        onFields={setFields}
        onRack={setChosenRack}
      />
      {view.status === 'planning' ? (
        <PlanProgressView progress={view.progress} isEnding={view.isEnding} unit={fields.unit} onCancel={cancel} />
      ) : (
        <Button appearance={view.status === 'ready' ? 'secondary' : 'primary'} onClick={() => void start()}>
          Plan the cuts
        </Button>
      )}
      {isAsked && rack === '' && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>No rack yet</MessageBarTitle>
            Make a sheet with your stock: Hose, Length (mm), Quantity, Place; Lot and Made if you keep them.
          </MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'failed' && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>{view.reason}</MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'ready' && isOfOtherFields(view, rack, settings) && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            The plan below was made from sheet {view.gathered.rackSheet} with the settings of then. Plan the cuts again to use
            what stands in the fields now.
          </MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'ready' && <Results view={view} workbook={workbook} onWrite={() => void write()} />}
    </div>
  );
}
