import {
  Body1,
  makeStyles,
  mergeClasses,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CutTotals } from '../../sheets/cutlist/cutTotals';
import type { HosePlan } from '../../sheets/cutlist/planHose';
import { comparison, longText, proofSentence, shortageSentence, tooLongSentence } from '../../sheets/cutlist/planText';
import { ReelPicture } from './ReelPicture';
import { Scroller } from '../controls/Scroller';

const useStyles = makeStyles({
  hose: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  table: { borderCollapse: 'collapse', width: '100%', fontSize: tokens.fontSizeBase200 },
  cell: {
    textAlign: 'right',
    padding: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalXS}`,
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  head: { textAlign: 'left', fontWeight: tokens.fontWeightRegular },
});

interface TotalsProps {
  readonly totals: CutTotals;
  readonly inSheetOrder: CutTotals | undefined;
  readonly hasWorth: boolean;
  readonly unit: LengthUnit;
}

function Totals({ totals, inSheetOrder, hasWorth, unit }: TotalsProps) {
  const styles = useStyles();
  const numberOf = (length: Decimal) => longText(length, unit).replace(/ .*$/, '');
  const rows = [
    ['This plan', totals],
    ['In sheet order', inSheetOrder],
  ] as const;
  return (
    <Scroller>
      <table className={styles.table}>
        <thead>
          <tr>
            <td className={mergeClasses(styles.cell, styles.head)}>{unit === 'mm' ? 'in m' : 'in ft'}</td>
            {['Reels', 'Used', 'Kept', 'Lost', hasWorth ? 'Worth' : 'Stock'].map(name => (
              <th key={name} className={styles.cell} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(
            ([name, row]) =>
              row && (
                <tr key={name}>
                  <th className={mergeClasses(styles.cell, styles.head)} scope="row">
                    {name}
                  </th>
                  <td className={styles.cell}>{row.reels}</td>
                  <td className={styles.cell}>{numberOf(row.used)}</td>
                  <td className={styles.cell}>{numberOf(row.kept)}</td>
                  <td className={styles.cell}>{numberOf(row.lost)}</td>
                  <td className={styles.cell}>{numberOf(row.worth)}</td>
                </tr>
              ),
          )}
        </tbody>
      </table>
    </Scroller>
  );
}

function titleOf({ longest, job }: HosePlan): string {
  if (!longest.isZero()) return 'Too long for the rack, not planned';
  return job.unusable || job.rack.length > 0 ? 'None in the rack that may be used' : 'Not in the rack';
}

/** The plan of one hose: totals, proof, comparison, warnings, every reel to scale; and what is short and what to buy. */
export function HoseResult({
  plan,
  firstReel,
  unit,
}: {
  readonly plan: HosePlan;
  readonly firstReel: number;
  readonly unit: LengthUnit;
}) {
  const styles = useStyles();
  const { job, totals, reels } = plan;
  const notes = [...job.lines, ...plan.tooLong].flatMap(line => (line.note ? [`Line ${line.line}: ${line.note}.`] : []));
  return (
    <section className={styles.hose} aria-label={job.hose}>
      <Subtitle2 as="h2">{job.hose}</Subtitle2>
      {plan.shortage !== undefined && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>{totals ? 'Not enough stock: planned in part' : 'Not enough stock'}</MessageBarTitle>
            {shortageSentence(plan, unit)}
          </MessageBarBody>
        </MessageBar>
      )}
      {plan.tooLong.length > 0 && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>{titleOf(plan)}</MessageBarTitle>
            {tooLongSentence(plan, unit)}
          </MessageBarBody>
        </MessageBar>
      )}
      {job.warnings.length > 0 && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{job.warnings.join(' ')}</MessageBarBody>
        </MessageBar>
      )}
      {notes.length > 0 && (
        <MessageBar intent="info" layout="multiline">
          <MessageBarBody>{notes.join(' ')}</MessageBarBody>
        </MessageBar>
      )}
      {totals && (
        <>
          <Body1>
            {proofSentence(plan)} {comparison(plan, unit)}
          </Body1>
          <Totals totals={totals} inSheetOrder={plan.inSheetOrder} hasWorth={job.problem.keep !== undefined} unit={unit} />
          {reels.map((reel, index) => (
            <ReelPicture key={index} reel={reel} number={firstReel + index} unit={unit} />
          ))}
        </>
      )}
    </section>
  );
}
