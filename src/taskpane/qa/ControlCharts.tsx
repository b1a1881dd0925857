import { Body1, Caption1, Field, makeStyles, Select, Subtitle2, tokens } from '@fluentui/react-components';
import { useCallback, useMemo, useState } from 'react';
import { TradeError } from '../../core/tradeError';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { MachineReadings } from '../../sheets/analysis/analyseReadings';
import type { JudgedCrimp } from '../../sheets/analysis/judgedCrimp';
import { mixedNote } from '../../sheets/analysis/settingFinding';
import {
  controlCharts,
  SUBGROUPINGS,
  type ControlChart,
  type ChartsOfRun as Charts,
  type Subgrouping,
} from '../../sheets/analysis/controlChart';
import { chartNotes, controlLimitsText, signalTexts } from '../../sheets/analysis/controlText';
import { Picture, type Plots } from './Picture';

const useStyles = makeStyles({
  fields: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(200px, 100%), 1fr))',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  list: { margin: 0, paddingLeft: '1.1em' },
});

const MOST_SHOWN = 12;

function OneChart({ chart, unit }: { readonly chart: ControlChart; readonly unit: LengthUnit }) {
  const styles = useStyles();
  const draw = useCallback((plots: Plots, width: number) => plots.controlPlot(chart, unit, width), [chart, unit]);
  const signals = signalTexts(chart, unit);
  return (
    <>
      <Body1>{controlLimitsText(chart, unit)}</Body1>
      <Picture draw={draw} label={`${chart.limits.chart} chart; ${signals.length} points with a signal, listed below.`} />
      {signals.length === 0 ? (
        <Caption1>No signals.</Caption1>
      ) : (
        <ul className={styles.list}>
          {signals.slice(0, MOST_SHOWN).map(signal => (
            <li key={signal}>
              <Body1>{signal}</Body1>
            </li>
          ))}
          {signals.length > MOST_SHOWN && (
            <li>
              <Body1>and {signals.length - MOST_SHOWN} more; the written sheet has them all</Body1>
            </li>
          )}
        </ul>
      )}
    </>
  );
}

function chartsOf(crimps: readonly JudgedCrimp[], by: Subgrouping): Charts | { readonly reason: string } {
  try {
    return controlCharts(crimps, by);
  } catch (error) {
    if (error instanceof TradeError) return { reason: error.message };
    throw error;
  }
}

interface Props {
  readonly machine: MachineReadings;
  readonly unit: LengthUnit;
  readonly order: 'date' | 'sheet';
  /** The combination that is looked at; "" = all. */
  readonly only: string;
  readonly onOnly: (name: string) => void;
}

/** Control charts of a machine's deviations: all combinations, or one; which points are subgroups is the user's choice. */
export function ControlCharts({ machine, unit, order, only, onOnly }: Props) {
  const styles = useStyles();
  const [by, setBy] = useState<Subgrouping>('each');
  const crimps = useMemo(() => machine.combinations.find(({ name }) => name === only)?.crimps ?? machine.crimps, [machine, only]);
  const found = useMemo(() => chartsOf(crimps, by), [crimps, by]);
  return (
    <>
      <Subtitle2 as="h3">Control charts</Subtitle2>
      <div className={styles.fields}>
        <Field label="Points" size="small">
          <Select className={styles.narrow} size="small" value={by} onChange={(_, { value }) => setBy(value as Subgrouping)}>
            {SUBGROUPINGS.map(([id, label]) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </Select>
        </Field>
        <Field label="Of" size="small">
          <Select className={styles.narrow} size="small" value={only} onChange={(_, { value }) => onOnly(value)}>
            <option value="">all combinations</option>
            {machine.combinations.map(({ name }) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </Select>
        </Field>
      </div>
      <Caption1>
        Deviations from target, in the order of the{' '}
        {order === 'date' ? 'dates' : 'sheet: not every crimp has a date that can be read, like 2026-03-14'}.
      </Caption1>
      {only === '' && mixedNote(machine) && <Body1>{mixedNote(machine)}</Body1>}
      {'reason' in found ? (
        <Body1>No control chart: {found.reason}.</Body1>
      ) : (
        <>
          {found.charts.map(chart => (
            <OneChart key={chart.limits.chart} chart={chart} unit={unit} />
          ))}
          {chartNotes(found, by === 'readings').map(note => (
            <Caption1 key={note}>{note}</Caption1>
          ))}
        </>
      )}
    </>
  );
}
