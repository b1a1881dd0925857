import { Field, Input, makeStyles, Select, tokens } from '@fluentui/react-components';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { typedNumber, type AnalysisFields, type NumberField } from '../../sheets/analysis/analysisFields';
import type { MeasurementLayout } from '../../sheets/crimps/measurementRoles';

const useStyles = makeStyles({
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(120px, 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
});

interface Props {
  readonly fields: AnalysisFields;
  readonly layout: MeasurementLayout;
  /** The unit that is used now. */
  readonly unit: LengthUnit;
  /** Names of the catalogue's machines. */
  readonly machines: readonly string[];
  readonly onChange: (change: Partial<AnalysisFields>) => void;
}

/** What the sheet does not say: limits, uncertainty, the machine and what its dial and screw do. */
export function SettingFields({ fields, layout, unit, machines, onChange }: Props) {
  const styles = useStyles();
  const number = (name: NumberField, label: string, hint: string) => {
    const { mistake } = typedNumber(fields[name], name);
    return (
      <Field
        label={`${label} (${unit})`}
        size="small"
        hint={hint}
        validationState={mistake ? 'error' : 'none'}
        validationMessage={mistake}
      >
        <Input
          className={styles.narrow}
          size="small"
          inputMode="decimal"
          value={fields[name]}
          onChange={(_, { value }) => onChange({ [name]: value })}
        />
      </Field>
    );
  };
  return (
    <div className={styles.grid}>
      <Field label="Unit" size="small" hint="Of diameters without one in the heading">
        <Select
          className={styles.narrow}
          size="small"
          value={unit}
          onChange={(_, { value }) => onChange({ unit: value as LengthUnit })}
        >
          <option value="mm">mm</option>
          <option value="in">in</option>
        </Select>
      </Field>
      {layout === 'column' && (
        <Field label="Readings a crimp" size="small" hint="Rows, 2 to 10">
          <Input
            className={styles.narrow}
            size="small"
            type="number"
            min={2}
            max={10}
            value={fields.readingsACrimp}
            onChange={(_, { value }) => onChange({ readingsACrimp: value })}
          />
        </Field>
      )}
      {number('target', 'Target', 'Where sheet and catalogue give none')}
      {number('tolerance', 'Tolerance ±', 'Where sheet and catalogue give none')}
      {number('largestSpread', 'Largest spread', 'More is OVAL; blank = not judged')}
      {number('uncertainty', 'Uncertainty U', 'k = 2; blank = not asked')}
      <Field label="Machine" size="small" hint="Of rows that name none">
        {machines.length > 0 ? (
          <Select
            className={styles.narrow}
            size="small"
            value={fields.machine}
            onChange={(_, { value }) => onChange({ machine: value })}
          >
            <option value="">not named</option>
            {machines.map(name => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </Select>
        ) : (
          <Input
            className={styles.narrow}
            size="small"
            value={fields.machine}
            onChange={(_, { value }) => onChange({ machine: value })}
          />
        )}
      </Field>
      {number('step', 'Change per digit', 'Where table Machines has none; − where a higher number crimps looser')}
      {number('perTurn', 'Change per turn', 'Of the calibration screw, where table Machines has none')}
    </div>
  );
}
