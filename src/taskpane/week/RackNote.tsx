import type { Rack } from '../../sheets/rack/rack';
import { RACK_ROLE_CHOICES } from '../../sheets/rack/rackTable';
import { columnsOfTables } from '../../sheets/table/columnsRead';
import type { Takeable } from '../../sheets/table/tableRows';
import type { Workbook } from '../../workbook/workbook';
import { CorrectHeadings } from '../controls/CorrectHeadings';
import { ReadNote } from '../controls/ReadNote';
import { TableQuestions } from '../controls/TableQuestions';

interface Props {
  readonly workbook: Workbook;
  readonly rack: Rack;
  readonly take: ReadonlySet<Takeable>;
  readonly onTake: (take: ReadonlySet<Takeable>) => void;
  readonly onAnswered: () => void;
}

/** What was read of the rack. */
export function RackNote({ workbook, rack, take, onTake, onAnswered }: Props) {
  const { report, questions, tables } = rack;
  const of = { workbook, kind: 'rack', sheet: report.sheet } as const;
  return (
    <>
      <TableQuestions {...of} questions={questions} onAnswered={onAnswered} />
      <ReadNote workbook={workbook} report={report} take={take} onTake={onTake} />
      <CorrectHeadings {...of} columns={columnsOfTables(tables)} roles={RACK_ROLE_CHOICES} onCorrected={onAnswered} />
    </>
  );
}
