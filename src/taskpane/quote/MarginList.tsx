import { Caption1, makeStyles, tokens } from '@fluentui/react-components';
import type { Margin, MarginState } from '../../sheets/duty/margin';

const useStyles = makeStyles({
  list: { display: 'grid', gap: tokens.spacingVerticalXS, margin: 0 },
  row: {
    display: 'flex',
    flexWrap: 'wrap',
    justifyContent: 'space-between',
    columnGap: tokens.spacingHorizontalM,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    paddingTop: tokens.spacingVerticalXXS,
  },
  verdict: { margin: 0, fontWeight: tokens.fontWeightSemibold },
  facts: { margin: 0, flexBasis: '100%', color: tokens.colorNeutralForeground2 },
});

const MARKS: Readonly<Record<MarginState, string>> = {
  met: '✓',
  missed: '✗',
  'not known': '?',
  unsure: '!',
  'not asked': '–',
};

/** Every demand with what is asked, what there is, and what is to spare; a sign repeats the words. */
export function MarginList({ margins }: { readonly margins: readonly Margin[] }) {
  const styles = useStyles();
  return (
    <dl className={styles.list} aria-label="Margins">
      {margins.map(({ demand, facts, verdict, state }) => (
        <div key={demand} className={styles.row}>
          <dt>
            <span aria-hidden="true">{MARKS[state]} </span>
            {demand}
          </dt>
          <dd className={styles.verdict}>{verdict}</dd>
          {facts && (
            <dd className={styles.facts}>
              <Caption1>{facts}</Caption1>
            </dd>
          )}
        </div>
      ))}
    </dl>
  );
}
