import { Body1, Caption1, Field, Input, makeStyles, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { monthsOfAge } from '../../sheets/cutlist/cutSettings';
import { BENCH_CAUTIONS } from '../../sheets/print/cautions';
import { freeSheetName } from '../../sheets/print/freeSheetName';
import { newSheetWriting } from '../../sheets/print/writing';
import { benchStep } from '../../sheets/table/benchStep';
import { today } from '../../sheets/table/today';
import { typedShare } from '../../sheets/table/typedFields';
import { orderSentence } from '../../sheets/week/weekText';
import { orderSheet, pickSheet } from '../../sheets/week/weekSheets';
import type { Change } from '../../workbook/workbook';
import { useBenchFields } from '../controls/useBenchFields';
import { JobsNote, WITH_PLANNED } from '../controls/JobsNote';
import { MachineField } from '../controls/MachineField';
import { useMachines } from '../controls/useMachines';
import { useStored } from '../controls/useStored';
import { useWriting } from '../controls/useWriting';
import type { ViewProps } from '../controls/viewProps';
import { WriteButton } from '../controls/WriteButton';
import { WritingBar } from '../controls/WritingBar';
import { FRESH_ORDER, machineNow, type OrderFields } from './orderFields';
import { OrderGroups } from './OrderGroups';
import { PickTable } from './PickTable';
import { RackNote } from './RackNote';
import { useOrder, type OrderRead, type OrderTicks } from './useOrder';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(128px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

/** The order in which the selected lines are crimped, and what to fetch for them. */
export function OrderView({ workbook }: ViewProps) {
  const styles = useStyles();
  const [fields, setFields] = useStored<OrderFields>('order', FRESH_ORDER);
  const [bench] = useBenchFields(workbook);
  const [ticks, setTicks] = useState<OrderTicks>(WITH_PLANNED);
  const { names } = useMachines(workbook);
  const { outcome, write, undo } = useWriting(workbook);
  const { mistake } = typedShare(fields.share);
  const unit = bench.unit;
  const wishes = { unit, step: benchStep(bench, unit), ageLimitMonths: monthsOfAge(bench), ...machineNow(fields) };
  const { view, refresh, show } = useOrder(workbook, wishes, ticks);

  const writeAs = (name: string, changes: (sheet: string, read: OrderRead, source: string) => readonly Change[]) =>
    write(async () => {
      if (view.status !== 'ready') throw new Error('There is nothing to write yet.');
      const sheet = freeSheetName(name, await workbook.sheets(), today());
      const source = `From sheet ${view.jobs.report.sheet}${view.rack ? ` and rack ${view.rack}` : ''}, ${today()}`;
      return newSheetWriting(sheet, changes(sheet, view, source));
    });
  const text = (field: 'die' | 'dial' | 'share', label: string, hint: string, mistake?: string) => (
    <Field label={label} hint={hint} validationState={mistake ? 'error' : 'none'} validationMessage={mistake}>
      <Input className={styles.narrow} value={fields[field]} onChange={(_, { value }) => setFields({ [field]: value })} />
    </Field>
  );
  return (
    <div className={styles.view}>
      <Body1>The order with the fewest die changes, then dial changes, for the selected job lines; and what to fetch.</Body1>
      {view.status === 'ready' && (
        <>
          <Body1 role="status">{orderSentence(view.order)}</Body1>
          <OrderGroups order={view.order} onShow={show} />
          <PickTable picks={view.picks} />
          <div className={styles.row}>
            <WriteButton
              appearance="primary"
              disabled={outcome.kind === 'busy' || view.order.groups.length === 0}
              onClick={() => void writeAs('Order of work', (sheet, read, source) => orderSheet(sheet, read.order, source))}
            >
              Write order
            </WriteButton>
            <WriteButton
              disabled={outcome.kind === 'busy' || view.picks.items.length === 0}
              onClick={() => void writeAs('Pick list', (sheet, read, source) => pickSheet(sheet, read.picks, source))}
            >
              Write pick list
            </WriteButton>
          </div>
          <WritingBar outcome={outcome} onUndo={() => void undo()} />
        </>
      )}
      <JobsNote
        workbook={workbook}
        view={view}
        ticks={ticks}
        onTicks={change => setTicks({ ...ticks, ...change })}
        onAnswered={refresh}
        onShow={show}
      />
      {view.status === 'ready' && view.stock && (
        <RackNote
          workbook={workbook}
          rack={view.stock}
          take={ticks.takeRack ?? new Set()}
          onTake={takeRack => setTicks({ ...ticks, takeRack })}
          onAnswered={refresh}
        />
      )}
      <details>
        <summary>Settings</summary>
        <div className={styles.grid}>
          <MachineField value={fields.machine} machines={names} onChange={value => setFields({ machine: value })} />
          {text('die', 'Die in the machine', 'Comes first. Blank: not known.')}
          {text('dial', 'Dial set now', 'Blank: not known.')}
          {text('share', 'One dial may cost', 'Share of the tolerance, for both ends at one dial. 0: never.', mistake)}
        </div>
      </details>
      <Caption1>{BENCH_CAUTIONS[1]}</Caption1>
    </div>
  );
}
