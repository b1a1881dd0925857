import { MessageBar, MessageBarBody } from '@fluentui/react-components';

interface Props {
  readonly sentences: readonly string[];
}

/** Sentences that somebody should read before a paper goes out; nothing where there are none. */
export function CautionBar({ sentences }: Props) {
  if (sentences.length === 0) return null;
  return (
    <MessageBar intent="warning" layout="multiline" role="status">
      <MessageBarBody>
        {sentences.map(sentence => (
          <div key={sentence}>{sentence}</div>
        ))}
      </MessageBarBody>
    </MessageBar>
  );
}
