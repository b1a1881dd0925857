import { Caption1, Checkbox, MessageBar, MessageBarBody } from '@fluentui/react-components';
import { JOB_HEADINGS } from '../../sheets/jobs/jobHeadings';
import { JOB_ROLE_CHOICES } from '../../sheets/jobs/jobRoles';
import { asksAboutPlainEnds, NoJobs, type Jobs, type JobWishes } from '../../sheets/jobs/readJobs';
import { columnsOfTables } from '../../sheets/table/columnsRead';
import type { ReadReport } from '../../sheets/table/tableRows';
import type { Workbook } from '../../workbook/workbook';
import { FillRows } from './FillRows';
import { CorrectHeadings } from './CorrectHeadings';
import { HeadingsByHand } from './HeadingsByHand';
import { ReadNote } from './ReadNote';
import { TablesToSelect } from './TablesToSelect';
import { TableQuestions } from './TableQuestions';
import type { UnreadView } from './useSettledView';

/** What somebody says about the reading of job lines. */
export type JobTicks = Pick<JobWishes, 'take' | 'plainEnds'>;

/** Job lines as far as they were read. */
export type JobsView = { readonly status: 'ready'; readonly jobs: Jobs } | UnreadView;

/** Lines are planned before they are made: what is done after the cut list takes them. */
export const WITH_PLANNED: JobTicks = { take: new Set(['planned']) };

interface Props {
  readonly workbook: Workbook;
  readonly view: JobsView;
  /** Where a view takes fewer rows than were read. */
  readonly report?: ReadReport;
  readonly ticks: JobTicks;
  readonly onTicks: (ticks: JobTicks) => void;
  /** An answer or a correction was remembered: read the sheet again. */
  readonly onAnswered: () => void;
  readonly onShow?: (row: number) => void;
}

/** What a view has read of a job sheet, or why it has read nothing: rows, questions, columns; the same in all views of job lines. */
export function JobsNote({ view, ...rest }: Props) {
  if (view.status === 'loading') return <Caption1>Reading the job sheet …</Caption1>;
  if (view.status === 'ready') return <LinesRead jobs={view.jobs} {...rest} />;
  const { reason, error } = view;
  return (
    <>
      <MessageBar intent="warning" layout="multiline">
        <MessageBarBody>{reason}</MessageBarBody>
      </MessageBar>
      {error instanceof NoJobs && (
        <>
          <TablesToSelect workbook={rest.workbook} holds="lines" onSelected={rest.onAnswered} />
          <HeadingsByHand workbook={rest.workbook} of={JOB_HEADINGS} sheet={error.sheet} onCorrected={rest.onAnswered} />
        </>
      )}
    </>
  );
}

function LinesRead({
  workbook,
  jobs,
  report = jobs.report,
  ticks,
  onTicks,
  onAnswered,
  onShow,
}: Omit<Props, 'view'> & { readonly jobs: Jobs }) {
  const { sheet } = report;
  const questions = { workbook, kind: 'jobs', sheet } as const;
  return (
    <>
      <TableQuestions {...questions} questions={jobs.questions} onAnswered={onAnswered} />
      <ReadNote
        workbook={workbook}
        report={report}
        take={ticks.take ?? new Set()}
        onTake={take => onTicks({ ...ticks, take })}
        onShow={onShow}
      />
      <FillRows key={sheet} workbook={workbook} tables={jobs.tables} onFilled={onAnswered} />
      {(ticks.plainEnds || asksAboutPlainEnds(jobs)) && (
        <Checkbox
          label="Lines with one coupling: the other end stays plain hose"
          checked={ticks.plainEnds ?? false}
          onChange={(_, { checked }) => onTicks({ ...ticks, plainEnds: checked === true })}
        />
      )}
      <CorrectHeadings {...questions} columns={columnsOfTables(jobs.tables)} roles={JOB_ROLE_CHOICES} onCorrected={onAnswered} />
    </>
  );
}
