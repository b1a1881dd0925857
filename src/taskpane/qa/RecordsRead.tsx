import type { GatheredRecords } from '../../sheets/inspection/gatherRecords';
import { crimpReport } from '../../sheets/crimps/readCrimpRows';
import type { Takeable } from '../../sheets/table/tableRows';
import type { Workbook } from '../../workbook/workbook';
import { CrimpsRead } from '../controls/CrimpsRead';
import { JobsNote, type JobTicks } from '../controls/JobsNote';

interface Props {
  readonly workbook: Workbook;
  readonly gathered: GatheredRecords;
  readonly take: ReadonlySet<Takeable>;
  readonly onTake: (take: ReadonlySet<Takeable>) => void;
  readonly ticks: JobTicks;
  readonly onTicks: (ticks: JobTicks) => void;
  readonly onChanged: () => void;
}

/** What records are made of: readings, job lines, what was left out of them. */
export function RecordsRead({ workbook, gathered, take, onTake, ticks, onTicks, onChanged }: Props) {
  const { reading, jobs } = gathered;
  return (
    <>
      {reading && (
        <CrimpsRead
          workbook={workbook}
          sheet={reading.sheet}
          reading={reading}
          report={crimpReport(reading, () => undefined)}
          table={reading.tables[0]}
          take={take}
          onTake={onTake}
          onChanged={onChanged}
        />
      )}
      {jobs && (
        <JobsNote workbook={workbook} view={{ status: 'ready', jobs }} ticks={ticks} onTicks={onTicks} onAnswered={onChanged} />
      )}
    </>
  );
}
