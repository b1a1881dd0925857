import { Field, Input, makeStyles } from '@fluentui/react-components';
import { useId } from 'react';

const useStyles = makeStyles({ narrow: { minWidth: 0, width: '100%' } });

interface Props {
  readonly value: string;
  readonly machines: readonly string[];
  readonly onChange: (machine: string) => void;
  readonly label?: string;
}

/** A machine's name: those of the table Machines are offered, others may be typed. */
export function MachineField({ value, machines, onChange, label = 'Machine' }: Props) {
  const styles = useStyles();
  const list = useId();
  return (
    <Field label={label}>
      <Input className={styles.narrow} list={list} value={value} onChange={(_, { value: typed }) => onChange(typed)} />
      <datalist id={list}>
        {machines.map(name => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </Field>
  );
}
