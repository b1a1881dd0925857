import { plot, rect, ruleX, text } from '@observablehq/plot';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { MachineReadings } from '../../sheets/analysis/analyseReadings';
import { dieStrips } from '../../sheets/analysis/dieStrips';
import { deviationText } from '../../sheets/analysis/diameterText';
import { deviationOf } from '../../sheets/analysis/judgedCrimp';
import { crimpDots, type DotStrip } from './crimpDots';
import { INK } from './plotColours';

const STRIP_HEIGHT = 52;
const NAME_AT = 0.18;

/** A named strip with its mean, or what its crimps are off together. */
interface NamedStrip extends DotStrip {
  readonly name: string;
  readonly mean: number | undefined;
}

/** Half the width of the scale: the widest band and the furthest crimp, with a margin. */
function reachOf({ crimps }: MachineReadings): number {
  return 1.08 * crimps.reduce((reach, crimp) => Math.max(reach, crimp.tolerance.toNumber(), Math.abs(deviationOf(crimp))), 0);
}

/** Deviations on strips, one above the other: tolerance band, zero line, mean, the machine offset. */
function strips(machine: MachineReadings, all: readonly NamedStrip[], unit: LengthUnit, width: number): Element {
  const { cause } = machine;
  const reach = reachOf(machine);
  const bands = all.map(({ crimps }, row) => ({ reach: crimps[0]!.tolerance.toNumber(), row }));
  const band = { y1: (each: { row: number }) => each.row + 0.32, y2: (each: { row: number }) => each.row + 0.98 };
  const edges = bands.flatMap(each => [-1, 1].map(side => ({ ...each, x: side * each.reach })));
  const means = all.flatMap(({ mean }, row) => (mean === undefined ? [] : [{ x: mean, row }]));
  const offset = cause.interval && cause.offset ? [cause.offset.toNumber()] : [];
  return plot({
    width,
    height: all.length * STRIP_HEIGHT + 52,
    marginLeft: 6,
    marginRight: 6,
    marginTop: 14,
    marginBottom: 38,
    style: { background: 'transparent', color: INK, fontSize: '11px', fontFamily: 'inherit', overflow: 'visible' },
    x: {
      domain: [-reach, reach],
      label: `deviation (${unit}): − small, + large`,
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: Math.max(3, Math.floor(width / 55)),
      tickFormat: (value: number) => deviationText(value, unit),
    },
    y: { domain: [all.length, 0], axis: null },
    marks: [
      rect(bands, { x1: each => -each.reach, x2: each => each.reach, ...band, fill: INK, fillOpacity: 0.1 }),
      ruleX(edges, { x: 'x', ...band, stroke: INK, strokeDasharray: '2,2' }),
      ruleX(bands, { x: 0, ...band, stroke: INK, strokeWidth: 1 }),
      ruleX(
        bands.flatMap(each => offset.map(x => ({ ...each, x }))),
        { x: 'x', ...band, stroke: INK, strokeWidth: 1.6, strokeDasharray: '7,3' },
      ),
      text(offset, {
        x: each => each,
        y: 0,
        text: () => 'machine',
        dy: -8,
        fill: INK,
        stroke: 'var(--picture-back)',
        strokeWidth: 3,
      }),
      text(all, {
        x: -reach,
        y: (_, row) => row + NAME_AT,
        text: ({ name }) => name,
        textAnchor: 'start',
        lineWidth: (width - 20) / 11,
        textOverflow: 'ellipsis-end',
        fill: INK,
        stroke: 'var(--picture-back)',
        strokeWidth: 3,
        fontWeight: 600,
      }),
      ruleX(means, { x: 'x', ...band, stroke: INK, strokeWidth: 2.5 }),
      ...crimpDots(all, unit),
    ],
  });
}

/** Deviations of every combination on a strip of its own. */
export function stripPlot(machine: MachineReadings, unit: LengthUnit, width: number): Element {
  const all = machine.combinations.map(each => ({ ...each, mean: each.mean?.toNumber() }));
  return strips(machine, all, unit, width);
}

/** Deviations of every die on a strip of its own; the thick line is machine and die together. */
export function diePlot(machine: MachineReadings, unit: LengthUnit, width: number): Element {
  const all = dieStrips(machine).map(({ name, crimps, current, offset }) => ({
    name: `Die ${name}`,
    crimps,
    current,
    mean: offset,
  }));
  return strips(machine, all, unit, width);
}
