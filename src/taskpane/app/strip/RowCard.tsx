import { Badge, Body1, Caption1, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import { ArrowDownRegular, ArrowUpRegular, CheckmarkRegular, CircleHintRegular, QuestionRegular } from '@fluentui/react-icons';
import type { ReactElement } from 'react';
import { worstVerdict, type RowResult } from '../../../sheets/explain/rowView';
import type { CrimpVerdict } from '../../../core/crimp/crimpVerdict';

const useStyles = makeStyles({
  card: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  list: {
    margin: 0,
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 2fr) minmax(0, 3fr)',
    gap: tokens.spacingVerticalXS,
    alignItems: 'baseline',
  },
  value: { margin: 0, fontWeight: tokens.fontWeightSemibold, overflowWrap: 'anywhere' },
  error: { margin: 0, overflowWrap: 'anywhere' },
  caution: { borderLeft: `3px solid ${tokens.colorPaletteDarkOrangeBorderActive}`, paddingLeft: tokens.spacingHorizontalM },
});

interface Look {
  readonly icon: ReactElement;
  readonly color: 'success' | 'danger' | 'warning';
  readonly meaning: string;
}

const LOOKS: Readonly<Record<CrimpVerdict, Look>> = {
  'IN SPEC': { icon: <CheckmarkRegular />, color: 'success', meaning: 'the mean lies within its tolerance' },
  TIGHT: { icon: <ArrowDownRegular />, color: 'danger', meaning: 'crimped too small: rejected' },
  LOOSE: { icon: <ArrowUpRegular />, color: 'danger', meaning: 'crimped too large: rejected' },
  UNSURE: { icon: <QuestionRegular />, color: 'warning', meaning: 'too near to a limit for this measurement: measure better' },
  OVAL: { icon: <CircleHintRegular />, color: 'danger', meaning: 'the mean fits, the readings differ too much: rejected' },
};

const CAUTION_REJECTED =
  'This crimp stays rejected: scrap it, unless the maker allows crimping again. The next dial is for the next crimp: try it on one trial piece and measure before the batch goes on.';
const CAUTION_ALWAYS =
  'The makers’ current data come first; the weakest part sets the rating. Local codes and a qualified person decide.';

/** The selected row: verdicts in words, and the other results of ours that stand in it. */
export function RowCard({ row }: { readonly row: readonly RowResult[] }) {
  const styles = useStyles();
  if (row.length === 0) return null;
  const verdict = worstVerdict(row);
  return (
    <div className={styles.card} role="group" aria-label="Selected row">
      <Subtitle2 as="h2">This row</Subtitle2>
      {verdict && (
        <div>
          <Badge size="extra-large" shape="rounded" appearance="filled" color={LOOKS[verdict].color} icon={LOOKS[verdict].icon}>
            {verdict}
          </Badge>
          <Body1 block>{LOOKS[verdict].meaning}</Body1>
        </div>
      )}
      <dl className={styles.list}>
        {row.map((result, index) => [
          <dt key={`t${index}`}>
            <Caption1>{result.title}</Caption1>
          </dt>,
          <dd key={`v${index}`} className={result.isError ? styles.error : styles.value}>
            {result.text}
          </dd>,
        ])}
      </dl>
      <div className={styles.caution}>
        {verdict && verdict !== 'IN SPEC' && <Caption1 block>{CAUTION_REJECTED}</Caption1>}
        <Caption1 block>{CAUTION_ALWAYS}</Caption1>
      </div>
    </div>
  );
}
