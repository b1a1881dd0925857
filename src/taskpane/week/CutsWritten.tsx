import { Button, MessageBar, MessageBarActions, MessageBarBody } from '@fluentui/react-components';
import { withWhatStands } from '../../workbook/refusedWriting';
import type { Workbook } from '../../workbook/workbook';
import { SheetLinks } from '../controls/SheetLinks';
import { WriteButton } from '../controls/WriteButton';
import { WritingBar } from '../controls/WritingBar';
import type { CutsOutcome } from './useCutPlans';

interface OutcomeProps {
  readonly writing: CutsOutcome;
  readonly workbook: Workbook;
  readonly onAddStatus: () => void;
}

export function CutsWritten({ writing: { outcome, written, undo, column, undoColumn }, workbook, onAddStatus }: OutcomeProps) {
  if (outcome.kind === 'none' || outcome.kind === 'busy') return null;
  if (outcome.kind !== 'written' || !written) {
    const isUndone = outcome.kind === 'undone';
    return (
      <MessageBar intent={isUndone ? 'info' : 'error'} layout="multiline">
        <MessageBarBody>{outcome.kind === 'refused' ? withWhatStands(outcome.sentence) : 'Taken back.'}</MessageBarBody>
      </MessageBar>
    );
  }
  const sheets = [written.cutList, written.rackAfter, written.pieces];
  return (
    <>
      <MessageBar intent="success" layout="multiline">
        <MessageBarBody>
          Written: <SheetLinks workbook={workbook} sheets={sheets} />. {written.piecesTold}
        </MessageBarBody>
        <MessageBarActions>
          <Button size="small" onClick={undo}>
            Undo
          </Button>
        </MessageBarActions>
      </MessageBar>
      {written.withoutStatus.length > 0 && column.kind === 'none' && (
        <MessageBar intent="info" layout="multiline">
          <MessageBarBody>
            The job sheet has no column Status. With one it says how far each line is, and nobody plans a line twice.
          </MessageBarBody>
          <MessageBarActions>
            <WriteButton size="small" onClick={onAddStatus}>
              Add a column Status
            </WriteButton>
          </MessageBarActions>
        </MessageBar>
      )}
      <WritingBar outcome={column} onUndo={undoColumn} />
    </>
  );
}
