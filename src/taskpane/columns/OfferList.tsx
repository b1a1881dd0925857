import {
  Caption1,
  Checkbox,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import type { Offer } from '../../sheets/columns/offer';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column' },
  hindrance: { margin: `${tokens.spacingVerticalS} 0` },
  note: { paddingLeft: tokens.spacingHorizontalXXXL, color: tokens.colorNeutralForeground2, overflowWrap: 'anywhere' },
  caution: { borderLeft: `3px solid ${tokens.colorPaletteDarkOrangeBorderActive}`, paddingLeft: tokens.spacingHorizontalM },
});

interface Props {
  readonly offers: readonly Offer[];
  readonly chosen: ReadonlySet<string>;
  /** Why nothing can be looked up in the parts data: said once for all the columns that would be. */
  readonly hindrance: string | undefined;
  /** Limits of the dial that Next dial would be written without. */
  readonly limitsLeftOut: readonly string[];
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
          {reason ?? `Takes: ${takes}`}
        </Caption1>
      )}
    </div>
  );
}

const HINDRANCE = 'no-parts-data';

/** The columns that can be added, each with what it takes, or why it cannot be added; those that can stand first. */
export function OfferList({ offers, chosen, hindrance, limitsLeftOut, onChange }: Props) {
  const styles = useStyles();
  const crimp = offers.some(offer => offer.crimp && !offer.reason && chosen.has(offer.id));
  const nextDial = offers.some(offer => offer.id === 'nextDial' && !offer.reason && chosen.has(offer.id));
  const hindered = offers.filter(({ reason }) => reason !== undefined && reason === hindrance);
  const own = offers.filter(({ reason }) => reason !== undefined && reason !== hindrance);
  const choices = (some: readonly Offer[], saidIn?: string) =>
    some.map(offer => (
      <Choice key={offer.id} offer={offer} checked={!offer.reason && chosen.has(offer.id)} saidIn={saidIn} onChange={onChange} />
    ));
  return (
    <section className={styles.list} aria-label="Columns to add">
      <Subtitle2 as="h2">Columns to add</Subtitle2>
      {choices(offers.filter(offer => !offer.reason))}
      {choices(own)}
      {hindered.length > 0 && (
        <MessageBar className={styles.hindrance} intent="info" layout="multiline">
          <MessageBarBody id={HINDRANCE}>
            <MessageBarTitle>These take the parts data</MessageBarTitle>
            {hindrance}
          </MessageBarBody>
        </MessageBar>
      )}
      {choices(hindered, HINDRANCE)}
      {crimp && (
        <div className={styles.caution} role="note">
          <Caption1 block>
            Crimp values: the makers’ current data come first, and hose and couplings of different makers are mixed only with
            their written approval. Try a setting on one trial piece and measure. A rejected crimp stays rejected. Local codes and
            a qualified person decide.
          </Caption1>
          {nextDial && limitsLeftOut.length > 0 && (
            <Caption1 block>
              Next dial is written without these limits of the machine’s dial: {limitsLeftOut.join(', ')}. Choose the machine, or
              state them in the table Machines.
            </Caption1>
          )}
        </div>
      )}
    </section>
  );
}
