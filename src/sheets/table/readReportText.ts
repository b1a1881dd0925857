import { LEFT_OUT_WORDS, type LeftOutReason, type LeftOutRow, type ReadReport, type Takeable } from './tableRows';

/** Rows that were left out for one reason. */
export interface LeftOutGroup {
  readonly reason: LeftOutReason;
  readonly rows: readonly LeftOutRow[];
}

/** What must be known comes first. */
const ORDER: readonly LeftOutReason[] = [
  'stop',
  'problem',
  'barred',
  'hidden',
  'below',
  'done',
  'planned',
  'none wanted',
  'total',
  'remark',
];
const FOR_ONE: Readonly<Partial<Record<LeftOutReason, string>>> = { total: 'total', remark: 'remark' };

/** The rows that were left out, by reason; what must not be made first. */
export function leftOutGroups({ leftOut }: ReadReport): readonly LeftOutGroup[] {
  return ORDER.flatMap(reason => {
    const rows = leftOut.filter(row => row.reason === reason);
    return rows.length > 0 ? [{ reason, rows }] : [];
  });
}

/** The words for so many rows: `1 total`, `2 STOP`. */
export function leftOutWords({ reason, rows }: LeftOutGroup): string {
  return `${rows.length} ${(rows.length === 1 && FOR_ONE[reason]) || LEFT_OUT_WORDS[reason]}`;
}

/**
 * What a view has read, in one sentence.
 * @example readReportText(report) // Jobs A5:K40: 12 rows taken; left out: 2 STOP, 3 hidden or filtered out, 1 total
 */
export function readReportText(report: ReadReport): string {
  const { sheet, tables, taken, notes = [] } = report;
  const left = leftOutGroups(report).map(leftOutWords).join(', ');
  const rows = `${taken.length} ${taken.length === 1 ? 'row' : 'rows'} taken`;
  const read = `${sheet} ${tables.join(', ')}: ${rows}${left && `; left out: ${left}`}`;
  return [read, ...notes].join('. ');
}

/** What a tick says that takes the rows of a reason after all. */
export const TAKE_LABELS: Readonly<Record<Takeable, string>> = {
  hidden: 'Take hidden rows, too',
  below: 'Take lines elsewhere on the sheet, too',
  done: 'Take rows that are done, too',
  planned: 'Take rows that are planned already, too',
  barred: 'Take rows whose status says no, too',
};

/** Reasons for which a tick is offered: those that left something out, and those that are ticked. */
export function ticksOf(report: ReadReport, take: ReadonlySet<Takeable>): readonly Takeable[] {
  const reasons = new Set(report.leftOut.map(({ reason }) => reason));
  return (Object.keys(TAKE_LABELS) as Takeable[]).filter(reason => take.has(reason) || reasons.has(reason));
}
