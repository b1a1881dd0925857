import { Button, Caption1, Field, makeStyles, Select, tokens } from '@fluentui/react-components';
import { useId, useState } from 'react';
import type { CatalogueUnits } from '../../core/catalogue/catalogueUnits';
import type { PartCell } from '../../sheets/parts/insertPart';
import { partFields, partFacts } from '../../sheets/parts/partFacts';
import type { Part } from '../../sheets/parts/partSearch';

const useStyles = makeStyles({
  card: {
    display: 'flex',
    flexDirection: 'column',
    gap: tokens.spacingVerticalS,
    padding: tokens.spacingHorizontalS,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
  },
  facts: {
    margin: 0,
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 2fr) minmax(0, 3fr)',
    columnGap: tokens.spacingHorizontalS,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    overflowWrap: 'anywhere',
    '& dt': { color: tokens.colorNeutralForeground2 },
    '& dd': { margin: 0 },
  },
  row: { display: 'flex', flexWrap: 'wrap', alignItems: 'end', gap: tokens.spacingHorizontalS },
  field: { minWidth: '120px', flexGrow: 1 },
});

interface Props {
  readonly part: Part;
  readonly units: CatalogueUnits;
  /** The selected cell, as `Jobs!B7`. */
  readonly selected: string;
  readonly isBusy: boolean;
  readonly onInsert: (wanted: PartCell) => void;
}

/** Everything the catalogue says of a part, and ways to put it into the sheet. */
export function PartCard({ part, units, selected, isBusy, onInsert }: Props) {
  const styles = useStyles();
  const label = useId();
  const fields = partFields(part).map(([, { heading }]) => heading);
  const [heading, setHeading] = useState(part.kind === 'hose' ? 'Working pressure' : 'Cut-off');
  const { facts, missing } = partFacts(part, units);
  return (
    <div className={styles.card} role="group" aria-labelledby={label}>
      <Caption1 id={label}>
        {part.kind === 'hose' ? 'Hose' : 'Fitting'} {part.name}
      </Caption1>
      <dl className={styles.facts}>
        {facts.map(fact => [<dt key={`${fact.field} name`}>{fact.heading}</dt>, <dd key={fact.field}>{fact.text}</dd>])}
      </dl>
      {missing.length > 0 && <Caption1>Not stated: {missing.join(', ')}.</Caption1>}
      <div className={styles.row}>
        <Button size="small" appearance="primary" disabledFocusable={isBusy} onClick={() => onInsert({ what: 'name' })}>
          Insert name
        </Button>
        {selected !== '' && <Caption1>into {selected}</Caption1>}
      </div>
      <div className={styles.row}>
        <Field className={styles.field} label="Look-up beside it" size="small">
          <Select size="small" value={heading} onChange={(_, { value }) => setHeading(value)}>
            {fields.map(each => (
              <option key={each}>{each}</option>
            ))}
          </Select>
        </Field>
        <Button size="small" disabledFocusable={isBusy} onClick={() => onInsert({ what: 'lookUp', heading })}>
          Insert look-up
        </Button>
      </div>
    </div>
  );
}
