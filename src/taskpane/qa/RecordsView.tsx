import { Body1, Caption1, makeStyles, tokens } from '@fluentui/react-components';
import { useCallback, useMemo, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { useWriting } from '../controls/useWriting';
import type { Writing } from '../../sheets/print/writing';
import { WritingBar } from '../controls/WritingBar';
import { freshSettings } from '../../sheets/cutlist/cutSettings';
import { today } from '../../sheets/table/today';
import type { ViewProps } from '../controls/viewProps';
import { TablesToSelect } from '../controls/TablesToSelect';
import { OutputButtons } from '../controls/OutputButtons';
import { freeSheetName } from '../../sheets/print/freeSheetName';
import { WriteButton } from '../controls/WriteButton';
import { useStored } from '../controls/useStored';
import { gatherRecords, NothingToRecord, refuseOverdue, type GatheredRecords } from '../../sheets/inspection/gatherRecords';
import { ALL_LINES, type RecordWishes } from '../../sheets/inspection/recordSources';
import type { Takeable } from '../../sheets/table/tableRows';
import { useCrimpFields } from '../controls/useCrimpFields';
import { useSettledView } from '../controls/useSettledView';
import { useRecordFields } from './useRecordFields';
import { RecordResults } from './RecordResults';
import { RecordsByHand } from './RecordsByHand';
import { RecordsRead } from './RecordsRead';
import { NOT_NOTED, type RecordOptions } from '../../sheets/inspection/inspectionRecord';
import { RecordFieldsForm } from './RecordFieldsForm';
import { recordPage } from '../../sheets/inspection/recordPage';
import { recordSheet } from '../../sheets/inspection/recordSheet';
import { recordGrowth } from '../../sheets/inspection/recordsLog';
import { RECORDS_SHEET } from '../../sheets/table/recordsSheet';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  start: { alignSelf: 'flex-start' },
});

/** What records would be made of, read as the selection moves. */
function useRecords(workbook: Workbook, wishes: RecordWishes) {
  const read = useCallback(
    async (of: Workbook): Promise<{ readonly status: 'ready'; readonly gathered: GatheredRecords }> => ({
      status: 'ready',
      gathered: await gatherRecords(of, wishes),
    }),
    [wishes],
  );
  return useSettledView(workbook, read);
}

/** Inspection records of the selected lines: printed, written as a sheet, and kept as data. */
export function RecordsView({ workbook, services }: ViewProps) {
  const styles = useStyles();
  const [stored, setStored] = useRecordFields(workbook);
  const [bench] = useStored('cuts', freshSettings('mm'));
  const [otherSheet, setOtherSheet] = useState('');
  const [result, setResult] = useState(NOT_NOTED);
  const { outcome, write: append, undo } = useWriting(workbook);
  const [crimps] = useCrimpFields();
  const [take, setTake] = useState<ReadonlySet<Takeable>>(new Set());
  const [ticks, setTicks] = useState(ALL_LINES);
  const wishes = useMemo((): RecordWishes => {
    const { pressureUnit, ...fields } = stored;
    return { fields, crimps, otherSheet, pressureUnit, bench, take, jobs: ticks };
  }, [stored, crimps, otherSheet, bench, take, ticks]);
  const { view, refresh } = useRecords(workbook, wishes);
  const gather = async () => {
    const { fields } = wishes;
    const gathered = await gatherRecords(workbook, wishes);
    refuseOverdue(gathered);
    const { records, handle, source, uncertainty } = gathered;
    const options: RecordOptions = { fields: { ...fields, uncertainty }, result, handle, source, today: today() };
    return { records, options };
  };
  const page = async () => {
    const { records, options } = await gather();
    return recordPage(records, options);
  };
  const writeSheet = async () => {
    const { records, options } = await gather();
    const sheet = freeSheetName('Inspection record', await workbook.sheets(), today());
    await workbook.write(recordSheet(sheet, records, options));
    return sheet;
  };
  const growth = async (): Promise<Writing> => {
    const { records, options } = await gather();
    const { appended, added, standing } = await recordGrowth(workbook, records, options);
    if (!appended) throw new Error(`All ${standing} crimps are already in ${RECORDS_SHEET}, with the same readings.`);
    const left = standing > 0 ? ` ${standing} were there already and were left out.` : '';
    return {
      changes: appended.changes,
      undo: appended.undo,
      message: `${RECORDS_SHEET}: ${added} rows added from row ${appended.row}.${left}`,
    };
  };
  return (
    <div className={styles.view}>
      <Body1>
        One record a line, from the selected rows of Pieces, of readings, or job lines; one selected cell stands for its whole
        table. Blank fields become lines to write on.
      </Body1>
      {view.status === 'failed' && <Body1>{view.reason}</Body1>}
      {view.status === 'failed' && view.error instanceof NothingToRecord && (
        <>
          <TablesToSelect workbook={workbook} />
          <RecordsByHand workbook={workbook} sheet={view.error.sheet} onCorrected={refresh} />
        </>
      )}
      {view.status === 'ready' && <RecordResults gathered={view.gathered} result={result} />}
      {view.status === 'ready' && (
        <RecordsRead
          workbook={workbook}
          gathered={view.gathered}
          take={take}
          onTake={setTake}
          ticks={ticks}
          onTicks={setTicks}
          onChanged={refresh}
        />
      )}
      <RecordFieldsForm
        workbook={workbook}
        stored={stored}
        onStored={setStored}
        otherSheet={otherSheet}
        onOtherSheet={setOtherSheet}
        result={result}
        onResult={part => setResult({ ...result, ...part })}
      />
      <OutputButtons
        workbook={workbook}
        services={services}
        page={page}
        onWrite={writeSheet}
        printLabel="Print records"
        writeLabel="Write as a new sheet"
      />
      <WriteButton className={styles.start} disabled={outcome.kind === 'busy'} onClick={() => void append(growth)}>
        Add to {RECORDS_SHEET}
      </WriteButton>
      <WritingBar outcome={outcome} onUndo={() => void undo()} />
      <Caption1>
        A record shows what was measured; it does not approve the assembly. Proof-test with liquid, air bled, behind a shield.
        Local law, codes and a qualified person decide.
      </Caption1>
    </div>
  );
}
