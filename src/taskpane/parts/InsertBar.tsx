import { Button, MessageBar, MessageBarActions, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import { useEffect, useRef, type RefObject } from 'react';
import type { InsertState } from './useInsert';

interface Props {
  readonly state: InsertState;
  readonly onAgree: () => void;
  readonly onLeave: () => void;
}

/** Leads the keyboard to a question and, once it is answered, back to where it was asked. */
function useQuestionFocus(isAsking: boolean): RefObject<HTMLDivElement> {
  const bar = useRef<HTMLDivElement>(null);
  const askedAt = useRef<Element | null>(null);
  useEffect(() => {
    if (isAsking) {
      askedAt.current = document.activeElement;
      bar.current?.focus();
    } else if (document.activeElement === document.body || document.activeElement === bar.current) {
      if (askedAt.current instanceof HTMLElement) askedAt.current.focus();
      askedAt.current = null;
    }
  }, [isAsking]);
  return bar;
}

/** Says what was inserted, why not, or asks before cells are written over. */
export function InsertBar({ state, onAgree, onLeave }: Props) {
  const bar = useQuestionFocus(state.status === 'asking');
  return (
    <div role="status" ref={bar} tabIndex={-1}>
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
