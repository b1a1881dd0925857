import { Caption1, Checkbox } from '@fluentui/react-components';
import { useEffect, useState } from 'react';
import { startsWithWorkbook, startWithWorkbook } from '../../../host/excel/startup';
import { errorSentence } from '../../../workbook/errorSentence';

/** Whether Benchrow starts with this workbook; not shown where this host cannot do it. */
export function StartupChoice() {
  const [starts, setStarts] = useState<boolean>();
  const [message, setMessage] = useState('');
  useEffect(() => {
    void startsWithWorkbook().then(setStarts);
  }, []);
  if (starts === undefined) return null;
  const choose = async (wanted: boolean) => {
    try {
      await startWithWorkbook(wanted);
      setStarts(wanted);
      setMessage('Save the workbook to keep this.');
    } catch (error) {
      setMessage(`Excel did not take it: ${errorSentence(error)}`);
    }
  };
  return (
    <div role="group" aria-label="Start of Benchrow">
      <Checkbox
        label="Start Benchrow with this workbook"
        checked={starts}
        onChange={(_, { checked }) => void choose(checked === true)}
      />
      <Caption1 block>
        Its formulas then calculate as soon as it is opened. People who do not have Benchrow get an error message from Excel.
      </Caption1>
      <Caption1 block role="status">
        {message}
      </Caption1>
    </div>
  );
}
