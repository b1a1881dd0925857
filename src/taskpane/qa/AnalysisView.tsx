import { Body1, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, Spinner, tokens } from '@fluentui/react-components';
import { addressOf } from '../../workbook/a1';
import type { ViewProps } from '../controls/viewProps';
import { TableAnalysis } from './TableAnalysis';
import { useMeasurements } from './useMeasurements';

const useStyles = makeStyles({ view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, minWidth: 0 } });

/** What the readings around the selection say of machine and settings. */
export function AnalysisView({ workbook }: ViewProps) {
  const styles = useStyles();
  const view = useMeasurements(workbook);
  return (
    <div className={styles.view}>
      {view.status === 'loading' && <Spinner label="Reading the measurements" />}
      {view.status === 'failed' && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>The measurements cannot be read</MessageBarTitle>
            {view.reason}
          </MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'none' && (
        <Body1>
          No measurements here. Select a cell among your caliper readings: one crimp a row with its readings side by side, both
          ends in a row, or one reading a row.
        </Body1>
      )}
      {view.status === 'ready' && (
        <TableAnalysis
          key={`${view.table.sheet}!${addressOf({ ...view.table.block, row: Math.max(0, view.table.block.row), rows: 1 })} ${view.table.headings.join('|')}`}
          workbook={workbook}
          view={view}
        />
      )}
    </div>
  );
}
