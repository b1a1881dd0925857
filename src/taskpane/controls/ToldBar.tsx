import { MessageBar, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';

/** What an action did, or why it was not done. */
export type Told = { readonly intent: 'success' | 'error'; readonly text: string };

/** Says what was done, or why not; read out by screen readers. */
export function ToldBar({ told }: { readonly told: Told | undefined }) {
  return (
    <div role="status">
      {told && (
        <MessageBar intent={told.intent} layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>{told.intent === 'error' ? 'Not done' : 'Done'}</MessageBarTitle> {told.text}
          </MessageBarBody>
        </MessageBar>
      )}
    </div>
  );
}
