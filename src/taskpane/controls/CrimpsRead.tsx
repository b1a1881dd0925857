import { Caption1, makeStyles, tokens } from '@fluentui/react-components';
import { useMemo } from 'react';
import { CRIMP_HEADINGS } from '../../sheets/crimps/crimpHeadings';
import { CRIMP_ROLE_CHOICES } from '../../sheets/crimps/crimpRoles';
import { crimpColumnsRead, type CrimpReading } from '../../sheets/crimps/readCrimpRows';
import type { CrimpTable } from '../../sheets/crimps/crimpTable';
import type { ReadReport, Takeable } from '../../sheets/table/tableRows';
import type { Workbook } from '../../workbook/workbook';
import { FillRows } from './FillRows';
import { CorrectHeadings } from './CorrectHeadings';
import { HeadingsByHand } from './HeadingsByHand';
import { ReadNote } from './ReadNote';
import { TableQuestions } from './TableQuestions';

const useStyles = makeStyles({ view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, minWidth: 0 } });

interface Props {
  readonly workbook: Workbook;
  readonly sheet: string;
  readonly reading: CrimpReading | undefined;
  readonly report: ReadReport | undefined;
  /** The table whose columns may be corrected. */
  readonly table: CrimpTable | undefined;
  readonly take: ReadonlySet<Takeable>;
  readonly onTake: (take: ReadonlySet<Takeable>) => void;
  /** An answer or a correction is remembered: read the sheet again. */
  readonly onChanged: () => void;
}

/** What was read of a sheet of crimps, what it does not say, and which column is what. */
export function CrimpsRead({ workbook, sheet, reading, report, table, take, onTake, onChanged }: Props) {
  const styles = useStyles();
  // One reading a row: formulas have a row a crimp, not a row a reading.
  const rowTables = useMemo(() => reading?.tables.filter(({ layout }) => layout !== 'column') ?? [], [reading]);
  const columns = table && (
    <CorrectHeadings
      workbook={workbook}
      kind="crimps"
      sheet={sheet}
      columns={crimpColumnsRead(table)}
      roles={CRIMP_ROLE_CHOICES}
      onCorrected={onChanged}
    />
  );
  return (
    <div className={styles.view}>
      <TableQuestions
        workbook={workbook}
        kind="crimps"
        sheet={sheet}
        questions={reading?.questions ?? []}
        onAnswered={onChanged}
      />
      {report && <ReadNote workbook={workbook} report={report} take={take} onTake={onTake} />}
      <FillRows key={sheet} workbook={workbook} tables={rowTables} onFilled={onChanged} />
      {reading?.notes.map(note => (
        <Caption1 key={note}>{note}</Caption1>
      ))}
      {report ? (
        columns
      ) : (
        <HeadingsByHand workbook={workbook} of={CRIMP_HEADINGS} sheet={sheet} onCorrected={onChanged} otherwise={columns} />
      )}
    </div>
  );
}
