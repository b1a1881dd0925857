import { Field, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, Select } from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import { RACK_HEADINGS } from '../../sheets/rack/rackTable';
import type { Workbook } from '../../workbook/workbook';
import { HeadingsByHand } from '../controls/HeadingsByHand';
import { useOnSheets } from '../controls/useOnSheets';

const useStyles = makeStyles({ narrow: { minWidth: 0 } });

interface Props {
  readonly workbook: Workbook;
  /** What the headings of a sheet mean is remembered: look for racks again. */
  readonly onCorrected: () => void;
}

/** Where no rack was found: what a rack is, and which sheet is one whose headings are in other words. */
export function RackByHand({ workbook, onCorrected }: Props) {
  const styles = useStyles();
  const [sheets, setSheets] = useState<readonly string[]>([]);
  const [sheet, setSheet] = useState('');
  const look = useCallback(async () => setSheets(await workbook.sheets()), [workbook]);
  useOnSheets(workbook, look);
  return (
    <>
      <MessageBar intent="warning" layout="multiline">
        <MessageBarBody>
          <MessageBarTitle>No rack yet</MessageBarTitle>
          Make a sheet with your stock: Hose, Length (mm), Quantity, Place; Lot and Made if you keep them.
        </MessageBarBody>
      </MessageBar>
      <Field label="Or choose the sheet with your stock">
        <Select className={styles.narrow} value={sheet} onChange={(_, { value }) => setSheet(value)}>
          <option value="">none of these</option>
          {sheets.map(name => (
            <option key={name}>{name}</option>
          ))}
        </Select>
      </Field>
      {sheets.includes(sheet) && (
        <HeadingsByHand key={sheet} workbook={workbook} of={RACK_HEADINGS} sheet={sheet} onCorrected={onCorrected} />
      )}
    </>
  );
}
