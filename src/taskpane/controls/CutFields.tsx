import { Checkbox, Field, Input, makeStyles, Radio, RadioGroup, Select, tokens } from '@fluentui/react-components';
import { freshSettings, type CutSettingsText, type ReadSettings } from '../../sheets/cutlist/cutSettings';

const useStyles = makeStyles({
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(128px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  // Inputs would else be as wide as their usual text.
  narrow: { minWidth: 0, width: '100%' },
});

interface Props {
  readonly fields: CutSettingsText;
  readonly mistakes: ReadSettings['mistakes'];
  /** True once the user has tried to plan: blank fields are mistakes from then on. */
  readonly isAsked: boolean;
  readonly racks: readonly string[];
  readonly rack: string;
  readonly onFields: (change: Partial<CutSettingsText>) => void;
  readonly onRack: (sheet: string) => void;
}

/** Kerf, squaring, keep, bench step, age limit and the rack's sheet. */
export function CutFields({ fields, mistakes, isAsked, racks, rack, onFields, onRack }: Props) {
  const styles = useStyles();
  const { unit } = fields;
  const text = (
    field: 'kerf' | 'squaring' | 'keep' | 'handling' | 'step' | 'ageLimit' | 'useYears',
    label: string,
    hint?: string,
    disabled: boolean = false,
  ) => {
    const mistake = isAsked || fields[field].trim() !== '' ? mistakes[field] : undefined;
    return (
      <Field label={label} hint={hint} validationState={mistake ? 'error' : 'none'} validationMessage={mistake}>
        <Input
          className={styles.narrow}
          disabled={disabled}
          value={fields[field]}
          onChange={(_, { value }) => onFields({ [field]: value })}
        />
      </Field>
    );
  };
  return (
    <>
      <Field label="Rack (sheet)" hint={racks.length === 0 ? 'No sheet with the columns Hose and Length yet.' : undefined}>
        <Select value={rack} disabled={racks.length === 0} onChange={(_, { value }) => onRack(value)}>
          {racks.map(name => (
            <option key={name}>{name}</option>
          ))}
        </Select>
      </Field>
      <Field label="Unit">
        <RadioGroup
          layout="horizontal"
          value={unit}
          onChange={(_, { value }) => onFields(freshSettings(value === 'in' ? 'in' : 'mm'))}
        >
          <Radio value="mm" label="mm" />
          <Radio value="in" label="in" />
        </RadioGroup>
      </Field>
      <div className={styles.grid}>
        {text('kerf', `Kerf (${unit})`, '0 for a knife')}
        {text('squaring', `Squaring (${unit})`, 'Off every reel first. Blank: nothing.')}
        {text('keep', `Keep from (${unit})`, 'Shortest offcut worth keeping', fields.keepsNothing)}
        {text('handling', `Fetching a reel (${unit})`, 'Worth this much hose. Blank: nothing.')}
        {text('step', `Bench step (${unit})`, 'Smallest it can cut')}
        {text('ageLimit', 'Age limit (years)', 'Older hose is left out. Blank: no limit.')}
        {text('useYears', 'Use by (years)', 'On tag, piece and record. Blank: none; DIN 20066 has 6.')}
      </div>
      <Checkbox
        label="Nothing is kept: every offcut is scrap"
        checked={fields.keepsNothing}
        onChange={(_, { checked }) => onFields({ keepsNothing: checked === true })}
      />
      <Checkbox
        label="Use the oldest hose first"
        checked={fields.isOldestFirst}
        onChange={(_, { checked }) => onFields({ isOldestFirst: checked === true })}
      />
      <Checkbox
        label="Print each hose on a page of its own"
        checked={fields.pagePerHose}
        onChange={(_, { checked }) => onFields({ pagePerHose: checked === true })}
      />
    </>
  );
}
