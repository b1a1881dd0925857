import { Field, Input, makeStyles, Select, tokens } from '@fluentui/react-components';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { typedCrimpNumber, typedReadings, type CrimpFields } from '../../sheets/crimps/crimpFields';
import type { TypedName } from '../../sheets/crimps/crimpReadOptions';

const useStyles = makeStyles({
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(120px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
});

interface Props {
  readonly fields: CrimpFields;
  readonly unit: LengthUnit;
  /** Each reading has a row of its own: how many make a crimp. */
  readonly isColumn: boolean;
  /** Names of the catalogue's machines. */
  readonly machines: readonly string[];
  readonly onChange: (change: Partial<CrimpFields>) => void;
}

const ELSE = 'Used if sheet and catalogue give none';

/** Label, what its unit is called, hint. */
const NUMBERS: Readonly<Record<TypedName, readonly [string, 'length' | 'per digit' | 'per turn' | 'digits', string]>> = {
  target: ['Target', 'length', ELSE],
  tolerance: ['Tolerance ±', 'length', ELSE],
  largestSpread: ['Largest spread', 'length', 'More than this: OVAL. Blank: not checked.'],
  uncertainty: ['Uncertainty U', 'length', 'Expanded, k = 2. Blank: not used.'],
  step: ['Step', 'per digit', 'Used if Machines has none. Negative if a higher number crimps looser.'],
  perTurn: ['Change per turn', 'per turn', 'Of the calibration screw. Used if Machines has none.'],
  lowest: ['Lowest dial', 'digits', ELSE],
  highest: ['Highest dial', 'digits', ELSE],
  largestMove: ['Largest move', 'digits', ELSE],
};

function labelOf(name: TypedName, unit: LengthUnit): string {
  const [label, kind] = NUMBERS[name];
  if (kind === 'digits') return label;
  return kind === 'length' ? `${label} (${unit})` : `${label} (${unit} ${kind})`;
}

/** What counts where neither the sheet nor the catalogue says anything: limits, uncertainty, the machine and its dial and screw. */
export function CrimpSettings({ fields, unit, isColumn, machines, onChange }: Props) {
  const styles = useStyles();
  const input = (name: keyof CrimpFields, label: string, hint: string, mistake?: string) => (
    <Field
      key={name}
      label={label}
      size="small"
      hint={hint}
      validationState={mistake ? 'error' : 'none'}
      validationMessage={mistake}
    >
      <Input
        className={styles.narrow}
        size="small"
        inputMode={name === 'machine' ? 'text' : 'decimal'}
        value={fields[name]}
        onChange={(_, { value }) => onChange({ [name]: value })}
      />
    </Field>
  );
  return (
    <div className={styles.grid}>
      {isColumn && input('readingsACrimp', 'Readings a crimp', 'Rows, 2 to 10', typedReadings(fields.readingsACrimp).mistake)}
      {(Object.keys(NUMBERS) as TypedName[]).map(name =>
        input(name, labelOf(name, unit), NUMBERS[name][2], typedCrimpNumber(fields[name], name).mistake),
      )}
      {machines.length === 0 ? (
        input('machine', 'Machine', 'For rows that name none')
      ) : (
        <Field label="Machine" size="small" hint="For rows that name none">
          <Select
            className={styles.narrow}
            size="small"
            value={fields.machine}
            onChange={(_, { value }) => onChange({ machine: value })}
          >
            <option value="">not named</option>
            {[...new Set([...machines, ...(fields.machine ? [fields.machine] : [])])].map(name => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </Select>
        </Field>
      )}
    </div>
  );
}
