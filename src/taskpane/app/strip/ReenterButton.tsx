import { Button, Caption1 } from '@fluentui/react-components';
import { ArrowClockwiseRegular } from '@fluentui/react-icons';
import { useState } from 'react';
import type { Workbook } from '../../../workbook/workbook';
import { errorSentence } from '../../../workbook/errorSentence';

const enteredText = (count: number) =>
  count === 0 ? 'No Benchrow formula shows #NAME?.' : `Entered ${count} ${count === 1 ? 'formula' : 'formulas'} again.`;

/** Enters formulas again that show #NAME? because the file was opened before the add-in was loaded. */
export function ReenterButton({ workbook }: { readonly workbook: Workbook }) {
  const [busy, setBusy] = useState(false);
  const [message, setMessage] = useState('');
  const enterAgain = async () => {
    setBusy(true);
    try {
      setMessage(enteredText(await workbook.reenterUnknownNames()));
    } catch (error) {
      setMessage(errorSentence(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <div role="group" aria-label="Formulas that show #NAME?">
      <Caption1 block>A file opened before the add-in was loaded shows #NAME? in Benchrow’s formulas.</Caption1>
      <Button icon={<ArrowClockwiseRegular />} disabled={busy} onClick={enterAgain}>
        Enter formulas again
      </Button>
      <Caption1 block role="status">
        {message}
      </Caption1>
    </div>
  );
}
