import { Divider, Field, Input, makeStyles, Select, tokens } from '@fluentui/react-components';
import { useEffect, useState } from 'react';
import { recordFieldMistake } from '../../sheets/inspection/recordFieldMistake';
import type { Workbook } from '../../workbook/workbook';
import type { TestResult } from '../../sheets/inspection/inspectionRecord';
import type { TypedRecordFields } from './useRecordFields';

const useStyles = makeStyles({
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(140px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  // Standard and clause.
  long: { gridColumn: '1 / -1' },
});

type Stored = TypedRecordFields;

interface Props {
  readonly workbook: Workbook;
  readonly stored: Stored;
  readonly onStored: (part: Partial<Stored>) => void;
  readonly otherSheet: string;
  readonly onOtherSheet: (sheet: string) => void;
  readonly result: TestResult;
  readonly onResult: (part: Partial<TestResult>) => void;
}

const WORK: readonly (readonly [keyof Stored, string])[] = [
  ['workshop', 'Workshop'],
  ['customer', 'Customer'],
  ['number', 'Record no.'],
  ['operator', 'Operator'],
  ['machine', 'Machine'],
  ['dieSet', 'Die set'],
  ['hoseLot', 'Hose lot'],
  ['hoseMade', 'Hose made'],
  ['fittingLot', 'Coupling lot'],
  ['caliper', 'Caliper'],
  ['caliperChecked', 'Caliper calibrated'],
  ['uncertainty', 'Uncertainty U (k = 2)'],
];
const PROOF: readonly (readonly [keyof Stored, string])[] = [
  ['factor', 'Proof factor'],
  ['rule', 'Rule from'],
  ['hold', 'Held for'],
  ['medium', 'Medium'],
  ['gauge', 'Gauge'],
  ['gaugeChecked', 'Gauge calibrated'],
  ['tester', 'Tested by'],
  ['pressureUnit', 'Pressure unit'],
];
const RESULTS: readonly (readonly [keyof TestResult, string])[] = [
  ['leak', 'Leak'],
  ['slip', 'Slip'],
  ['twist', 'Twist'],
];

/** What is the same for all chosen lines. Columns of the sheet come first. */
export function RecordFieldsForm({ workbook, stored, onStored, otherSheet, onOtherSheet, result, onResult }: Props) {
  const styles = useStyles();
  const [sheets, setSheets] = useState<readonly string[]>([]);
  useEffect(() => {
    workbook.sheets().then(setSheets, () => undefined);
  }, [workbook]);
  const field = ([name, label]: readonly [keyof Stored, string]) => {
    const mistake = recordFieldMistake(name, stored[name]);
    return (
      <Field
        key={name}
        className={name === 'rule' ? styles.long : undefined}
        label={label}
        hint={name === 'uncertainty' ? 'In the unit of the readings' : undefined}
        validationState={mistake ? 'error' : 'none'}
        validationMessage={mistake}
      >
        <Input className={styles.narrow} value={stored[name]} onChange={(_, { value }) => onStored({ [name]: value })} />
      </Field>
    );
  };
  return (
    <>
      <Field
        label="Also look on sheet"
        hint="For job lines where the selection holds readings, or the other way round; matched by line"
      >
        <Select className={styles.narrow} value={otherSheet} onChange={(_, { value }) => onOtherSheet(value)}>
          <option value="">no other sheet</option>
          {sheets.map(sheet => (
            <option key={sheet} value={sheet}>
              {sheet}
            </option>
          ))}
        </Select>
      </Field>
      <div className={styles.grid}>{WORK.map(field)}</div>
      <Divider>Proof test</Divider>
      <div className={styles.grid}>{PROOF.map(field)}</div>
      <div className={styles.grid}>
        {RESULTS.map(([name, label]) => (
          <Field key={name} label={label}>
            <Select className={styles.narrow} value={result[name]} onChange={(_, { value }) => onResult({ [name]: value })}>
              <option value="">by hand</option>
              <option value="none">none</option>
              <option value="found">found</option>
            </Select>
          </Field>
        ))}
      </div>
    </>
  );
}
