import { MessageBar, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import type { CellView } from '../../../sheets/explain/cellView';

/** The error that the selected cell shows, in a sentence, or why its value cannot be right; nothing where there is nothing wrong with it. */
export function CellErrorBar({ cell: { address, error, sentence, warning } }: { readonly cell: CellView }) {
  if (warning) {
    return (
      <MessageBar intent="error" layout="multiline" politeness="polite">
        <MessageBarBody>
          <MessageBarTitle>{address} is not right</MessageBarTitle>
          {warning}
        </MessageBarBody>
      </MessageBar>
    );
  }
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
