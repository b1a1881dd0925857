import { Field, Input, makeStyles, Radio, RadioGroup, Select, tokens } from '@fluentui/react-components';
import { useId } from 'react';
import type { RecallFields } from '../../sheets/recall/recallFields';
import type { LotOf } from '../../sheets/recall/recallRequest';

const useStyles = makeStyles({
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(128px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
});

const LOTS: Readonly<Record<LotOf, string>> = { any: 'anything', hose: 'hose', fitting: 'couplings', ferrule: 'ferrules' };

interface Props {
  readonly fields: RecallFields;
  /** Names on sheet Gauges. */
  readonly gauges: readonly string[];
  readonly onFields: (change: Partial<RecallFields>) => void;
}

/** What is asked back: a lot, a gauge, or a span of days. */
export function RecallForm({ fields, gauges, onFields }: Props) {
  const styles = useStyles();
  const list = useId();
  const text = (field: Exclude<keyof RecallFields, 'by' | 'of'>, label: string, hint?: string, options?: string) => (
    <Field label={label} hint={hint}>
      <Input
        className={styles.narrow}
        list={options}
        value={fields[field]}
        onChange={(_, { value }) => onFields({ [field]: value })}
      />
    </Field>
  );
  return (
    <>
      <RadioGroup
        layout="horizontal"
        aria-label="Recall by"
        value={fields.by}
        onChange={(_, { value }) => onFields({ by: value as RecallFields['by'] })}
      >
        <Radio value="lot" label="Lot" />
        <Radio value="gauge" label="Gauge or die" />
        <Radio value="days" label="Days" />
      </RadioGroup>
      <div className={styles.grid}>
        {fields.by === 'lot' && (
          <>
            {text('lot', 'Lot number')}
            <Field label="Lot of">
              <Select className={styles.narrow} value={fields.of} onChange={(_, { value }) => onFields({ of: value as LotOf })}>
                {Object.entries(LOTS).map(([value, label]) => (
                  <option key={value} value={value}>
                    {label}
                  </option>
                ))}
              </Select>
            </Field>
            {text('part', 'Hose or coupling', 'Pieces without it are out. Blank: not known.')}
          </>
        )}
        {fields.by === 'gauge' && (
          <>
            {text('gauge', 'Gauge', 'Caliper, pressure gauge or die', list)}
            {text('since', 'Wrong since', 'Day of its last good check. Blank: always.')}
            {text('error', 'It read too high by', 'With its unit, like 0.03 mm. Negative if too low. Blank: not known.')}
          </>
        )}
        {fields.by === 'days' && (
          <>
            {text('from', 'From', 'Like 2026-09-01')}
            {text('to', 'To')}
          </>
        )}
      </div>
      <datalist id={list}>
        {gauges.map(name => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </>
  );
}
