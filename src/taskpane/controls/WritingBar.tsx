import { Button, MessageBar, MessageBarActions, MessageBarBody } from '@fluentui/react-components';
import type { WritingOutcome } from './useWriting';

/** Says what was written, with a way to take it back, or why nothing was. */
export function WritingBar({ outcome, onUndo }: { readonly outcome: WritingOutcome; readonly onUndo: () => void }) {
  if (outcome.kind === 'none' || outcome.kind === 'busy') return null;
  if (outcome.kind === 'written') {
    return (
      <MessageBar intent="success" layout="multiline" role="status">
        <MessageBarBody>{outcome.writing.told}</MessageBarBody>
        <MessageBarActions>
          <Button size="small" onClick={onUndo}>
            Undo
          </Button>
        </MessageBarActions>
      </MessageBar>
    );
  }
  return (
    <MessageBar intent={outcome.kind === 'undone' ? 'info' : 'error'} layout="multiline" role="status">
      <MessageBarBody>{outcome.kind === 'undone' ? outcome.told : outcome.sentence}</MessageBarBody>
    </MessageBar>
  );
}
