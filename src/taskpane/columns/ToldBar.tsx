import { MessageBar, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import type { Told } from './TableColumns';

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
