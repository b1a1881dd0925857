import { Divider, makeStyles, MessageBar, MessageBarBody, Spinner, tokens } from '@fluentui/react-components';
import type { Workbook } from '../../../workbook/workbook';
import { CopyPanel } from '../../controls/copy/CopyPanel';
import { hostServices } from '../hostServices';
import { CellErrorBar } from './CellErrorBar';
import { FunctionCard } from './FunctionCard';
import { ReenterButton } from './ReenterButton';
import { RowCard } from './RowCard';
import { StartupChoice } from './StartupChoice';
import type { ExplainedCellView } from './useExplainedCell';

const useStyles = makeStyles({
  content: {
    minHeight: 0,
    overflowY: 'auto',
    padding: `0 ${tokens.spacingHorizontalM} ${tokens.spacingVerticalM}`,
    display: 'flex',
    flexDirection: 'column',
    gap: tokens.spacingVerticalM,
    '& h2': { margin: 0 },
  },
});

interface Props {
  readonly id: string;
  readonly view: ExplainedCellView;
  readonly workbook: Workbook;
}

/** All that there is to say of the selected cell: its error, its row with what to do, its function with the cells that went in. */
export function ExplainedCell({ id, view, workbook }: Props) {
  const styles = useStyles();
  return (
    <div className={styles.content} id={id} data-frame="strip">
      {view.status === 'loading' && <Spinner size="tiny" label="Reading the selected cell" />}
      {view.status === 'failed' && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>The selection cannot be read: {view.reason}</MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'ready' && (
        <>
          <CellErrorBar cell={view.cell} />
          <RowCard row={view.row} />
          <FunctionCard cell={view.cell} />
        </>
      )}
      <Divider />
      <ReenterButton workbook={workbook} />
      <StartupChoice />
      <CopyPanel workbook={workbook} services={hostServices} />
    </div>
  );
}
