import { Caption1, Checkbox, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import type { Offer } from './offer';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column' },
  note: { paddingLeft: tokens.spacingHorizontalXXXL, color: tokens.colorNeutralForeground2, overflowWrap: 'anywhere' },
  caution: { borderLeft: `3px solid ${tokens.colorPaletteDarkOrangeBorderActive}`, paddingLeft: tokens.spacingHorizontalM },
});

interface Props {
  readonly offers: readonly Offer[];
  readonly chosen: ReadonlySet<string>;
  /** Limits of the dial that Next dial would be written without. */
  readonly limitsLeftOut: readonly string[];
  readonly onChange: (id: string, on: boolean) => void;
}

/** The columns that can be added, each with what it takes, or why it cannot be added; those that can stand first. */
export function OfferList({ offers, chosen, limitsLeftOut, onChange }: Props) {
  const styles = useStyles();
  const crimp = offers.some(offer => offer.crimp && !offer.reason && chosen.has(offer.id));
  const nextDial = offers.some(offer => offer.id === 'nextDial' && !offer.reason && chosen.has(offer.id));
  return (
    <section className={styles.list} aria-label="Columns to add">
      <Subtitle2 as="h2">Columns to add</Subtitle2>
      {[...offers.filter(offer => !offer.reason), ...offers.filter(offer => offer.reason)].map(offer => (
        <div key={offer.id}>
          <Checkbox
            label={offer.heading}
            disabled={offer.reason !== undefined}
            checked={!offer.reason && chosen.has(offer.id)}
            aria-describedby={`note-${offer.id}`}
            onChange={(_, { checked }) => onChange(offer.id, checked === true)}
          />
          <Caption1 block id={`note-${offer.id}`} className={styles.note}>
            {offer.reason ?? `Takes: ${offer.takes}`}
          </Caption1>
        </div>
      ))}
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
