import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Body1,
  Caption1,
  makeStyles,
  tokens,
} from '@fluentui/react-components';
import { useMemo, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { analysisOf, type Analysed } from '../../sheets/analysis/analysisOf';
import type { AnalysisMemory } from '../../sheets/analysis/analysisMemory';
import { rememberAnalysis } from '../../sheets/analysis/analysisMemory';
import type { AnalysisSource } from '../../sheets/analysis/readAnalysis';
import { readOptionsOf } from '../../sheets/crimps/crimpFields';
import type { CrimpSheet } from '../../sheets/crimps/crimpSheet';
import type { Takeable } from '../../sheets/table/tableRows';
import { CrimpSettings } from '../controls/CrimpSettings';
import { TablesToSelect } from '../controls/TablesToSelect';
import { CrimpsRead } from '../controls/CrimpsRead';
import { useCrimpFields } from '../controls/useCrimpFields';
import { FromDay } from './FromDay';
import { LeftOutCrimps } from './LeftOutCrimps';
import { MachineSection } from './MachineSection';
import { VerdictCounts } from './VerdictCounts';
import { WriteReadings } from './WriteReadings';
import { countedText } from '../../core/countedText';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, minWidth: 0 },
  caution: { borderLeft: `3px solid ${tokens.colorPaletteDarkOrangeBorderActive}`, paddingLeft: tokens.spacingHorizontalM },
});

const MOST_NOTES = 5;

const CAUTIONS = [
  'Rejected crimps stay rejected: scrap them unless the maker allows crimping again. A new dial setting or a recalibration is tried on one trial piece and measured before the batch goes on.',
  'The makers’ current data come first. Lock the crimper out before changing dies; keep hands clear. Local codes and a qualified person decide.',
];

/** What was read, in a line. */
function readText({ sheet, chosen }: CrimpSheet, { crimps, waiting }: Analysed): string {
  const where = chosen ? `${chosen.size} selected rows of sheet ${sheet}` : `sheet ${sheet}`;
  const notYet = waiting > 0 ? `, ${waiting} not measured yet` : '';
  return `${countedText(crimps.length, 'crimp', 'crimps')} read from ${where}${notYet}.`;
}

interface Props {
  readonly workbook: Workbook;
  readonly source: AnalysisSource;
  /** Something about the sheet is remembered: read it again. */
  readonly onChanged: () => void;
}

/** The analysis of a sheet: verdicts, findings by machine, the way to a sheet of results; what was read, and how to correct it. */
export function TableAnalysis({ workbook, source, onChanged }: Props) {
  const { sheet, context } = source;
  const styles = useStyles();
  const [fields, setFields] = useCrimpFields();
  const [take, setTake] = useState<ReadonlySet<Takeable>>(new Set());
  const analysed = useMemo(() => analysisOf(sheet, readOptionsOf(fields, take), context), [sheet, fields, take, context]);
  const { reading, report, analysis, crimps, waiting, unit } = analysed;
  const decide = (memory: AnalysisMemory) => void rememberAnalysis(workbook, memory).then(onChanged, () => undefined);
  const hasReadings = reading.tables.length > 0;
  const machines = useMemo(() => [...(sheet.catalogue?.index.machines.values() ?? [])], [sheet.catalogue]);
  const notes = [...new Set(reading.rows.flatMap(row => row.notes))];
  return (
    <div className={styles.view}>
      {hasReadings ? (
        <Body1>{readText(sheet, analysed)}</Body1>
      ) : (
        <>
          <Body1>
            No readings here: no column of readings was found on sheet {sheet.sheet}. Select a cell among your readings, or choose
            their columns under “Columns read”.
          </Body1>
          <TablesToSelect workbook={workbook} holds="readings" />
        </>
      )}
      <CrimpsRead
        workbook={workbook}
        sheet={sheet.sheet}
        reading={reading}
        report={hasReadings ? report : undefined}
        table={sheet.own}
        take={take}
        onTake={setTake}
        onChanged={onChanged}
      />
      {notes.slice(0, MOST_NOTES).map(note => (
        <Caption1 key={note}>{note}</Caption1>
      ))}
      {notes.length > MOST_NOTES && <Caption1>… and {notes.length - MOST_NOTES} more notes like these.</Caption1>}
      <Accordion collapsible>
        <AccordionItem value="settings">
          <AccordionHeader size="small">Limits and machine</AccordionHeader>
          <AccordionPanel>
            <CrimpSettings
              fields={fields}
              unit={unit}
              isColumn={reading.tables.some(({ layout }) => layout === 'column')}
              machines={machines}
              onChange={setFields}
            />
          </AccordionPanel>
        </AccordionItem>
      </Accordion>
      <LeftOutCrimps crimps={analysed.leftOut} memory={context.memory} onDecided={decide} />
      {crimps.length === 0 && waiting > 0 && (
        <Body1>None of them is measured yet: type the readings under Entry, or into the sheet.</Body1>
      )}
      {analysis.crimps.length > 0 && (
        <>
          <VerdictCounts counts={analysis.counts} />
          <FromDay sheet={sheet.sheet} memory={context.memory} onDecided={decide} />
          {analysis.machines.map(machine => (
            <MachineSection
              key={machine.machine}
              workbook={workbook}
              machine={machine}
              unit={unit}
              order={analysis.order}
              memory={context.memory}
              onDecided={decide}
            />
          ))}
          <WriteReadings workbook={workbook} sheet={sheet} analysed={analysed} />
          <div className={styles.caution}>
            {CAUTIONS.map(caution => (
              <Caption1 block key={caution}>
                {caution}
              </Caption1>
            ))}
          </div>
        </>
      )}
    </div>
  );
}
