import { Body1, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, Spinner, tokens } from '@fluentui/react-components';
import type { ViewProps } from '../controls/viewProps';
import { CRIMP_HEADINGS } from '../../sheets/crimps/crimpHeadings';
import { TablesToSelect } from '../controls/TablesToSelect';
import { HeadingsByHand } from '../controls/HeadingsByHand';
import { TableAnalysis } from './TableAnalysis';
import { useAnalysis } from './useAnalysis';

const useStyles = makeStyles({ view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, minWidth: 0 } });

/** What the readings around the selection say of machine and settings. */
export function AnalysisView({ workbook }: ViewProps) {
  const styles = useStyles();
  const { view, refresh } = useAnalysis(workbook);
  return (
    <div className={styles.view}>
      {view.status === 'loading' && <Spinner label="Reading the crimps" />}
      {view.status === 'failed' && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>The crimps cannot be read</MessageBarTitle>
            {view.reason}
          </MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'none' && (
        <>
          <Body1>
            No readings here. Select a cell among your caliper readings: one crimp a row with its readings side by side, both ends
            in a row, or one reading a row.
          </Body1>
          <TablesToSelect workbook={workbook} holds="readings" />
          <HeadingsByHand workbook={workbook} of={CRIMP_HEADINGS} onCorrected={refresh} />
        </>
      )}
      {view.status === 'ready' && <TableAnalysis workbook={workbook} source={view.source} onChanged={refresh} />}
    </div>
  );
}
