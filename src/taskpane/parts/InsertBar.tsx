import { Button, MessageBar, MessageBarActions, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import type { InsertState } from './useInsert';

interface Props {
  readonly state: InsertState;
  readonly onAgree: () => void;
  readonly onLeave: () => void;
}

/** Says what was inserted, why not, or asks before cells are written over. */
export function InsertBar({ state, onAgree, onLeave }: Props) {
  return (
    <div role="status">
      {state.status === 'asking' && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>Write over?</MessageBarTitle>
            {state.over.join('; ')}.
          </MessageBarBody>
          <MessageBarActions>
            <Button size="small" onClick={onAgree}>
              Write over
            </Button>
            <Button size="small" onClick={onLeave}>
              Leave it
            </Button>
          </MessageBarActions>
        </MessageBar>
      )}
      {(state.status === 'done' || state.status === 'failed') && (
        <MessageBar intent={state.status === 'done' ? 'success' : 'error'} layout="multiline">
          <MessageBarBody>{state.text}</MessageBarBody>
        </MessageBar>
      )}
    </div>
  );
}
