import { PLAIN_MONEY } from '../../sheets/catalogue/currencyFormat';
import { Checkbox, Field, Input, makeStyles, Radio, RadioGroup, Select, tokens } from '@fluentui/react-components';
import type { CustomerClass } from '../../sheets/quote/marginTable';
import type { Mistakes, NumberField, QuoteFieldsText } from '../../sheets/quote/quoteSettings';

const useStyles = makeStyles({
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(124px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  // Inputs would else be as wide as their usual text.
  narrow: { minWidth: 0, width: '100%' },
});

interface Props {
  readonly fields: QuoteFieldsText;
  readonly mistakes: Mistakes;
  /** True once the user has tried to write: blank fields are mistakes from then on. */
  readonly isAsked: boolean;
  readonly classes: readonly CustomerClass[];
  /** Number format of prices in the workbook. */
  readonly found: string | undefined;
  readonly onFields: (change: Partial<QuoteFieldsText>) => void;
}

const shareOf = (margin: number | undefined) => (margin === undefined ? 'no margin' : `${Number((margin * 100).toFixed(2))} %`);

/** Customer, how prices are made, quantity breaks, rounding, charges, validity, currency. */
export function QuoteFields({ fields, mistakes, isAsked, classes, found, onFields }: Props) {
  const styles = useStyles();
  const text = (field: NumberField | 'customer' | 'reference' | 'format', label: string, hint?: string) => {
    const mistake = isAsked || fields[field].trim() !== '' ? mistakes[field as NumberField] : undefined;
    return (
      <Field label={label} hint={hint} validationState={mistake ? 'error' : 'none'} validationMessage={mistake}>
        <Input className={styles.narrow} value={fields[field]} onChange={(_, { value }) => onFields({ [field]: value })} />
      </Field>
    );
  };
  return (
    <>
      <div className={styles.grid}>
        {text('customer', 'Customer')}
        {text('reference', 'Reference')}
      </div>
      <Field label="Prices from">
        <RadioGroup
          layout="horizontal"
          value={fields.method}
          onChange={(_, { value }) => onFields({ method: value === 'markup' ? 'markup' : 'margin' })}
        >
          <Radio value="margin" label="a margin" />
          <Radio value="markup" label="markups on parts" />
        </RadioGroup>
      </Field>
      {fields.method === 'margin' ? (
        <div className={styles.grid}>
          {classes.length > 0 && (
            <Field
              label="Customer class"
              validationState={mistakes.customerClass ? 'error' : 'none'}
              validationMessage={mistakes.customerClass}
            >
              <Select
                className={styles.narrow}
                value={fields.customerClass}
                onChange={(_, { value }) => onFields({ customerClass: value })}
              >
                <option value="">as typed</option>
                {classes.map(({ name, margin }) => (
                  <option key={name} value={name}>{`${name}: ${shareOf(margin)}`}</option>
                ))}
              </Select>
            </Field>
          )}
          {!classes.some(({ name }) => name === fields.customerClass) && text('margin', 'Margin', 'Share of the price, 40 %')}
        </div>
      ) : (
        <div className={styles.grid}>
          {text('markupHose', 'On hose', 'Added to the cost, 50 %')}
          {text('markupFittings', 'On fittings')}
          {text('markupGuards', 'On guards', 'Blank = none')}
          {text('markupLabour', 'On labour', 'Blank = none')}
        </div>
      )}
      {text('breaks', 'Quantity breaks', 'Blank = only the quantity of the line')}
      <div className={styles.grid}>
        {text('roundTo', 'Round prices up to', 'Each price; totals are sums')}
        {text('least', 'Least price each', 'Blank: none')}
        {text('callOut', 'Call-out', 'Blank = none')}
        {text('minimumCharge', 'Minimum charge', 'Of all lines together. Blank: “minimum charge” of Rates')}
        {text('validDays', 'Valid for (days)')}
        {text('format', 'Currency format', `Blank = ${found ?? PLAIN_MONEY}`)}
      </div>
      <Checkbox
        label="Lines follow the job sheet (else copied)"
        checked={fields.isLinked}
        onChange={(_, { checked }) => onFields({ isLinked: checked === true })}
      />
    </>
  );
}
