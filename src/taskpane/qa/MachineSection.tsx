import {
  Body1,
  Caption1,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import { useCallback, useMemo } from 'react';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { Workbook } from '../../workbook/workbook';
import { SuggestedDials } from './SuggestedDials';
import type { MachineReadings } from '../../sheets/analysis/analyseReadings';
import { CapabilityTable } from './CapabilityTable';
import { CombinationTable } from './CombinationTable';
import { ControlCharts } from './ControlCharts';
import { findingText } from '../../sheets/analysis/findingText';
import { MOST_DRAWN } from '../../sheets/analysis/mostDrawn';
import { Picture, type Plots } from './Picture';
import { responseText } from '../../sheets/analysis/responseText';

const useStyles = makeStyles({
  section: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, minWidth: 0 },
  details: { margin: 0, paddingLeft: '1.1em' },
});

const TITLES: Readonly<Record<string, string>> = {
  MACHINE: 'The machine is off',
  'MACHINE OR DIE': 'The machine or its die is off',
  SETTING: 'A setting is off',
  'MACHINE + SETTING': 'Machine and setting are off',
  'MACHINE OR DIE + SETTING': 'Machine or die, and setting are off',
  'IN SPEC': 'In order',
  'CANNOT TELL': 'Cannot tell yet',
  'NOT ENOUGH DATA': 'Too few data',
};

function intentOf(finding: string): 'warning' | 'success' | 'info' {
  if (finding === 'IN SPEC') return 'success';
  return finding === 'CANNOT TELL' || finding === 'NOT ENOUGH DATA' ? 'info' : 'warning';
}

const LEGEND =
  '● in spec, ▲ loose, ▼ tight, ◆ oval, ■ unsure; hollow: at an earlier setting. Grey: tolerance band. Thick: mean. Dashed: what the machine adds to all.';

interface Props {
  readonly workbook: Workbook;
  readonly machine: MachineReadings;
  readonly unit: LengthUnit;
  readonly order: 'date' | 'sheet';
}

/** One machine: the finding, its picture and the same as a table, control charts, capability, dial response. */
export function MachineSection({ workbook, machine, unit, order }: Props) {
  const styles = useStyles();
  const { cause, combinations, crimps, tolerance, tolerancesDiffer } = machine;
  const { headline, details } = useMemo(() => findingText(machine, unit), [machine, unit]);
  const draw = useCallback((plots: Plots, width: number) => plots.stripPlot(machine, unit, width), [machine, unit]);
  const name = machine.machine || 'All crimps';
  return (
    <section className={styles.section} aria-label={name}>
      <Subtitle2 as="h2">{name}</Subtitle2>
      <MessageBar intent={intentOf(cause.finding)} layout="multiline">
        <MessageBarBody>
          <MessageBarTitle>{TITLES[cause.finding]}</MessageBarTitle>
          {headline}
        </MessageBarBody>
      </MessageBar>
      {details.length > 0 && (
        <ul className={styles.details}>
          {details.map(detail => (
            <li key={detail}>
              <Body1>{detail}</Body1>
            </li>
          ))}
        </ul>
      )}
      <SuggestedDials workbook={workbook} machine={machine} />
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
          Tolerances differ: the narrowest, ±{tolerance.toString()} {unit}, decides what is off.
        </Caption1>
      )}
      <CombinationTable combinations={combinations} unit={unit} />
      <ControlCharts machine={machine} unit={unit} order={order} />
      <CapabilityTable crimps={crimps} tolerance={tolerance.toNumber()} />
      <Body1>{responseText(machine, unit)}</Body1>
    </section>
  );
}
