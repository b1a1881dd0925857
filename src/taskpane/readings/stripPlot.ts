import { dot, plot, rect, ruleX, text } from '@observablehq/plot';
import type { CrimpVerdict } from '../../core/crimp/crimpVerdict';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { JudgedCrimp, MachineReadings } from './analyseReadings';
import { deviationText } from './diameterText';
import { MOST_DRAWN } from './mostDrawn';

/** Each verdict has a shape of its own; the colour only repeats it. */
const SHAPES: Readonly<
  Record<CrimpVerdict, { readonly symbol: 'circle' | 'triangle' | 'diamond' | 'square'; readonly rotate: number }>
> = {
  'IN SPEC': { symbol: 'circle', rotate: 0 },
  LOOSE: { symbol: 'triangle', rotate: 0 },
  TIGHT: { symbol: 'triangle', rotate: 180 },
  OVAL: { symbol: 'diamond', rotate: 0 },
  UNSURE: { symbol: 'square', rotate: 0 },
};

/** Colours that the picture's frame sets, so that high contrast can replace them. */
export const INK = 'var(--picture-ink)';
export const GOOD = 'var(--picture-good)';
export const BAD = 'var(--picture-bad)';

const STRIP_HEIGHT = 52;
const NAME_AT = 0.18;
const DOTS_FROM = 0.34;
const DOTS_TO = 0.96;
/** Levels over which the dots of a strip are spread, so that equal ones do not hide each other. */
const LEVELS = 4;

interface Strip {
  readonly x: number;
  readonly y: number;
  readonly crimp: JudgedCrimp;
  readonly isCurrent: boolean;
}

function level(index: number, count: number): number {
  const levels = Math.min(count, LEVELS);
  return DOTS_FROM + ((DOTS_TO - DOTS_FROM) * ((index % levels) + 0.5)) / levels;
}

const deviationOf = ({ measure }: JudgedCrimp) => measure.deviation.toNumber();

/** Half the width of the scale: the widest band and the furthest crimp, with a margin. */
function reachOf({ crimps }: MachineReadings): number {
  return 1.08 * crimps.reduce((reach, crimp) => Math.max(reach, crimp.tolerance.toNumber(), Math.abs(deviationOf(crimp))), 0);
}

/** Deviations of every combination on a strip of its own: tolerance band, zero line, mean, what the machine adds to all. */
export function stripPlot(machine: MachineReadings, unit: LengthUnit, width: number): Element {
  const { combinations, cause } = machine;
  const reach = reachOf(machine);
  const strips = combinations.flatMap(({ crimps, current }, row) => {
    const present = new Set(current);
    return crimps.slice(-MOST_DRAWN).map((crimp, index): Strip => ({
      x: deviationOf(crimp),
      y: row + level(index, crimps.length),
      crimp,
      isCurrent: present.has(crimp),
    }));
  });
  const dots = (verdict: CrimpVerdict, isCurrent: boolean) =>
    dot(
      strips.filter(strip => strip.crimp.verdict === verdict && strip.isCurrent === isCurrent),
      {
        x: 'x',
        y: 'y',
        ...SHAPES[verdict],
        r: 3.6,
        fill: isCurrent ? (verdict === 'IN SPEC' ? GOOD : BAD) : 'none',
        stroke: verdict === 'IN SPEC' ? GOOD : BAD,
        title: ({ crimp }: Strip) => `row ${crimp.row}: ${deviationText(deviationOf(crimp), unit, true)} ${unit}, ${verdict}`,
      },
    );
  const bands = combinations.map(({ crimps }, row) => ({ reach: crimps[0]!.tolerance.toNumber(), row }));
  const band = { y1: (each: { row: number }) => each.row + 0.32, y2: (each: { row: number }) => each.row + 0.98 };
  const edges = bands.flatMap(each => [-1, 1].map(side => ({ ...each, x: side * each.reach })));
  const means = combinations.map(({ cause: own }, row) => ({ x: own.mean.toNumber(), row }));
  const offset = cause.interval && cause.offset ? [cause.offset.toNumber()] : [];
  return plot({
    width,
    height: combinations.length * STRIP_HEIGHT + 52,
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
    y: { domain: [combinations.length, 0], axis: null },
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
      text(combinations, {
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
      ...(Object.keys(SHAPES) as CrimpVerdict[]).flatMap(verdict => [dots(verdict, false), dots(verdict, true)]),
    ],
  });
}
