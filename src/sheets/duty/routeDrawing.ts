import type { Decimal } from '../../core/units/decimal';
import { elbowTip } from './elbowDrawing';
import type { Demand } from './readDuty';
import {
  bentOtherwise,
  routePlan,
  scaleLength,
  stretch,
  upTo,
  type PlacedPart,
  type PlanPart,
  type PlanPoint,
} from './routePlan';

/** Points of the drawing's width; where labels stand around it. */
export const WIDTH = 288;
const TALLEST = 260;
const EDGE = 26;
const FOOT = 22;
const LETTER = 14;
const THINNEST = 2;
/** From here on a label stands beside the hose rather than above it. */
const SIDEWAYS = 0.3;

/** What a route is drawn from, lengths in the form's unit; undefined = not known. */
export interface RouteInput {
  readonly demand: Demand;
  readonly outsideDiameter: Decimal | undefined;
  /** Least bend radius of the hose, to the inside. */
  readonly leastRadius: Decimal | undefined;
  /** Rigid length of the couplings from their ends; without them neither couplings nor straight runs are drawn. */
  readonly couplings?: readonly [Decimal | undefined, Decimal | undefined] | undefined;
  /** Angles of the couplings in degrees, 0 = straight; undefined = not known: drawn straight. */
  readonly angles?: readonly [number | undefined, number | undefined] | undefined;
}

/** A label beside the hose. */
export interface RouteLabel extends PlanPoint {
  readonly anchor: 'start' | 'middle' | 'end';
}

/** A route to scale: paths and places in points of the drawing. */
export interface RouteDrawing {
  readonly height: number;
  /** Width of the hose. */
  readonly stroke: number;
  readonly hose: string;
  /** One path a part of the route. */
  readonly parts: readonly string[];
  /** The tightest that the hose may bend, one a bend that is not just that. */
  readonly leastArcs: readonly string[];
  readonly couplings: readonly string[];
  /** The straight runs asked for behind the couplings. */
  readonly straightRuns: readonly string[];
  readonly labels: readonly RouteLabel[];
  readonly ends: readonly [PlanPoint, PlanPoint];
  /** The length of the scale, in the form's unit and in points. */
  readonly ruler: { readonly length: number; readonly points: number; readonly left: number };
}

const planPart = (part: Demand['route'][number]): PlanPart =>
  part.kind === 'straight'
    ? { kind: part.kind, length: part.length.toNumber() }
    : { ...part, radius: part.radius.toNumber(), angleDegrees: part.angleDegrees.toNumber() };

function leastArcs(parts: readonly PlanPart[], placed: readonly PlacedPart[], { leastRadius }: RouteInput, outside: number) {
  if (!leastRadius) return [];
  const least = leastRadius.toNumber();
  return parts.flatMap((part, index) =>
    part.kind === 'bend' && part.radius !== least ? [bentOtherwise(placed[index]!, part, least, outside)] : [],
  );
}

/** Length of an elbow's leg as it is drawn: the catalogue does not state it. */
const legOf = (outside: number, coupling: number) => Math.max(1.2 * outside, 0.5 * coupling);

/** Where the letter of an end is put: beyond the tip of an elbow's leg, else where it is without one. */
function letterAt(end: PlanPoint, tip: PlanPoint | undefined, otherwise: PlanPoint): PlanPoint {
  const length = tip ? Math.hypot(tip.x - end.x, tip.y - end.y) : 0;
  if (!tip || length < 1) return otherwise;
  return { x: tip.x + ((tip.x - end.x) / length) * LETTER, y: tip.y + ((tip.y - end.y) / length) * LETTER };
}

/** Couplings, and behind each the straight run that was asked for. */
function endPieces(points: readonly PlanPoint[], { demand, couplings, angles }: RouteInput, outside: number) {
  const hasBend = demand.route.some(({ kind }) => kind === 'bend');
  const run = hasBend ? (demand.straightRun?.toNumber() ?? 0) * outside : 0;
  const pieces = (couplings ?? []).flatMap((coupling, index) =>
    coupling?.gt(0) ? [{ index, from: index === 0 ? points : [...points].reverse(), length: coupling.toNumber() }] : [],
  );
  const elbow = (from: readonly PlanPoint[], index: number, length: number): PlanPoint[] => {
    const angleDegrees = angles?.[index] ?? 0;
    if (angleDegrees === 0) return [];
    // End A lies in the plane of the drawing, end B is turned against it.
    const turnDegrees = index === 0 ? 0 : (demand.twist?.toNumber() ?? 0);
    return [elbowTip(from, { angleDegrees, turnDegrees }, index === 0, legOf(outside, length))];
  };
  const legAt = (index: number) =>
    pieces.flatMap(piece => (piece.index === index ? elbow(piece.from, index, piece.length) : []))[0];
  return {
    legs: [legAt(0), legAt(1)] as const,
    couplings: pieces.map(({ index, from, length }) => [...elbow(from, index, length), ...upTo(from, length)]),
    straightRuns: run > 0 ? pieces.map(({ from, length }) => stretch(from, length, length + run)) : [],
  };
}

/** Lays the route of a demand out to scale; undefined where there is none. */
export function routeDrawing(input: RouteInput): RouteDrawing | undefined {
  if (input.demand.route.length === 0) return undefined;
  const outside = input.outsideDiameter?.toNumber() ?? 0;
  const parts = input.demand.route.map(planPart);
  const placed = routePlan(parts, outside);
  const points = placed.flatMap(part => part.points);
  const arcs = leastArcs(parts, placed, input, outside);
  const { couplings, straightRuns, legs } = endPieces(points, input, outside);
  const all = [...points, ...arcs.flat(), ...couplings.flat()];
  const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs) - outside / 2, Math.max(...ys) + outside / 2];
  const [wide, high] = [Math.max(...xs) + outside / 2 - left, top - Math.min(...ys) + outside / 2];
  const scale = Math.min((WIDTH - 2 * EDGE) / Math.max(wide, 1e-9), TALLEST / Math.max(high, 1e-9));
  const stroke = Math.max(THINNEST, outside * scale);
  const at = ({ x, y }: PlanPoint): PlanPoint => ({ x: EDGE + (x - left) * scale, y: EDGE + (top - y) * scale });
  const path = (list: readonly PlanPoint[]) =>
    list
      .map(at)
      .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`)
      .join('');
  const label = ({ middle, away }: PlacedPart): RouteLabel => {
    const { x, y } = at(middle);
    const distance = stroke / 2 + 9;
    const anchor = away.x > SIDEWAYS ? 'start' : away.x < -SIDEWAYS ? 'end' : 'middle';
    return { x: x + away.x * distance, y: y - away.y * distance, anchor };
  };
  const [first, last] = [at(points[0]!), at(points[points.length - 1]!)];
  const { away } = placed[placed.length - 1]!;
  const ruler = scaleLength((WIDTH - 2 * EDGE) / 3 / scale);
  return {
    height: 2 * EDGE + high * scale + FOOT,
    stroke,
    hose: path(points),
    parts: placed.map(part => path(part.points)),
    leastArcs: arcs.map(path),
    couplings: couplings.map(path),
    straightRuns: straightRuns.map(path),
    labels: placed.map(label),
    ends: [
      letterAt(first, legs[0] && at(legs[0]), { x: first.x - LETTER, y: first.y }),
      letterAt(last, legs[1] && at(legs[1]), { x: last.x + away.y * LETTER, y: last.y + away.x * LETTER }),
    ],
    ruler: { length: ruler, points: ruler * scale, left: EDGE },
  };
}
