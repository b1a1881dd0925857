import { dot } from '@observablehq/plot';
import type { CrimpVerdict } from '../../core/crimp/crimpVerdict';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { deviationOf, type JudgedCrimp } from '../../sheets/analysis/judgedCrimp';
import { deviationText } from '../../sheets/analysis/diameterText';
import { MOST_DRAWN } from '../../sheets/analysis/mostDrawn';
import { BAD, GOOD } from './plotColours';

/** Each verdict has a shape of its own; the colour only repeats it. */
export const SHAPES: Readonly<
  Record<CrimpVerdict, { readonly symbol: 'circle' | 'triangle' | 'diamond' | 'square'; readonly rotate: number }>
> = {
  'IN SPEC': { symbol: 'circle', rotate: 0 },
  LOOSE: { symbol: 'triangle', rotate: 0 },
  TIGHT: { symbol: 'triangle', rotate: 180 },
  OVAL: { symbol: 'diamond', rotate: 0 },
  UNSURE: { symbol: 'square', rotate: 0 },
};

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

/** Crimps of one strip, and those of them that show the present. */
export interface DotStrip {
  readonly crimps: readonly JudgedCrimp[];
  readonly current: readonly JudgedCrimp[];
}

function stripsOf(strips: readonly DotStrip[]): readonly Strip[] {
  return strips.flatMap(({ crimps, current }, row) => {
    const present = new Set(current);
    return crimps.slice(-MOST_DRAWN).map((crimp, index): Strip => ({
      x: deviationOf(crimp),
      y: row + level(index, crimps.length),
      crimp,
      isCurrent: present.has(crimp),
    }));
  });
}

/** Every crimp as a dot on its strip; hollow where it was made before the last change or at an earlier setting. */
export function crimpDots(all: readonly DotStrip[], unit: LengthUnit) {
  const strips = stripsOf(all);
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
  return (Object.keys(SHAPES) as CrimpVerdict[]).flatMap(verdict => [dots(verdict, false), dots(verdict, true)]);
}
