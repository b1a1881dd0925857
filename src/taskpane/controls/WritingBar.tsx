import { Button, MessageBar, MessageBarActions, MessageBarBody } from '@fluentui/react-components';
import type { WritingOutcome } from './useWriting';

interface Props {
  readonly outcome: WritingOutcome;
  readonly onUndo: () => void;
}

/** Says what was written, with a way to take it back, or why nothing was. */
export function WritingBar(props: Props) {
  // The region is there before its words: some screen readers say only what changes in one.
  return (
    <div role="status">
      <Words {...props} />
    </div>
  );
}

function Words({ outcome, onUndo }: Props) {
  if (outcome.kind === 'none' || outcome.kind === 'busy') return null;
  if (outcome.kind === 'written') {
    return (
      <MessageBar intent="success" layout="multiline">
        <MessageBarBody>{outcome.writing.message}</MessageBarBody>
        <MessageBarActions>
          <Button size="small" onClick={onUndo}>
            Undo
          </Button>
        </MessageBarActions>
      </MessageBar>
    );
  }
  return (
    <MessageBar intent={outcome.kind === 'undone' ? 'info' : 'error'} layout="multiline">
      <MessageBarBody>{outcome.kind === 'undone' ? outcome.message : outcome.sentence}</MessageBarBody>
    </MessageBar>
  );
}
