import { Body1, Caption1, Field, Input, makeStyles, tokens } from '@fluentui/react-components';
import { useEffect, useState } from 'react';
import { typedDial } from '../../sheets/table/typedFields';
import type { Workbook } from '../../workbook/workbook';
import { today } from '../../sheets/table/today';
import { NoPartsData } from '../controls/NoPartsData';
import type { ViewProps } from '../controls/viewProps';
import { AcceptDial } from '../controls/AcceptDial';
import { MachineField } from '../controls/MachineField';
import { readCrimpRows } from '../../sheets/crimps/readCrimpRows';
import { useMachines } from '../controls/useMachines';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(112px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
});

interface Fields {
  readonly machine: string;
  readonly hose: string;
  readonly fitting: string;
  readonly die: string;
  readonly dial: string;
  readonly date: string;
  readonly note: string;
}

/** What the selected row of readings says of machine and combination. */
async function fromSelection(workbook: Workbook): Promise<Partial<Fields>> {
  const [reading, { row }] = await Promise.all([readCrimpRows(workbook), workbook.selection()]);
  const found = reading?.rows.find(({ rows }) => rows.includes(row + 1));
  return found ? { machine: found.machine, hose: found.hose, fitting: found.fitting, die: found.die || found.wantedDie } : {};
}

/** Until a dial is typed for a pair, the pair follows the selection. */
const isOpenToPair = ({ machine, hose, fitting, dial }: Fields) => dial === '' || machine + hose + fitting === '';

/** The dials that machines have of their own: one is recorded with its day, the old ones are kept. */
export function DialsView({ workbook, goTo }: ViewProps) {
  const styles = useStyles();
  const [fields, setFields] = useState<Fields>({
    machine: '',
    hose: '',
    fitting: '',
    die: '',
    dial: '',
    date: today(),
    note: '',
  });
  const machines = useMachines(workbook);
  useEffect(() => {
    const follow = () =>
      void fromSelection(workbook).then(
        found => setFields(before => (isOpenToPair(before) ? { ...before, ...found } : before)),
        () => undefined,
      );
    follow();
    return workbook.onSelection(follow);
  }, [workbook]);
  const set = (part: Partial<Fields>) => setFields({ ...fields, ...part });
  const { value: dial, mistake } = typedDial(fields.dial);
  const text = (name: keyof Fields, label: string, options?: readonly string[], hint?: string) => (
    <Field key={name} label={label} {...(hint !== undefined && { hint })}>
      <Input
        className={styles.narrow}
        list={options && `dials-${name}`}
        value={fields[name]}
        onChange={(_, { value }) => set({ [name]: value })}
      />
      {options && (
        <datalist id={`dials-${name}`}>
          {options.map(option => (
            <option key={option} value={option} />
          ))}
        </datalist>
      )}
    </Field>
  );
  return (
    <div className={styles.view}>
      <Body1>
        Records a machine’s own dial for a hose and a coupling in the table Machines, with date, time and who set it. Earlier
        dials stay as its history; CRIMPSETUP uses the newest. Select a row of readings to fill in its machine and parts.
      </Body1>
      <NoPartsData workbook={workbook} goTo={goTo} />
      <MachineField value={fields.machine} machines={machines.names} onChange={machine => set({ machine })} />
      {text('hose', 'Hose', machines.hoses)}
      {text('fitting', 'Coupling', machines.fittings)}
      <div className={styles.grid}>
        {text('die', 'Die')}
        <Field label="New dial" validationState={mistake ? 'error' : 'none'} validationMessage={mistake}>
          <Input
            className={styles.narrow}
            inputMode="decimal"
            value={fields.dial}
            onChange={(_, { value }) => set({ dial: value })}
          />
        </Field>
        {text('date', 'From', undefined, 'Today: from now. Or like 2026-03-14 15:30.')}
      </div>
      {text('note', 'Note')}
      {dial ? (
        <AcceptDial
          key={JSON.stringify(fields)}
          workbook={workbook}
          proposal={{ ...fields, dial }}
          label="Compare with the dial that counts now"
        />
      ) : (
        <Caption1>Enter the new dial to compare it with the one that counts now.</Caption1>
      )}
      <Caption1>
        Try a new dial on one trial piece before the batch goes on, measure it, and record the dial once the piece is in spec.
        Scrap what is out of spec: do not crimp it again unless the maker allows it. The makers’ current data come first.
      </Caption1>
    </div>
  );
}
