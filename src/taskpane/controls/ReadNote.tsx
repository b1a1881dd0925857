import { Caption1, Checkbox, Link, makeStyles, MessageBar, MessageBarBody, tokens } from '@fluentui/react-components';
import { leftOutGroups, readReportText, TAKE_LABELS, ticksOf } from '../../sheets/table/readReportText';
import { LEFT_OUT_WORDS, type LeftOutRow, type ReadReport, type Takeable } from '../../sheets/table/tableRows';
import type { Workbook } from '../../workbook/workbook';

const useStyles = makeStyles({
  note: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalXS },
  list: { fontSize: tokens.fontSizeBase200, overflowWrap: 'anywhere' },
});

interface Props {
  readonly workbook: Workbook;
  readonly report: ReadReport;
  /** Rows that are taken though they would be left out. */
  readonly take?: ReadonlySet<Takeable>;
  /** Takes or leaves the rows of a reason; without it no ticks are offered. */
  readonly onTake?: ((take: ReadonlySet<Takeable>) => void) | undefined;
  /** Leads to a row; selects it where left out. */
  readonly onShow?: ((row: number) => void) | undefined;
}

/** What a view has read: rows taken, rows left out by reason with a way to each, and ticks that take those that may be. */
export function ReadNote({ workbook, report, take = new Set(), onTake, onShow }: Props) {
  const styles = useStyles();
  const show = onShow ?? (row => void workbook.select({ sheet: report.sheet, address: `A${row}` }));
  const groups = leftOutGroups(report);
  const stops = groups.filter(({ reason }) => reason === 'stop' || reason === 'problem');
  const others = groups.filter(group => !stops.includes(group));
  const jump = ({ row, sentence }: LeftOutRow) => (
    <div key={row}>
      <Link inline onClick={() => show(row)}>
        Row {row}
      </Link>
      {sentence && `: ${sentence}`}
    </div>
  );
  const tick = (reason: Takeable, isTaken: boolean) =>
    onTake?.(new Set(isTaken ? [...take, reason] : [...take].filter(each => each !== reason)));
  return (
    <section className={styles.note} aria-label={`What was read of ${report.sheet}`}>
      <Caption1>{readReportText(report)}</Caption1>
      {stops.map(({ reason, rows }) => (
        <MessageBar key={reason} intent="warning" layout="multiline">
          <MessageBarBody>
            {LEFT_OUT_WORDS[reason]}:{rows.map(jump)}
          </MessageBarBody>
        </MessageBar>
      ))}
      {others.length > 0 && (
        <details className={styles.list}>
          <summary>Rows left out</summary>
          {others.map(({ reason, rows }) => (
            <div key={reason}>
              {LEFT_OUT_WORDS[reason]}:{rows.map(jump)}
            </div>
          ))}
        </details>
      )}
      {onTake &&
        ticksOf(report, take).map(reason => (
          <Checkbox
            key={reason}
            size="medium"
            label={TAKE_LABELS[reason]}
            checked={take.has(reason)}
            onChange={(_, { checked }) => tick(reason, checked === true)}
          />
        ))}
    </section>
  );
}
