import { Body1, Caption1, Checkbox, Field, makeStyles, Radio, RadioGroup, tokens } from '@fluentui/react-components';
import { useCallback, useRef, useState } from 'react';
import { CutFields } from '../controls/CutFields';
import { freshSettings, readSettings } from '../../sheets/cutlist/cutSettings';
import { rackSheets } from '../../sheets/rack/rack';
import type { PlanProgress } from '../../sheets/cutlist/planHoses';
import type { ViewProps } from '../controls/viewProps';
import { PlanProgressView } from '../controls/PlanProgressView';
import { cutListsOf } from '../../sheets/cutlist/readCutList';
import { today } from '../../sheets/table/today';
import { NoPartsData } from '../controls/NoPartsData';
import { ProblemList } from '../controls/ProblemList';
import { useOnSheets } from '../controls/useOnSheets';
import { WriteButton } from '../controls/WriteButton';
import { useStored } from '../controls/useStored';
import { useRun } from '../controls/useRun';
import { purchaseWishes, writePurchase, type WrittenPurchase } from '../../sheets/purchase/writePurchase';
import { JobsNote } from '../controls/JobsNote';
import { useJobsRead } from './useJobsRead';
import { WrittenBar } from '../controls/WrittenBar';

const useStyles = makeStyles({ view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM } });

type Mode = 'length' | 'plan' | 'list';
interface PurchaseFields {
  readonly mode: Mode | '';
  readonly newOnly: boolean;
  /** Hose is bought as long as it is needed, else in whole reels. */
  readonly byLength: boolean;
}
const FRESH: PurchaseFields = { mode: '', newOnly: false, byLength: false };

/** Sheets that reels can be counted by. */
interface StockSheets {
  readonly racks: readonly string[];
  readonly lists: readonly string[];
}

function useStockSheets(workbook: ViewProps['workbook']): StockSheets {
  const [found, setFound] = useState<StockSheets>({ racks: [], lists: [] });
  const look = useCallback(async () => {
    const racks = await rackSheets(workbook).catch(() => []);
    const lists = (await cutListsOf(workbook, 'mm').catch(() => [])).map(({ sheet }) => sheet);
    setFound({ racks, lists });
  }, [workbook]);
  useOnSheets(workbook, look);
  return found;
}

/** Writes what has to be bought for the selected job lines. */
export function PurchaseView({ workbook, services, goTo }: ViewProps) {
  const styles = useStyles();
  const [fields, setFields] = useStored('purchase', FRESH);
  const [cuts, setCuts] = useStored('cuts', freshSettings('mm'));
  const [isAsked, setIsAsked] = useState(false);
  const [chosenRack, setChosenRack] = useState('');
  const [progress, setProgress] = useState<PlanProgress>();
  const [outcome, run] = useRun<WrittenPurchase>();
  const read = useJobsRead(workbook, purchaseWishes);
  const signal = useRef({ aborted: false });
  const [isEnding, setIsEnding] = useState(false);
  const { racks, lists } = useStockSheets(workbook);
  const rack = racks.includes(chosenRack) ? chosenRack : racks[0];
  const { settings, mistakes } = readSettings(cuts);
  // Who has planned cuts before has said how the bench cuts; a list that stands is that plan itself.
  const usual: Mode = lists.length > 0 ? 'list' : settings ? 'plan' : 'length';
  const mode = fields.mode === 'list' && lists.length === 0 ? usual : fields.mode || usual;
  const isBusy = outcome.status === 'busy';

  const write = () => {
    setIsAsked(true);
    const by = fields.byLength ? 'length' : 'reel';
    if (mode !== 'plan') return run(() => writePurchase(workbook, mode === 'list' ? mode : undefined, today(), read.wishes, by));
    if (!settings) return;
    signal.current = { aborted: false };
    setIsEnding(false);
    setProgress(undefined);
    const rackSheet = fields.newOnly ? undefined : rack;
    const planning = { settings, rackSheet, solve: services.solve, onProgress: setProgress, signal: signal.current };
    return run(() => writePurchase(workbook, planning, today(), read.wishes, by));
  };
  const cancel = () => {
    signal.current.aborted = true;
    setIsEnding(true);
  };
  const written = outcome.status === 'done' ? outcome.result : undefined;
  const show = (row: number) => void workbook.select({ sheet: written!.read.sheet, address: `A${row}` });
  return (
    <div className={styles.view}>
      <Body1>Select the job lines to buy for, or one cell of them for all lines.</Body1>
      <NoPartsData workbook={workbook} goTo={goTo} />
      <JobsNote workbook={workbook} {...read} />
      <Field label="Count reels by">
        <RadioGroup value={mode} onChange={(_, { value }) => setFields({ mode: value as Mode })}>
          <Radio value="length" label="cut lengths plus scrap" />
          <Radio value="plan" label="a cut plan" />
          {lists.length > 0 && <Radio value="list" label={`the cut list already written (${lists.join(', ')})`} />}
        </RadioGroup>
      </Field>
      {mode === 'plan' && (
        <>
          <Checkbox
            label="Plan on new reels only"
            checked={fields.newOnly}
            onChange={(_, { checked }) => setFields({ newOnly: checked === true })}
          />
          <CutFields
            fields={cuts}
            mistakes={mistakes}
            isAsked={isAsked}
            racks={fields.newOnly ? [] : racks}
            rack={rack ?? ''}
            onFields={setCuts}
            onRack={setChosenRack}
          />
        </>
      )}
      <Field label="Buy hose" hint="Each hose can be changed in the sheet, in its column “Buy by”.">
        <RadioGroup
          value={fields.byLength ? 'length' : 'reel'}
          onChange={(_, { value }) => setFields({ byLength: value === 'length' })}
        >
          <Radio value="reel" label="in whole reels" />
          <Radio value="length" label="by the metre or foot" />
        </RadioGroup>
      </Field>
      {isBusy && mode === 'plan' ? (
        <PlanProgressView progress={progress} isEnding={isEnding} unit={cuts.unit} onCancel={cancel} />
      ) : (
        <WriteButton appearance="primary" disabled={isBusy} onClick={() => void write()}>
          Write the purchase list as a new sheet
        </WriteButton>
      )}
      <WrittenBar workbook={workbook} outcome={outcome} sheets={written && [written.sheet]} />
      {written && <ProblemList title="STOP, nothing bought for these lines" problems={written.read.stops} onShow={show} />}
      <Caption1 block>
        The list says which share of a reel is needed. Fittings and ferrules in whole packs (Pack quantity), ferrules as the crimp
        data name them. Type what is in stock into its column of the new sheet. Order only parts that the makers approve for each
        other.
      </Caption1>
    </div>
  );
}
