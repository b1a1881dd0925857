import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Button,
  Caption1,
  Field,
  Input,
  makeStyles,
  tokens,
} from '@fluentui/react-components';
import { numberFromText } from '../../core/units/numberText';
import type { EntrySettings } from './useEntry';

const useStyles = makeStyles({
  panel: { display: 'flex', flexDirection: 'column', alignItems: 'start', gap: tokens.spacingVerticalM, margin: 0 },
  grid: {
    width: '100%',
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(120px, 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
});

const FIELDS: readonly (readonly [keyof EntrySettings, string])[] = [
  ['machine', 'Machine'],
  ['tolerance', 'Tolerance ±'],
  ['largestSpread', 'Largest spread'],
  ['step', 'Change per digit'],
  ['lowest', 'Lowest dial'],
  ['highest', 'Highest dial'],
  ['largestMove', 'Largest move'],
  ['uncertainty', 'Uncertainty U (k = 2)'],
];

interface Props {
  readonly settings: EntrySettings;
  readonly onChange: (part: Partial<EntrySettings>) => void;
  readonly onUse: () => void;
}

/** What counts where the sheet and the catalogue say nothing. */
export function EntrySettingsFields({ settings, onChange, onUse }: Props) {
  const styles = useStyles();
  const mistake = (name: keyof EntrySettings) =>
    name !== 'machine' && settings[name].trim() !== '' && !numberFromText(settings[name]) ? 'A number, or nothing' : undefined;
  return (
    <Accordion collapsible>
      <AccordionItem value="settings">
        <AccordionHeader>Settings</AccordionHeader>
        <AccordionPanel className={styles.panel}>
          <Caption1>
            Columns of the sheet, numbers above the table and the Catalogue come first; these count where they say nothing.
            Lengths are in the unit of the readings. Change per digit: positive where a higher number crimps tighter.
          </Caption1>
          <div className={styles.grid}>
            {FIELDS.map(([name, label]) => (
              <Field
                key={name}
                label={label}
                validationState={mistake(name) ? 'error' : 'none'}
                validationMessage={mistake(name)}
              >
                <Input
                  className={styles.narrow}
                  value={settings[name]}
                  onChange={(_, { value }) => onChange({ [name]: value })}
                />
              </Field>
            ))}
          </div>
          <Button onClick={onUse}>Use these</Button>
        </AccordionPanel>
      </AccordionItem>
    </Accordion>
  );
}
