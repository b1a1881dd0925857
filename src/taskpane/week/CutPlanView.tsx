import { Body1, Button, makeStyles, MessageBar, MessageBarBody, tokens } from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { useFirstMistake } from '../controls/useFirstMistake';
import { useBenchFields } from '../controls/useBenchFields';
import { CutFields } from '../controls/CutFields';
import { readSettings, type CutSettings } from '../../sheets/cutlist/cutSettings';
import type { CutWishes } from '../../sheets/cutlist/gatherCuts';
import { rackSheets } from '../../sheets/rack/rack';
import { PlanProgressView } from '../controls/PlanProgressView';
import { NoJobs } from '../../sheets/jobs/readJobs';
import { JobsNote } from '../controls/JobsNote';
import { CutResults, OverallBar } from './CutResults';
import { RackByHand } from './RackByHand';
import { useOnSheets } from '../controls/useOnSheets';
import type { ViewProps } from '../controls/viewProps';
import { useCutsOptions } from './useCutsOptions';
import { useCutPlans, type ReadyCuts } from './useCutPlans';

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

/** True where a plan was made with another rack or other settings than stand in the fields now. */
function isOfOtherFields({ gathered }: ReadyCuts, rack: string, settings: CutSettings | undefined): boolean {
  return gathered.rackSheet !== rack || JSON.stringify(gathered.settings) !== JSON.stringify(settings);
}

/** Plans what to cut from which reel for the selected job lines, shows it, and writes it to new sheets. */
export function CutPlanView({ workbook, services, goTo }: Pick<ViewProps, 'workbook' | 'services' | 'goTo'>) {
  const styles = useStyles();
  const [fields, setFields] = useBenchFields(workbook);
  const [chosenRack, setChosenRack] = useState('');
  const [isAsked, setIsAsked] = useState(false);
  const [wishes, setWishes] = useState<CutWishes>({});
  const [form, leadToMistake] = useFirstMistake<HTMLDivElement>();
  const [racks, look] = useRacks(workbook);
  const rack = racks.includes(chosenRack) ? chosenRack : (racks[0] ?? '');
  const { settings, mistakes } = readSettings(fields);
  const { view, plan, cancel, write, addStatus, writing } = useCutPlans(workbook, services.solve, services.plansAtOnce);
  // The rack that writing a plan leaves is offered next; the plan is not old for that.
  const isOwnRack = chosenRack !== rack && rack === writing.written?.rackAfter;
  const optionsOf = useCutsOptions();
  const start = async () => {
    setIsAsked(true);
    leadToMistake();
    const sheet = rack || (await look())[0];
    if (settings && sheet) await plan(sheet, settings, wishes);
  };
  const again = (changed: CutWishes) => {
    setWishes(changed);
    if (view.status !== 'ready') return;
    const { rackSheet, settings: as, read } = view.gathered;
    void plan(rackSheet, as, changed, read.choice);
  };
  const onRack = (sheet: string) => {
    setChosenRack(sheet);
    if (view.status !== 'ready') return;
    const { settings: as, wishes: same, read } = view.gathered;
    void plan(sheet, as, same, read.choice);
  };
  return (
    <div ref={form} className={styles.view}>
      <Body1>Select the lines to cut in your job sheet, or one cell of it for all lines.</Body1>
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
      {isAsked && rack === '' && <RackByHand workbook={workbook} onCorrected={() => void look()} />}
      {view.status === 'failed' && view.error instanceof NoJobs && (
        <JobsNote workbook={workbook} view={view} ticks={wishes} onTicks={again} onAnswered={() => void start()} />
      )}
      {view.status === 'failed' && !(view.error instanceof NoJobs) && (
        <MessageBar intent="error" layout="multiline" role="alert">
          <MessageBarBody>{view.reason}</MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'ready' && isOfOtherFields(view, isOwnRack ? view.gathered.rackSheet : rack, settings) && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            The plan below was made from sheet {view.gathered.rackSheet} with earlier settings. Plan the cuts again to use those
            above.
          </MessageBarBody>
        </MessageBar>
      )}
      {/* The region is there before its words: some screen readers say only what changes in one. */}
      <div role="status">{view.status === 'ready' && <OverallBar plans={view.plans} unit={view.gathered.settings.unit} />}</div>
      {view.status === 'ready' && (
        <CutResults
          view={view}
          writing={writing}
          workbook={workbook}
          services={services}
          onWrite={() => void write(optionsOf)}
          onAddStatus={() => void addStatus()}
          onAgain={again}
          onRack={onRack}
          onColumns={() => goTo('week/columns')}
        />
      )}
    </div>
  );
}
