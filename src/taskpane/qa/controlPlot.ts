import { CALIPER_PLACES } from '../../core/units/decimalPlaces';
import { dot, line, plot, ruleY, text } from '@observablehq/plot';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { ChartPoint, ControlChart } from '../../sheets/analysis/controlChart';
import { pointText } from '../../sheets/analysis/controlText';
import { deviationText } from '../../sheets/analysis/diameterText';
import { MOST_DRAWN } from '../../sheets/analysis/mostDrawn';
import { BAD, GOOD, INK } from './plotColours';

/** A control chart: points in the order they were made, centre and limits; a signal has its own shape and its rules' numbers. */
export function controlPlot({ limits, points: all }: ControlChart, unit: LengthUnit, width: number): Element {
  const points = all.slice(-MOST_DRAWN);
  const isRange = limits.chart === 'Range' || limits.chart === 'Moving range';
  const marked = points.filter(({ rules }) => rules.length > 0);
  const plain = points.filter(({ rules }) => rules.length === 0);
  const heights = [...points.map(({ value }) => value), limits.lower, limits.upper];
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const margin = 0.12 * (high - low || 1);
  const ofSize = (value: number) => value.toFixed(CALIPER_PLACES[unit]);
  const title = (point: ChartPoint) => `${deviationText(point.value, unit, true)} ${unit}, ${pointText(point)}`;
  const named = [
    { at: limits.upper, name: 'upper' },
    { at: limits.centre, name: 'centre' },
    { at: limits.lower, name: 'lower' },
  ].filter(({ at }, index) => index < 2 || !isRange || at > 0);
  const place = { x: 'place', y: 'value' } as const;
  return plot({
    width,
    height: isRange ? 120 : 170,
    marginLeft: 44,
    marginRight: 40,
    marginTop: 12,
    marginBottom: 34,
    style: { background: 'transparent', color: INK, fontSize: '11px', fontFamily: 'inherit', overflow: 'visible' },
    x: {
      domain: [points[0]!.place - 0.5, points.at(-1)!.place + 0.5],
      label: 'in the order made',
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: Math.max(2, Math.min(points.length, Math.floor(width / 50))),
      tickFormat: (value: number) => (Number.isInteger(value) ? String(value) : ''),
    },
    y: {
      domain: [isRange ? 0 : low - margin, high + margin],
      label: null,
      ticks: isRange ? 3 : 5,
      tickFormat: (value: number) => (isRange ? ofSize(value) : deviationText(value, unit)),
    },
    marks: [
      ruleY([limits.centre], { stroke: INK }),
      ruleY(
        named.filter(({ name }) => name !== 'centre'),
        { y: 'at', stroke: INK, strokeDasharray: '5,3' },
      ),
      text(named, { x: () => points.at(-1)!.place + 0.5, y: 'at', text: 'name', textAnchor: 'start', dx: 3, fill: INK }),
      line(points, { ...place, stroke: INK, strokeWidth: 0.8, strokeOpacity: 0.7 }),
      dot(plain, { ...place, r: points.length > 60 ? 1.8 : 2.8, fill: GOOD, title }),
      dot(marked, { ...place, symbol: 'diamond', r: 5, fill: BAD, stroke: INK, title }),
      text(marked, {
        ...place,
        text: ({ rules }: ChartPoint) => rules.join(' '),
        dy: -10,
        fill: INK,
        stroke: 'var(--picture-back)',
        strokeWidth: 3,
        fontWeight: 600,
      }),
    ],
  });
}
