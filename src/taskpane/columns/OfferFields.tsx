import { Field, Input, makeStyles, Select, tokens } from '@fluentui/react-components';
import type { CatalogueState } from '../../sheets/catalogue/catalogueState';
import { amountTrouble, marginTrouble, type OfferSettings } from '../../sheets/columns/offerSettings';
import type { Columns } from '../../sheets/columns/tableColumnsOf';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, paddingTop: tokens.spacingVerticalS },
});

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
  // What the price cannot do without is shown open.
  const asksMargin = Boolean(asksPrice && !columns.margin);
  const given = [settings.machine, settings.margin && `margin ${settings.margin}`].filter(Boolean);
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
    <section aria-label="Machine and price">
      <details open={asksMargin}>
        <summary>Machine and price{given.length > 0 && `: ${given.join(', ')}`}</summary>
        <div className={styles.list}>
          {machines.length > 0 && (
            <Field
              label="Machine"
              size="small"
              hint="Uses this machine’s recorded dials. Next dial stays within its limits in the table Machines."
            >
              <Select
                size="small"
                value={settings.machine}
                onChange={(_, { value }) => onChange({ ...settings, machine: value })}
              >
                <option value="">{columns.crimper ? 'as in the table’s own column' : 'none: dials of the catalogue'}</option>
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
            text(
              'roundTo',
              'Round the price up to',
              'To a multiple of this. Blank: not rounded.',
              amountTrouble(settings.roundTo),
            )}
          {asksPrice && text('minimum', 'Least price', 'For each assembly. Blank: none.', amountTrouble(settings.minimum))}
        </div>
      </details>
    </section>
  );
}
