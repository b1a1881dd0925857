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
import { choiceOf, NO_FIELDS, type AnalysisFields } from '../../sheets/analysis/analysisFields';
import { analysisOf, type Analysed, type ReadyView } from '../../sheets/analysis/analysisOf';
import { MachineSection } from './MachineSection';
import { MeasurementFields } from './MeasurementFields';
import { MeasurementProblems } from './MeasurementProblems';
import { layoutWith, type MeasurementColumns, type MeasurementLayout } from '../../sheets/crimps/measurementRoles';
import { SettingFields } from './SettingFields';
import { VerdictCounts } from './VerdictCounts';
import { WriteReadings } from './WriteReadings';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, minWidth: 0 },
  caution: { borderLeft: `3px solid ${tokens.colorPaletteDarkOrangeBorderActive}`, paddingLeft: tokens.spacingHorizontalM },
});

const CAUTIONS = [
  'Rejected crimps stay rejected: scrap them unless the maker allows crimping again. A new dial setting or a recalibration is tried on one trial piece and measured before the batch goes on.',
  'The makers’ current data come first. Lock the crimper out before changing dies; keep hands clear. Local codes and a qualified person decide.',
];

const countText = (count: number, one: string, many: string) => (count === 1 ? `1 ${one}` : `${count} ${many}`);

/** What was read, in a line. */
function readText({ table, picked }: ReadyView, { measurements }: Analysed): string {
  const { crimps, waiting } = measurements;
  const where = picked ? `${picked.size} selected rows of sheet ${table.sheet}` : `sheet ${table.sheet}`;
  const notYet = waiting.length > 0 ? `, ${waiting.length} not measured yet` : '';
  return `${countText(crimps.length, 'crimp', 'crimps')} read from ${where}${notYet}.`;
}

interface Props {
  readonly workbook: Workbook;
  readonly view: ReadyView;
}

/** The analysis of one table: what it was taken for, verdicts, findings by machine, and the way to a sheet of results. */
export function TableAnalysis({ workbook, view }: Props) {
  const styles = useStyles();
  const [fields, setFields] = useState<AnalysisFields>(NO_FIELDS);
  const [chosen, setChosen] = useState<{ layout?: MeasurementLayout; columns?: MeasurementColumns }>({});
  const analysed = useMemo(() => analysisOf(view, choiceOf(fields, chosen)), [view, fields, chosen]);
  const { measurements, analysis, layout, columns, unit } = analysed;
  const hasReadings = (columns.readings?.length ?? 0) > 0;
  const machines = useMemo(() => [...(view.catalogue?.index.machines.values() ?? [])], [view.catalogue]);
  return (
    <div className={styles.view}>
      <Body1>{readText(view, analysed)}</Body1>
      {!hasReadings && (
        <Body1>
          No column of readings was found in the table here: select a cell among your readings, or say below which columns they
          are.
        </Body1>
      )}
      <Accordion collapsible multiple>
        <AccordionItem value="columns">
          <AccordionHeader size="small">Which column is what</AccordionHeader>
          <AccordionPanel>
            <MeasurementFields
              table={view.table}
              layout={layout}
              columns={columns}
              onLayout={each => setChosen({ ...chosen, layout: each })}
              onColumns={each => setChosen({ ...chosen, layout: layoutWith(layout, each), columns: each })}
            />
          </AccordionPanel>
        </AccordionItem>
        <AccordionItem value="settings">
          <AccordionHeader size="small">Limits and machine</AccordionHeader>
          <AccordionPanel>
            <SettingFields
              fields={fields}
              layout={layout}
              unit={unit}
              machines={machines}
              onChange={change => setFields({ ...fields, ...change })}
            />
          </AccordionPanel>
        </AccordionItem>
      </Accordion>
      {hasReadings && <MeasurementProblems problems={measurements.problems} onShow={at => void workbook.select(at)} />}
      {analysis.crimps.length === 0 && measurements.waiting.length > 0 && (
        <Body1>None of them is measured yet: type the readings under Entry, or into the sheet.</Body1>
      )}
      {analysis.crimps.length > 0 && (
        <>
          <VerdictCounts counts={analysis.counts} />
          {analysis.machines.map(machine => (
            <MachineSection key={machine.machine} workbook={workbook} machine={machine} unit={unit} order={analysis.order} />
          ))}
          <WriteReadings workbook={workbook} view={view} analysed={analysed} />
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
