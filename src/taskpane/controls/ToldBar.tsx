import { MessageBar, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';

/** What an action did, or why it was not done. */
export type Told = { readonly intent: 'success' | 'error'; readonly text: string };

/** Says what was done, or why not; read out by screen readers. */
export function ToldBar({ message }: { readonly message: Told | undefined }) {
  return (
    <div role="status">
      {message && (
        <MessageBar intent={message.intent} layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>{message.intent === 'error' ? 'Not done' : 'Done'}</MessageBarTitle> {message.text}
          </MessageBarBody>
        </MessageBar>
      )}
    </div>
  );
}
