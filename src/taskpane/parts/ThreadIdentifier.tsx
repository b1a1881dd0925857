import {
  Body1,
  Caption1,
  Field,
  Input,
  makeStyles,
  MessageBar,
  MessageBarBody,
  Select,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import { useMemo, useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { identifyThread, type ThreadCandidate, type ThreadFields } from '../../sheets/parts/identifyThread';

const FITTINGS = 6;

const useStyles = makeStyles({
  section: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  fields: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(110px, 100%), 1fr))',
    gap: tokens.spacingHorizontalS,
  },
  narrow: { minWidth: 0, width: '100%' },
  list: {
    margin: 0,
    paddingLeft: tokens.spacingHorizontalL,
    overflowWrap: 'anywhere',
    '& li': { marginBottom: tokens.spacingVerticalXS },
  },
});

function Candidate({ thread, standard, diameter, pitch, offBy, usedWith, endForms, fittings }: ThreadCandidate) {
  const rest = fittings.length - FITTINGS;
  return (
    <li>
      <b>{thread}</b> ({standard}): {diameter}, pitch {pitch}, off by {offBy}
      {usedWith !== '' && <Caption1 block>Used with: {usedWith}</Caption1>}
      {endForms.length > 0 && (
        <Caption1 block>
          In the catalogue: {endForms.join(', ')}. Fittings: {fittings.slice(0, FITTINGS).join(', ')}
          {rest > 0 && ` and ${rest} more`}
        </Caption1>
      )}
    </li>
  );
}

interface Props {
  readonly unit: LengthUnit;
  readonly catalogue: Catalogue | undefined;
}

/** A thread by its diameter and pitch. */
export function ThreadIdentifier({ unit, catalogue }: Props) {
  const styles = useStyles();
  const [typed, setTyped] = useState<Omit<ThreadFields, 'unit'>>({ diameter: '', pitch: '', side: 'male' });
  const found = useMemo(() => identifyThread({ ...typed, unit }, catalogue), [typed, unit, catalogue]);
  const mistake = (field: 'diameter' | 'pitch') =>
    found.kind === 'mistake' && found.field === field
      ? { validationState: 'error' as const, validationMessage: found.sentence }
      : {};
  const input = (field: 'diameter' | 'pitch') => (
    <Input
      className={styles.narrow}
      inputMode="decimal"
      value={typed[field]}
      onChange={(_, { value }) => setTyped({ ...typed, [field]: value })}
    />
  );
  return (
    <section className={styles.section} aria-label="Thread">
      <Subtitle2 as="h2">Thread</Subtitle2>
      <div className={styles.fields}>
        <Field label="Thread is">
          <Select
            className={styles.narrow}
            value={typed.side}
            onChange={(_, { value }) => setTyped({ ...typed, side: value as ThreadFields['side'] })}
          >
            <option value="male">male</option>
            <option value="female">female</option>
          </Select>
        </Field>
        <Field label={`${typed.side === 'male' ? 'Outside' : 'Inside'} diameter (${unit})`} {...mistake('diameter')}>
          {input('diameter')}
        </Field>
        <Field label={unit === 'mm' ? 'Pitch (mm)' : 'Threads per inch'} hint="Blank: not measured." {...mistake('pitch')}>
          {input('pitch')}
        </Field>
      </div>
      <div role="status" className={styles.section}>
        {found.kind === 'blank' && <Caption1>Measure a male thread over its crests, a female one inside.</Caption1>}
        {found.kind === 'none' && <Body1>{found.sentence}</Body1>}
        {found.kind === 'found' && found.advice.length > 0 && (
          <MessageBar intent="warning" layout="multiline">
            <MessageBarBody>
              {found.advice.map(sentence => (
                <div key={sentence}>{sentence}</div>
              ))}
            </MessageBarBody>
          </MessageBar>
        )}
        {found.kind === 'found' && (
          <ol className={styles.list} aria-label="Threads it may be">
            {found.candidates.map(candidate => (
              <Candidate key={candidate.thread} {...candidate} />
            ))}
          </ol>
        )}
      </div>
    </section>
  );
}
