import { Button, Caption1, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import type { Bundle } from '../../sheets/columns/bundles';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  start: { alignSelf: 'flex-start' },
  bundle: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalXXS },
  note: { color: tokens.colorNeutralForeground2, overflowWrap: 'anywhere' },
});

interface Props {
  readonly bundles: readonly Bundle[];
  /** Why nothing can be looked up in the parts data: said with the columns below, not three times here. */
  readonly hindrance: string | undefined;
  readonly busy: boolean;
  readonly onAdd: (bundle: Bundle) => void;
}

const joined = (headings: readonly string[]) => headings.join(', ');

/** What a bundle adds, what the table has of it already, what keeps the rest. */
function notesOf({ offers, present, lacking }: Bundle, hindrance: string | undefined): readonly string[] {
  const rest = lacking.map(({ reason, headings }) =>
    reason === hindrance ? `${joined(headings)}: needs parts data.` : `${joined(headings)}: ${reason}`,
  );
  return [
    ...(offers.length > 0 ? [`Adds ${joined(offers.map(({ heading }) => heading))}.`] : []),
    ...(present.length > 0 ? [`Already here: ${joined(present)}.`] : []),
    ...rest,
  ];
}

/** Columns that belong together, added in one press. */
export function BundleList({ bundles, hindrance, busy, onAdd }: Props) {
  const styles = useStyles();
  return (
    <section className={styles.list} aria-label="Add together">
      <Subtitle2 as="h2">Add together</Subtitle2>
      {bundles.map(bundle => {
        const { id, label, offers } = bundle;
        return (
          <div key={id} className={styles.bundle}>
            <Button
              className={styles.start}
              appearance={offers.length > 0 ? 'primary' : 'secondary'}
              aria-describedby={`bundle-${id}`}
              disabledFocusable={busy || offers.length === 0}
              onClick={() => onAdd(bundle)}
            >
              {label}
              {offers.length > 0 && ` (${offers.length})`}
            </Button>
            <div id={`bundle-${id}`}>
              {notesOf(bundle, hindrance).map(note => (
                <Caption1 key={note} block className={styles.note}>
                  {note}
                </Caption1>
              ))}
            </div>
          </div>
        );
      })}
    </section>
  );
}
