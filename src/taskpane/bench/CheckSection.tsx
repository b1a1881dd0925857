import { Body1, Caption1, Field, Input, makeStyles, Select, Subtitle2, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { Workbook } from '../../workbook/workbook';
import { WriteButton } from '../controls/WriteButton';
import { useStored } from '../controls/useStored';
import { CheckOutcome } from './CheckOutcome';
import { checkWriting } from '../../sheets/machines/checkWriting';
import { machineCheck, type CheckForm, type CheckResult } from '../../sheets/machines/machineCheck';
import { asksForScrew, NOT_SAID, turnsMade, type ScrewTurned } from '../../sheets/machines/screwTurned';
import { ScrewQuestion } from './ScrewQuestion';
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

/** Turns that were made; undefined as long as nobody has said it, which the question itself says. */
function turnsSaid(result: CheckResult, turned: ScrewTurned) {
  try {
    return turnsMade(result, turned);
  } catch {
    return undefined;
  }
}

function ReadingInputs({
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
    <Field key={index} label={`Reading ${index + 1} (${unit})`}>
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
  const [turned, setTurned] = useState(NOT_SAID);
  const [isAsked, setIsAsked] = useState(false);
  const machines = useMachines(workbook);
  const { outcome, write, undo } = useWriting(workbook, () => {
    setTurned(NOT_SAID);
    setIsAsked(false);
  });
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
  // Another crimp or another machine is another check: nobody has said yet what came of it.
  const measured = (next: readonly string[]) => {
    setReadings(next);
    setTurned(NOT_SAID);
  };
  const chosen = (machine: string) => {
    setFields({ machine });
    setTurned(NOT_SAID);
  };
  const log = () => {
    setIsAsked(true);
    const made = result && isNamed ? turnsSaid(result, turned) : undefined;
    if (result && made) void write(() => checkWriting(workbook, { form, result, by: fields.by, note, turned: made }));
  };
  return (
    <section className={styles.section} aria-label="Check of the machine">
      <Subtitle2 as="h2">Check</Subtitle2>
      <Body1>Crimp your reference set-up, measure it, and see how far the machine has moved.</Body1>
      <MachineField value={fields.machine} machines={machines.names} onChange={chosen} />
      {text('setUp', 'Reference set-up', 'Hose, coupling, die and dial, or your ring’s name')}
      <div className={styles.grid}>
        <Field label="Unit">
          <Select className={styles.narrow} value={unit} onChange={(_, { value }) => setFields({ unit: value })}>
            <option value="mm">mm</option>
            <option value="in">in</option>
          </Select>
        </Field>
        {text('expected', `Expected diameter (${unit})`)}
        <ReadingInputs unit={unit} readings={readings} onChange={measured} />
        {text('perTurn', `Change per turn (${unit})`, known ? 'From Machines' : 'Of the calibration screw', known)}
        {text('leaveAlone', `Leave alone within (${unit})`, 'Blank: you decide.')}
        {text('by', 'Done by')}
      </div>
      <Field label="Note">
        <Input className={styles.narrow} value={note} onChange={(_, { value }) => setNote(value)} />
      </Field>
      <CheckOutcome result={result} unit={unit} isAsked={isAsked} problem={problem} isNamed={isNamed} />
      {result && asksForScrew(result) && <ScrewQuestion result={result} turned={turned} onTurned={setTurned} isAsked={isAsked} />}
      <WriteButton className={styles.start} appearance="primary" disabled={outcome.kind === 'busy'} onClick={() => void log()}>
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
