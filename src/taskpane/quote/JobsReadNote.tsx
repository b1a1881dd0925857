import { JOB_ROLES } from '../../sheets/jobs/jobRoles';
import { columnsRead, roleChoices } from '../../sheets/table/columnsRead';
import type { Workbook } from '../../workbook/workbook';
import { HeadingCorrections } from '../controls/HeadingCorrections';
import { ReadNote } from '../controls/ReadNote';
import { TableQuestions } from '../controls/TableQuestions';
import type { JobsRead } from './useJobsRead';

const ROLES = roleChoices(JOB_ROLES);

/** Which job lines were read, what was left out and why, what the sheet does not say, and what each column was read as. */
export function JobsReadNote({ workbook, read }: { readonly workbook: Workbook; readonly read: JobsRead }) {
  const { view, take, onTake, refresh } = read;
  if (view.status !== 'ready') return null;
  const { report, questions, tables } = view.jobs;
  const about = { workbook, kind: 'jobs', sheet: report.sheet } as const;
  return (
    <>
      <TableQuestions {...about} questions={questions} onAnswered={refresh} />
      <ReadNote workbook={workbook} report={report} take={take} onTake={onTake} />
      {tables.slice(0, 1).map(({ table, columns }) => (
        <HeadingCorrections
          key={report.sheet}
          {...about}
          columns={columnsRead(table, columns)}
          roles={ROLES}
          onCorrected={refresh}
        />
      ))}
    </>
  );
}
