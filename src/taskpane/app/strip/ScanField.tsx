import { Input, makeStyles, tokens } from '@fluentui/react-components';
import { BarcodeScannerRegular } from '@fluentui/react-icons';
import { useState } from 'react';

const useStyles = makeStyles({
  field: { flexShrink: 0, width: '116px', minWidth: 0, marginRight: tokens.spacingHorizontalS },
});

interface Props {
  /** A text was typed and Enter pressed, which a keyboard scanner does by itself. */
  onScan(text: string): void;
}

/** A tag can be scanned wherever one is in the pane: its piece is shown in Entry. */
export function ScanField({ onScan }: Props) {
  const styles = useStyles();
  const [text, setText] = useState('');
  const go = () => {
    if (text.trim() === '') return;
    onScan(text);
    setText('');
  };
  return (
    <Input
      className={styles.field}
      size="small"
      value={text}
      placeholder="Scan a tag"
      aria-label="Scan a tag, or type the number of a piece"
      autoComplete="off"
      contentBefore={<BarcodeScannerRegular />}
      onChange={(_, { value }) => setText(value)}
      onKeyDown={({ key }) => key === 'Enter' && go()}
    />
  );
}
