import { Badge, makeStyles, tokens } from '@fluentui/react-components';
import { ArrowDownRegular, ArrowUpRegular, CheckmarkRegular, CircleHintRegular, QuestionRegular } from '@fluentui/react-icons';
import type { ReactElement } from 'react';
import type { CrimpVerdict } from '../../core/crimp/crimpVerdict';
import { VERDICTS } from '../../sheets/analysis/analyseReadings';

const useStyles = makeStyles({
  row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS, margin: 0, padding: 0, listStyleType: 'none' },
});

const LOOKS: Readonly<Record<CrimpVerdict, { readonly icon: ReactElement; readonly color: 'success' | 'danger' | 'warning' }>> = {
  'IN SPEC': { icon: <CheckmarkRegular />, color: 'success' },
  TIGHT: { icon: <ArrowDownRegular />, color: 'danger' },
  LOOSE: { icon: <ArrowUpRegular />, color: 'danger' },
  OVAL: { icon: <CircleHintRegular />, color: 'danger' },
  UNSURE: { icon: <QuestionRegular />, color: 'warning' },
};

/** How many crimps came out how: words and numbers; what did not occur is quiet. */
export function VerdictCounts({ counts }: { readonly counts: Readonly<Record<CrimpVerdict, number>> }) {
  const styles = useStyles();
  return (
    <ul className={styles.row} aria-label="Verdicts">
      {VERDICTS.map(verdict => (
        <li key={verdict}>
          <Badge
            size="large"
            shape="rounded"
            appearance={counts[verdict] > 0 ? 'filled' : 'outline'}
            color={counts[verdict] > 0 ? LOOKS[verdict].color : 'informative'}
            icon={LOOKS[verdict].icon}
          >
            {counts[verdict]} {verdict}
          </Badge>
        </li>
      ))}
    </ul>
  );
}
