import { Checkbox } from '@fluentui/react-components';
import { JOB_ROLE_CHOICES } from '../../sheets/jobs/jobRoles';
import { asksAboutPlainEnds, type Jobs, type JobWishes } from '../../sheets/jobs/readJobs';
import { columnsOfTables } from '../../sheets/table/columnsRead';
import type { ReadReport } from '../../sheets/table/tableRows';
import type { Workbook } from '../../workbook/workbook';
import { HeadingCorrections } from './HeadingCorrections';
import { ReadNote } from './ReadNote';
import { TableQuestions } from './TableQuestions';

/** What somebody says about the reading of job lines. */
export type JobTicks = Pick<JobWishes, 'take' | 'plainEnds'>;

/** Lines are planned before they are made: what is done after the cut list takes them. */
export const WITH_PLANNED: JobTicks = { take: new Set(['planned']) };

interface Props {
  readonly workbook: Workbook;
  readonly jobs: Jobs;
  /** Where a view takes fewer rows than were read. */
  readonly report?: ReadReport;
  readonly ticks: JobTicks;
  readonly onTicks: (ticks: JobTicks) => void;
  /** An answer or a correction was remembered: read the sheet again. */
  readonly onAnswered: () => void;
  readonly onShow?: (row: number) => void;
}

/** What a view has read of a job sheet: rows, questions, columns; the same in all views of job lines. */
export function JobsNote({ workbook, jobs, report = jobs.report, ticks, onTicks, onAnswered, onShow }: Props) {
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
      {(ticks.plainEnds || asksAboutPlainEnds(jobs)) && (
        <Checkbox
          label="Lines with one coupling: the other end stays plain hose"
          checked={ticks.plainEnds ?? false}
          onChange={(_, { checked }) => onTicks({ ...ticks, plainEnds: checked === true })}
        />
      )}
      <HeadingCorrections
        {...questions}
        columns={columnsOfTables(jobs.tables)}
        roles={JOB_ROLE_CHOICES}
        onCorrected={onAnswered}
      />
    </>
  );
}
