import { Body1, Caption1, Field, Input, makeStyles, Select, Subtitle2, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { Workbook } from '../../workbook/workbook';
import { WriteButton } from '../controls/WriteButton';
import { useStored } from '../controls/useStored';
import { CheckOutcome } from './CheckOutcome';
import { checkWriting } from '../../sheets/machines/checkWriting';
import { machineCheck, type CheckForm, type CheckResult } from '../../sheets/machines/machineCheck';
import { MachineField } from '../controls/MachineField';
import { useMachines } from '../controls/useMachines';
import { useWriting } from '../controls/useWriting';
import { WritingBar } from '../controls/WritingBar';

const useStyles = makeStyles({
  section: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(112px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  start: { alignSelf: 'flex-start' },
});

const FRESH = { unit: 'mm', machine: '', setUp: '', expected: '', perTurn: '', leaveAlone: '', by: '' };
const BLANK = ['', '', '', ''];

function tried(form: CheckForm): { readonly result?: CheckResult; readonly problem?: string } {
  try {
    return { result: machineCheck(form) };
  } catch (error) {
    return { problem: (error as Error).message };
  }
}

function SeenFields({
  unit,
  readings,
  onChange,
}: {
  readonly unit: LengthUnit;
  readonly readings: readonly string[];
  readonly onChange: (readings: readonly string[]) => void;
}) {
  const styles = useStyles();
  return readings.map((reading, index) => (
    <Field key={index} label={`Seen ${index + 1} (${unit})`}>
      <Input
        className={styles.narrow}
        inputMode="decimal"
        autoComplete="off"
        value={reading}
        onChange={(_, { value }) => onChange(readings.map((each, at) => (at === index ? value : each)))}
      />
    </Field>
  ));
}

/** The periodic check of a machine with a reference set-up. */
export function CheckSection({ workbook }: { readonly workbook: Workbook }) {
  const styles = useStyles();
  const [fields, setFields] = useStored('machineCheck', FRESH);
  const [readings, setReadings] = useState<readonly string[]>(BLANK);
  const [note, setNote] = useState('');
  const [isAsked, setIsAsked] = useState(false);
  const machines = useMachines(workbook);
  const { outcome, write, undo } = useWriting(workbook);
  const unit = fields.unit as LengthUnit;
  const known = machines.perTurn(fields.machine, unit);
  const form: CheckForm = { ...fields, unit, readings, perTurn: fields.perTurn || known };
  const { result, problem } = tried(form);
  const isNamed = fields.machine.trim() !== '' && fields.setUp.trim() !== '';
  const text = (name: keyof typeof FRESH, label: string, hint?: string, placeholder?: string) => (
    <Field label={label} hint={hint}>
      <Input
        className={styles.narrow}
        value={fields[name]}
        placeholder={placeholder}
        onChange={(_, { value }) => setFields({ [name]: value })}
      />
    </Field>
  );
  const log = () => {
    setIsAsked(true);
    if (result && isNamed) void write(() => checkWriting(workbook, { form, result, by: fields.by, note }));
  };
  return (
    <section className={styles.section} aria-label="Check of the machine">
      <Subtitle2 as="h2">Check</Subtitle2>
      <Body1>Crimp your reference set-up, measure it, and see how far the machine has moved.</Body1>
      <MachineField value={fields.machine} machines={machines.names} onChange={machine => setFields({ machine })} />
      {text('setUp', 'Reference set-up', 'Hose, coupling, die and dial, or your ring’s name')}
      <div className={styles.grid}>
        <Field label="Unit">
          <Select className={styles.narrow} value={unit} onChange={(_, { value }) => setFields({ unit: value })}>
            <option value="mm">mm</option>
            <option value="in">in</option>
          </Select>
        </Field>
        {text('expected', `Expected diameter (${unit})`)}
        <SeenFields unit={unit} readings={readings} onChange={setReadings} />
        {text('perTurn', `Change per turn (${unit})`, known ? 'From Machines' : 'Of the calibration screw', known)}
        {text('leaveAlone', `Leave alone within (${unit})`, 'Blank: you decide.')}
        {text('by', 'Done by')}
      </div>
      <Field label="Note">
        <Input className={styles.narrow} value={note} onChange={(_, { value }) => setNote(value)} />
      </Field>
      <CheckOutcome result={result} unit={unit} isAsked={isAsked} problem={problem} isNamed={isNamed} />
      <WriteButton className={styles.start} appearance="primary" disabled={outcome.kind === 'busy'} onClick={log}>
        Write to Machine log
      </WriteButton>
      <WritingBar outcome={outcome} onUndo={() => void undo()} />
      <Caption1>
        One set-up cannot tell the machine from its own dial: check two others, or look at Analysis, before you turn the screw.
        Lock the crimper out before you reach into it. The maker’s manual says which way the screw turns.
      </Caption1>
    </section>
  );
}
