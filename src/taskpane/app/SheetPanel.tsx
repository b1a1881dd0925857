import { Divider, makeStyles, MessageBar, MessageBarBody, Spinner, tokens } from '@fluentui/react-components';
import type { PanelProps } from '../controls/panelProps';
import { FunctionCard } from './FunctionCard';
import { ReenterButton } from './ReenterButton';
import { RowCard } from './RowCard';
import { useSheetView } from './useSheetView';

const useStyles = makeStyles({ panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalL } });

/** Explains the selected cell's function and error, and shows the verdict of its row. */
export function SheetPanel({ workbook, functions }: PanelProps) {
  const styles = useStyles();
  const { view } = useSheetView(workbook, functions);
  return (
    <div className={styles.panel}>
      {view.status === 'loading' && <Spinner label="Reading the selected cell" />}
      {view.status === 'failed' && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>The selection cannot be read: {view.reason}</MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'ready' && (
        <>
          <RowCard row={view.row} />
          <FunctionCard cell={view.cell} />
        </>
      )}
      <Divider />
      <ReenterButton workbook={workbook} />
    </div>
  );
}
