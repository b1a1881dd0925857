import { Badge, Caption1, makeStyles, Text, tokens } from '@fluentui/react-components';
import { ArrowDownRegular, ArrowUpRegular, CheckmarkRegular, CircleHintRegular, QuestionRegular } from '@fluentui/react-icons';
import type { ReactElement } from 'react';
import type { CrimpVerdict } from '../../core/crimp/crimpVerdict';
import type { CrimpRow } from '../../sheets/crimps/crimpRow';
import { smallText } from '../../sheets/table/smallText';
import { isRejected, MEANINGS, nextText, type Judgement } from '../../sheets/crimps/judgeCrimpRow';

const useStyles = makeStyles({
  card: {
    display: 'flex',
    flexDirection: 'column',
    gap: tokens.spacingVerticalXS,
    padding: tokens.spacingHorizontalM,
    borderRadius: tokens.borderRadiusMedium,
    border: `${tokens.strokeWidthThick} solid ${tokens.colorNeutralStroke1}`,
  },
  badge: { alignSelf: 'flex-start', fontSize: tokens.fontSizeBase500, padding: tokens.spacingHorizontalM, height: 'auto' },
  large: { fontSize: tokens.fontSizeBase400, lineHeight: tokens.lineHeightBase400, overflowWrap: 'anywhere' },
});

const LOOKS: Readonly<Record<CrimpVerdict, readonly [ReactElement, 'success' | 'danger' | 'warning']>> = {
  'IN SPEC': [<CheckmarkRegular key="in" />, 'success'],
  TIGHT: [<ArrowDownRegular key="tight" />, 'danger'],
  LOOSE: [<ArrowUpRegular key="loose" />, 'danger'],
  UNSURE: [<QuestionRegular key="unsure" />, 'warning'],
  OVAL: [<CircleHintRegular key="oval" />, 'danger'],
};

interface Props {
  readonly row: CrimpRow;
  readonly judgement: Judgement;
  readonly isWritten: boolean;
}

/** The verdict on a crimp and the next dial, in words. */
export function VerdictCard({ row, judgement, isWritten }: Props) {
  const styles = useStyles();
  const { measure, verdict, next } = judgement;
  const [icon, color] = LOOKS[verdict];
  const sign = measure.deviation.isZero() ? '' : measure.deviation.isNegative() ? '−' : '+';
  const deviation = `${sign}${smallText(measure.deviation.abs(), row.unit)}`;
  return (
    <div className={styles.card}>
      <Text weight="semibold">
        {row.title}
        {row.end && `, end ${row.end}`} {isWritten ? `– written to row ${row.row}` : '– being written …'}
      </Text>
      <Badge className={styles.badge} shape="rounded" appearance="filled" color={color} icon={icon}>
        {verdict}
      </Badge>
      <Text className={styles.large}>{MEANINGS[verdict]}</Text>
      <Text className={styles.large} weight="semibold">
        {nextText(next, verdict)}
      </Text>
      <Text>
        Mean {smallText(measure.mean, row.unit)} {row.unit}, {deviation} from the target; readings differ by{' '}
        {measure.spread.toString()}.
      </Text>
      {isRejected(verdict) && <Caption1>Scrap it, unless the maker allows crimping again.</Caption1>}
    </div>
  );
}
