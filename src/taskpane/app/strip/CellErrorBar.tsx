import { MessageBar, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import type { CellView } from '../../../sheets/explain/cellView';

/** The error that the selected cell shows, in a sentence; nothing where it shows none. */
export function CellErrorBar({ cell: { address, error, sentence } }: { readonly cell: CellView }) {
  if (!error) return null;
  return (
    <MessageBar intent="error" layout="multiline" politeness="polite">
      <MessageBarBody>
        <MessageBarTitle>
          {address} shows {error}
        </MessageBarTitle>
        {sentence ?? 'It does not come from a Benchrow function.'}
      </MessageBarBody>
    </MessageBar>
  );
}
