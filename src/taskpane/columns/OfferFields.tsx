import { Field, Input, makeStyles, Select, Subtitle2, tokens } from '@fluentui/react-components';
import type { CatalogueState } from '../../sheets/catalogue/catalogueState';
import { amountTrouble, marginTrouble, type OfferSettings } from '../../sheets/columns/offerSettings';
import type { Columns } from '../../sheets/columns/tableColumnsOf';

const useStyles = makeStyles({ list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS } });

interface Props {
  readonly columns: Columns;
  readonly catalogue: CatalogueState;
  readonly settings: OfferSettings;
  readonly onChange: (settings: OfferSettings) => void;
}

/** What the columns take besides the table: the machine, and the margin of the price. */
export function OfferFields({ columns, catalogue, settings, onChange }: Props) {
  const styles = useStyles();
  const machines = catalogue.machines?.machines ?? [];
  const asksPrice = columns.hose && columns.overall && columns.quantity && catalogue.present && !catalogue.trouble;
  if (machines.length === 0 && !asksPrice) return null;
  const text = (key: 'margin' | 'roundTo' | 'minimum', label: string, hint: string | undefined, trouble?: string) => (
    <Field
      label={label}
      size="small"
      {...(hint && { hint })}
      {...(trouble && { validationMessage: trouble, validationState: 'error' as const })}
    >
      <Input
        size="small"
        inputMode="decimal"
        value={settings[key]}
        onChange={(_, { value }) => onChange({ ...settings, [key]: value })}
      />
    </Field>
  );
  return (
    <section className={styles.list} aria-label="Machine and price">
      <Subtitle2 as="h2">Machine and price</Subtitle2>
      {machines.length > 0 && (
        <Field
          label="Machine of the dial"
          size="small"
          hint="Its own recorded dials win; its limits go into Next dial, as references to its row in the table Machines."
        >
          <Select size="small" value={settings.machine} onChange={(_, { value }) => onChange({ ...settings, machine: value })}>
            <option value="">{columns.crimper ? 'as the table says in its column' : 'none: dials of the catalogue'}</option>
            {machines.map(({ name }) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </Select>
        </Field>
      )}
      {asksPrice &&
        !columns.margin &&
        text('margin', 'Margin', 'Share of the price that is not cost: 0.4 or 40 %', marginTrouble(settings.margin))}
      {asksPrice &&
        text('roundTo', 'Round the price up to', 'A multiple of this; blank = not rounded', amountTrouble(settings.roundTo))}
      {asksPrice && text('minimum', 'Least price', 'Of each; blank: none', amountTrouble(settings.minimum))}
    </section>
  );
}
