import {
  Body1,
  Button,
  Caption1,
  Checkbox,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Spinner,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import type { LoadedCatalogue } from '../../sheets/parts/loadedCatalogue';
import type { Planned } from './usePartsPlan';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, overflowWrap: 'anywhere' },
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL },
});

interface Props {
  readonly planned: Planned;
  readonly result: LoadedCatalogue;
  /** Headings whose meaning is only proposed. */
  readonly unconfirmed: readonly string[];
  readonly isBusy: boolean;
  readonly isReplacing: boolean;
  readonly onWrite: (agreed: readonly string[]) => void;
}

/** What will be written where, and the button that does it. */
export function WriteView({ planned, result, unconfirmed, isBusy, isReplacing, onWrite }: Props) {
  const styles = useStyles();
  const [agreedTo, setAgreedTo] = useState('');
  if (planned.status === 'planning') return <Spinner size="small" label="Finding where it goes" />;
  if (planned.status === 'refused') {
    return (
      <MessageBar intent="error" layout="multiline" role="alert">
        <MessageBarBody>
          <MessageBarTitle>It cannot be written</MessageBarTitle>
          {planned.reason}
        </MessageBarBody>
      </MessageBar>
    );
  }
  if (planned.status !== 'ready') return null;
  const { message, overwrites } = planned.plan;
  const question = overwrites.join(' ');
  const isAgreed = question === '' || agreedTo === question;
  return (
    <section className={styles.view} aria-label="What is written">
      <Subtitle2 as="h2">What is written</Subtitle2>
      <ul className={styles.list}>
        {message.map(sentence => (
          <li key={sentence}>
            <Caption1>{sentence}</Caption1>
          </li>
        ))}
      </ul>
      {question !== '' && (
        <Checkbox
          label={`Do this as well: ${question}`}
          checked={isAgreed}
          onChange={(_, { checked }) => setAgreedTo(checked === true ? question : '')}
        />
      )}
      {unconfirmed.length > 0 && (
        <Body1>
          Confirm the proposed headings first ({unconfirmed.join(', ')}): a wrong heading would be read as something else.
        </Body1>
      )}
      <Body1>
        Crimp data decide what holds under pressure: check them against the makers’ current data before anyone crimps from them.
      </Body1>
      <Button
        appearance="primary"
        disabled={!isAgreed || unconfirmed.length > 0}
        disabledFocusable={isBusy}
        onClick={() => onWrite(overwrites)}
      >
        {isReplacing ? 'Replace the catalogue' : 'Write the catalogue'}
        {result.catalogue!.leftOutRows > 0 ? ' (rows with problems are left out)' : ''}
      </Button>
    </section>
  );
}
