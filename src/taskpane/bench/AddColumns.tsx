import { Button, Caption1, makeStyles, MessageBar, MessageBarBody, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { addEntryColumns, missingColumns } from '../../sheets/crimps/entryColumns';
import type { CrimpReading } from '../../sheets/crimps/readCrimpRows';
import type { Workbook } from '../../workbook/workbook';
import { errorSentence } from '../../workbook/errorSentence';

const useStyles = makeStyles({
  row: { display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: tokens.spacingHorizontalS },
});

interface Props {
  readonly workbook: Workbook;
  readonly reading: CrimpReading;
  /** The columns are there: read the rows again. */
  readonly onAdded: () => void;
}

/** Offers the columns that Entry would fill in and the table has not got. */
export function AddColumns({ workbook, reading, onAdded }: Props) {
  const styles = useStyles();
  const [reason, setReason] = useState('');
  const [table] = reading.tables;
  const missing = table ? missingColumns(table) : [];
  if (!table || missing.length === 0) return null;
  const add = async () => {
    try {
      await workbook.write(addEntryColumns(table));
      setReason('');
      onAdded();
    } catch (error) {
      setReason(errorSentence(error));
    }
  };
  return (
    <>
      <div className={styles.row}>
        <Caption1>Not kept, because the table has no columns for them: {missing.join(', ')}.</Caption1>
        <Button size="small" onClick={() => void add()}>
          Add these columns
        </Button>
      </div>
      {reason && (
        <MessageBar intent="error" layout="multiline" role="alert">
          <MessageBarBody>{reason}</MessageBarBody>
        </MessageBar>
      )}
    </>
  );
}
