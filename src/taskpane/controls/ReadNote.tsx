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

/** Rows with the cause they share: one cause is said once, however many rows it left out. */
function byCause(rows: readonly LeftOutRow[]): { sentence: string | undefined; rows: LeftOutRow[] }[] {
  const causes = new Map<string | undefined, LeftOutRow[]>();
  for (const row of rows) {
    const same = causes.get(row.sentence);
    if (same) same.push(row);
    else causes.set(row.sentence, [row]);
  }
  return [...causes].map(([sentence, of]) => ({ sentence, rows: of }));
}

/** What a view has read: rows taken, rows left out by reason with a way to each, and ticks that take those that may be. */
export function ReadNote({ workbook, report, take = new Set(), onTake, onShow }: Props) {
  const styles = useStyles();
  const show = onShow ?? (row => void workbook.select({ sheet: report.sheet, address: `A${row}` }));
  const groups = leftOutGroups(report);
  const stops = groups.filter(({ reason }) => reason === 'stop' || reason === 'problem');
  const others = groups.filter(group => !stops.includes(group));
  const link = ({ row, at }: LeftOutRow) => (
    <Link key={at ?? row} inline onClick={() => (at ? void workbook.select({ sheet: report.sheet, address: at }) : show(row))}>
      Row {row}
    </Link>
  );
  const causes = (rows: readonly LeftOutRow[]) =>
    byCause(rows).map(({ sentence, rows: of }) => (
      <div key={`${of[0]!.row} ${sentence}`}>
        {of.flatMap((row, index) => (index === 0 ? [link(row)] : [', ', link(row)]))}
        {sentence && `: ${sentence}`}
      </div>
    ));
  const tick = (reason: Takeable, isTaken: boolean) =>
    onTake?.(new Set(isTaken ? [...take, reason] : [...take].filter(each => each !== reason)));
  return (
    <section className={styles.note} aria-label={`What was read of ${report.sheet}`}>
      <Caption1>{readReportText(report)}</Caption1>
      {stops.map(({ reason, rows }) => (
        <MessageBar key={reason} intent="warning" layout="multiline">
          <MessageBarBody>
            {LEFT_OUT_WORDS[reason]}:{causes(rows)}
          </MessageBarBody>
        </MessageBar>
      ))}
      {others.length > 0 && (
        <details className={styles.list}>
          <summary>Rows left out</summary>
          {others.map(({ reason, rows }) => (
            <div key={reason}>
              {LEFT_OUT_WORDS[reason]}:{causes(rows)}
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
