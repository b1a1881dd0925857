import { Body1, Caption1, Field, Input, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import { useMemo, useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { identifyHose, type HoseFields } from '../../sheets/parts/identifyHose';

const useStyles = makeStyles({
  section: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  fields: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(110px, 100%), 1fr))',
    gap: tokens.spacingHorizontalS,
  },
  narrow: { minWidth: 0, width: '100%' },
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, overflowWrap: 'anywhere' },
});

interface Props {
  readonly unit: LengthUnit;
  readonly catalogue: Catalogue;
}

/** A hose by bore and outside diameter, among the catalogue's. */
export function HoseIdentifier({ unit, catalogue }: Props) {
  const styles = useStyles();
  const [typed, setTyped] = useState<Omit<HoseFields, 'unit'>>({ bore: '', outside: '' });
  const found = useMemo(() => identifyHose({ ...typed, unit }, catalogue), [typed, unit, catalogue]);
  const field = (name: 'bore' | 'outside', label: string) => (
    <Field
      label={`${label} (${unit})`}
      {...(found.kind === 'mistake' && found.field === name && { validationState: 'error', validationMessage: found.sentence })}
    >
      <Input
        className={styles.narrow}
        inputMode="decimal"
        value={typed[name]}
        onChange={(_, { value }) => setTyped({ ...typed, [name]: value })}
      />
    </Field>
  );
  return (
    <section className={styles.section} aria-label="Hose">
      <Subtitle2 as="h2">Hose</Subtitle2>
      <div className={styles.fields}>
        {field('bore', 'Bore')}
        {field('outside', 'Hose outside diameter')}
      </div>
      <div role="status" className={styles.section}>
        {found.kind === 'blank' && <Caption1>One of the two is enough; both find it better.</Caption1>}
        {found.kind === 'none' && <Body1>{found.sentence}</Body1>}
        {found.kind === 'found' && (
          <>
            <ol className={styles.list} aria-label="Hoses it may be">
              {found.candidates.map(({ hose, sizes, pressure }) => (
                <li key={hose}>
                  <b>{hose}</b>: {sizes.join(', ')}; {pressure}
                </li>
              ))}
            </ol>
            <Caption1>Size does not give the pressure: hoses of one size differ. Read what is printed on the hose.</Caption1>
          </>
        )}
      </div>
    </section>
  );
}
