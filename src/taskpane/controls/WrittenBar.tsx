import { MessageBar, MessageBarBody } from '@fluentui/react-components';
import { withWhatStands } from '../../workbook/refusedWriting';
import type { Workbook } from '../../workbook/workbook';
import { SheetLinks } from './SheetLinks';
import type { Outcome } from './useRun';

interface Props {
  readonly workbook: Workbook;
  /** Sheets that were written. */
  readonly sheets?: readonly string[] | undefined;
  readonly outcome: Outcome<unknown>;
  /** What stands before the reason of a failure; that nothing was written, where it is left out. */
  readonly failure?: string;
}

/** Says which sheets were written, or why nothing was; read out by screen readers. */
export function WrittenBar({ workbook, sheets, outcome, failure }: Props) {
  return (
    <div role="status">
      {outcome.status === 'failed' && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            {failure === undefined ? withWhatStands(outcome.reason) : `${failure}${outcome.reason}`}
          </MessageBarBody>
        </MessageBar>
      )}
      {outcome.status === 'done' && sheets && (
        <MessageBar intent="success" layout="multiline">
          <MessageBarBody>
            Written: <SheetLinks workbook={workbook} sheets={sheets} />
          </MessageBarBody>
        </MessageBar>
      )}
    </div>
  );
}
