import { columnsOfTables, type RoleChoice } from '../../sheets/table/columnsRead';
import type { TableKind } from '../../sheets/table/tableAnswers';
import type { TableQuestion } from '../../sheets/table/tableQuestion';
import type { ReadReport } from '../../sheets/table/tableRows';
import type { Workbook } from '../../workbook/workbook';
import { CorrectHeadings } from './CorrectHeadings';
import { ReadNote } from './ReadNote';
import { TableQuestions } from './TableQuestions';

interface Props {
  readonly workbook: Workbook;
  readonly kind: TableKind;
  readonly read: {
    readonly sheet: string;
    readonly questions: readonly TableQuestion[];
    readonly report: ReadReport;
    readonly table: Parameters<typeof columnsOfTables>[0][number];
  };
  readonly roles: readonly RoleChoice[];
  /** An answer or a correction was remembered: read the sheet again. */
  readonly onAnswered: () => void;
}

/** What a view has read of one table: its questions, its rows, its columns. */
export function TableRead({ workbook, kind, read: { sheet, questions, report, table }, roles, onAnswered }: Props) {
  return (
    <>
      <TableQuestions workbook={workbook} kind={kind} sheet={sheet} questions={questions} onAnswered={onAnswered} />
      <ReadNote workbook={workbook} report={report} />
      <CorrectHeadings
        workbook={workbook}
        kind={kind}
        sheet={sheet}
        columns={columnsOfTables([table])}
        roles={roles}
        onCorrected={onAnswered}
      />
    </>
  );
}
