import { Body1, Caption1, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import { useCallback, useMemo, useState } from 'react';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { Workbook } from '../../workbook/workbook';
import { SuggestedDials } from './SuggestedDials';
import type { MachineReadings } from '../../sheets/analysis/analyseReadings';
import { CapabilityTable } from './CapabilityTable';
import { CombinationTable } from './CombinationTable';
import { ControlCharts } from './ControlCharts';
import { DieTable } from './DieTable';
import { FindingBar } from './FindingBar';
import type { AnalysisMemory } from '../../sheets/analysis/analysisMemory';
import { dieStrips } from '../../sheets/analysis/dieStrips';
import { findingsOf } from '../../sheets/analysis/findingsOf';
import { timePicture } from '../../sheets/analysis/timePicture';
import { timeText } from '../../sheets/analysis/timeText';
import { MOST_DRAWN } from '../../sheets/analysis/mostDrawn';
import { Picture, type Plots } from './Picture';
import { responseText } from '../../sheets/analysis/responseText';

const useStyles = makeStyles({
  section: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, minWidth: 0 },
});

const LEGEND =
  '● in spec, ▲ loose, ▼ tight, ◆ oval, ■ unsure; hollow: before the last change or at an earlier setting. Grey: tolerance band. Thick: mean since the last change. Dashed: machine offset.';

interface Props {
  readonly workbook: Workbook;
  readonly machine: MachineReadings;
  readonly unit: LengthUnit;
  readonly order: 'date' | 'sheet';
  readonly memory: AnalysisMemory;
  readonly onDecided: (memory: AnalysisMemory) => void;
}

/** One machine: its findings, worst first, their pictures and the same as tables, control charts, capability, dial response. */
export function MachineSection({ workbook, machine, unit, order, memory, onDecided }: Props) {
  const styles = useStyles();
  const [only, setOnly] = useState('');
  const { combinations, crimps, tolerance, tolerancesDiffer, counts } = machine;
  const findings = useMemo(() => findingsOf(machine, unit), [machine, unit]);
  const draw = useCallback((plots: Plots, width: number) => plots.stripPlot(machine, unit, width), [machine, unit]);
  const drawTime = useCallback((plots: Plots, width: number) => plots.timePlot(machine, unit, width), [machine, unit]);
  const drawDies = useCallback((plots: Plots, width: number) => plots.diePlot(machine, unit, width), [machine, unit]);
  const hasTime = useMemo(() => timePicture(machine) !== undefined, [machine]);
  const dies = useMemo(() => dieStrips(machine), [machine]);
  const name = machine.machine || 'All crimps';
  return (
    <section className={styles.section} aria-label={name}>
      <Subtitle2 as="h2">{name}</Subtitle2>
      {findings.map(finding => (
        <FindingBar
          key={finding.title}
          workbook={workbook}
          finding={finding}
          sheet={machine.sheet}
          machine={machine.machine}
          memory={memory}
          onDecided={onDecided}
        />
      ))}
      {counts.notes.map(note => (
        <Caption1 key={note}>{note}</Caption1>
      ))}
      <SuggestedDials workbook={workbook} machine={machine} />
      {hasTime && (
        <>
          <Subtitle2 as="h3">Over time</Subtitle2>
          <Picture draw={drawTime} label={`Deviations over time. ${timeText(machine)}`} />
          <Caption1>{timeText(machine)}</Caption1>
        </>
      )}
      {dies.length > 0 && (
        <>
          <Subtitle2 as="h3">By die</Subtitle2>
          <Picture draw={drawDies} label={`Deviations by die, ${dies.length} dies; the table below has the same in numbers.`} />
          <DieTable dies={dies} unit={unit} />
        </>
      )}
      <Subtitle2 as="h3">By combination</Subtitle2>
      <Picture
        draw={draw}
        label={`Deviations of ${crimps.length} crimps of ${combinations.length} combinations around their targets, with the tolerance band; the table below has the same in numbers.`}
      />
      <Caption1>{LEGEND}</Caption1>
      {combinations.some(({ crimps: all }) => all.length > MOST_DRAWN) && (
        <Caption1>Of each combination the newest {MOST_DRAWN} crimps are drawn; the numbers come from all.</Caption1>
      )}
      {tolerancesDiffer && (
        <Caption1>
          Tolerances differ: the narrowest, ±{tolerance.toString()} {unit}, decides whether the machine is off; each combination
          has its own.
        </Caption1>
      )}
      <CombinationTable combinations={combinations} unit={unit} />
      <ControlCharts machine={machine} unit={unit} order={order} only={only} onOnly={setOnly} />
      <CapabilityTable machine={machine} only={combinations.find(each => each.name === only)} />
      <Body1>{responseText(machine, unit)}</Body1>
    </section>
  );
}
