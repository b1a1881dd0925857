import {
  Button,
  Caption1,
  Checkbox,
  makeStyles,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  MessageBarTitle,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import { CrimpCautions } from './CrimpCautions';
import type { Offer } from '../../sheets/columns/offer';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column' },
  hindrance: { margin: `${tokens.spacingVerticalS} 0` },
  note: { paddingLeft: tokens.spacingHorizontalXXXL, color: tokens.colorNeutralForeground2, overflowWrap: 'anywhere' },
});

interface Props {
  readonly offers: readonly Offer[];
  readonly chosen: ReadonlySet<string>;
  /** Why nothing can be looked up in the parts data: said once for all the columns that would be. */
  readonly hindrance: string | undefined;
  /** Limits of the dial that Next dial would be written without. */
  readonly limitsLeftOut: readonly string[];
  /** Leads to where parts data are loaded. */
  readonly onLoadParts: () => void;
  readonly onChange: (id: string, on: boolean) => void;
}

interface ChoiceProps {
  readonly offer: Offer;
  readonly checked: boolean;
  /** Id of what says why the offer is greyed, where that is said once for several. */
  readonly saidIn: string | undefined;
  readonly onChange: Props['onChange'];
}

function Choice({ offer: { id, heading, reason, takes }, checked, saidIn, onChange }: ChoiceProps) {
  const styles = useStyles();
  return (
    <div>
      <Checkbox
        label={heading}
        disabled={reason !== undefined}
        checked={checked}
        aria-describedby={saidIn ?? `note-${id}`}
        onChange={(_, { checked: on }) => onChange(id, on === true)}
      />
      {!saidIn && (
        <Caption1 block id={`note-${id}`} className={styles.note}>
          {reason ?? `From: ${takes}`}
        </Caption1>
      )}
    </div>
  );
}

const HINDRANCE = 'no-parts-data';

/** The columns that can be added, each with what it takes, or why it cannot be added; those that can be added first. */
export function OfferList({ offers, chosen, hindrance, limitsLeftOut, onLoadParts, onChange }: Props) {
  const styles = useStyles();
  const crimp = offers.some(offer => offer.crimp && !offer.reason && chosen.has(offer.id));
  const nextDial = offers.some(offer => offer.id.startsWith('nextDial') && !offer.reason && chosen.has(offer.id));
  const hindered = offers.filter(({ reason }) => reason !== undefined && reason === hindrance);
  const own = offers.filter(({ reason }) => reason !== undefined && reason !== hindrance);
  const choices = (some: readonly Offer[], saidIn?: string) =>
    some.map(offer => (
      <Choice key={offer.id} offer={offer} checked={!offer.reason && chosen.has(offer.id)} saidIn={saidIn} onChange={onChange} />
    ));
  return (
    <section className={styles.list} aria-label="Columns to add">
      <Subtitle2 as="h2">One by one</Subtitle2>
      {choices(offers.filter(offer => !offer.reason))}
      {choices(own)}
      {hindered.length > 0 && (
        <MessageBar className={styles.hindrance} intent="info" layout="multiline">
          <MessageBarBody id={HINDRANCE}>
            <MessageBarTitle>These need parts data</MessageBarTitle>
            {hindrance}
          </MessageBarBody>
          <MessageBarActions>
            <Button size="small" onClick={onLoadParts}>
              Load parts data
            </Button>
          </MessageBarActions>
        </MessageBar>
      )}
      {choices(hindered, HINDRANCE)}
      {crimp && <CrimpCautions limitsLeftOut={nextDial ? limitsLeftOut : []} />}
    </section>
  );
}
