/** A point of the plan, y upwards, in the unit of the route. */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
}

/** A part of a route as it is drawn. */
export type PlanPart =
  | { readonly kind: 'straight'; readonly length: number }
  | { readonly kind: 'bend'; readonly radius: number; readonly angleDegrees: number; readonly turn: 'left' | 'right' };

/** One part laid out: points along the hose's axis, its middle, and which way is clear of the hose there. */
export interface PlacedPart {
  readonly points: readonly PlanPoint[];
  readonly middle: PlanPoint;
  /** Unit vector away from the hose: outwards of a bend. */
  readonly away: PlanPoint;
  /** Direction at its beginning, in radians. */
  readonly heading: number;
}

const DEGREE = Math.PI / 180;
const DEGREES_A_STEP = 3;

const ahead = ({ x, y }: PlanPoint, heading: number, distance: number): PlanPoint => ({
  x: x + distance * Math.cos(heading),
  y: y + distance * Math.sin(heading),
});

function straight(start: PlanPoint, heading: number, length: number): PlacedPart {
  return {
    points: [start, ahead(start, heading, length)],
    middle: ahead(start, heading, length / 2),
    away: { x: -Math.sin(heading), y: Math.cos(heading) },
    heading,
  };
}

function bend(start: PlanPoint, heading: number, radius: number, angle: number, side: 1 | -1): PlacedPart {
  const centre = ahead(start, heading + (side * Math.PI) / 2, radius);
  const at = (turned: number) => ahead(centre, heading - (side * Math.PI) / 2 + side * turned, radius);
  const steps = Math.max(1, Math.ceil(angle / DEGREE / DEGREES_A_STEP));
  const middle = at(angle / 2);
  return {
    points: Array.from({ length: steps + 1 }, (_, step) => at((angle * step) / steps)),
    middle,
    away: { x: (middle.x - centre.x) / radius, y: (middle.y - centre.y) / radius },
    heading,
  };
}

const sideOf = (turn: 'left' | 'right') => (turn === 'right' ? -1 : 1);

/** The bend of a placed part as it would run with another radius to its inside: from the same beginning, through the same angle. */
export function bentOtherwise(
  { points, heading }: PlacedPart,
  { angleDegrees, turn }: Extract<PlanPart, { kind: 'bend' }>,
  radius: number,
  outsideDiameter: number,
): readonly PlanPoint[] {
  return bend(points[0]!, heading, radius + outsideDiameter / 2, angleDegrees * DEGREE, sideOf(turn)).points;
}

/**
 * Lays a route out in a plane: it begins at 0, 0 and goes to the right.
 * @param parts straights, and bends with the radius to their inside
 * @param outsideDiameter of the hose, in the same unit: the axis runs half of it outside of the inside radius
 */
export function routePlan(parts: readonly PlanPart[], outsideDiameter: number): readonly PlacedPart[] {
  let heading = 0;
  let start: PlanPoint = { x: 0, y: 0 };
  return parts.map(part => {
    const side = part.kind === 'bend' ? sideOf(part.turn) : 1;
    const placed =
      part.kind === 'straight'
        ? straight(start, heading, part.length)
        : bend(start, heading, part.radius + outsideDiameter / 2, part.angleDegrees * DEGREE, side);
    if (part.kind === 'bend') heading += side * part.angleDegrees * DEGREE;
    start = placed.points[placed.points.length - 1]!;
    return placed;
  });
}

/** The points of a line up to a distance along it. */
export function upTo(points: readonly PlanPoint[], distance: number): readonly PlanPoint[] {
  const kept: PlanPoint[] = points.slice(0, 1);
  let left = distance;
  for (const point of points.slice(1)) {
    const last = kept[kept.length - 1]!;
    const step = Math.hypot(point.x - last.x, point.y - last.y);
    if (step >= left) {
      const share = step === 0 ? 0 : left / step;
      return [...kept, { x: last.x + share * (point.x - last.x), y: last.y + share * (point.y - last.y) }];
    }
    kept.push(point);
    left -= step;
  }
  return kept;
}

/** The points of a line from one distance along it to another. */
export function stretch(points: readonly PlanPoint[], from: number, to: number): readonly PlanPoint[] {
  const whole = upTo(points, to);
  const before = upTo(whole, from);
  return [before[before.length - 1]!, ...whole.slice(before.length - 1)];
}

/** A length of 1, 2 or 5 times a power of ten, at most a share of the width: for the scale. */
export function scaleLength(width: number): number {
  const power = 10 ** Math.floor(Math.log10(width));
  return [5, 2, 1].map(times => times * power).find(length => length <= width) ?? power;
}
