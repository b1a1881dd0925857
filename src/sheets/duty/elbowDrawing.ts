import type { PlanPoint } from './routePlan';

/** A coupling's free leg as it is drawn from an end of the route. */
export interface Elbow {
  /** Degrees between the hose's axis and the leg; 0 = straight. */
  readonly angleDegrees: number;
  /** Turned about the hose against the plane of the drawing, in degrees; 0 = within it. */
  readonly turnDegrees: number;
}

const DEGREE = Math.PI / 180;

/** Direction from one point to another, as a unit vector; to the right where they are one. */
function direction(from: PlanPoint, to: PlanPoint): PlanPoint {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return length === 0 ? { x: 1, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/**
 * Tip of an elbow's free leg, seen from above: a leg that is turned out of the plane looks shorter.
 * @param points of the route, from the end that the elbow is at
 * @param isFirst whether that is end A: legs of both ends turn to the right of somebody who goes from A to B
 * @param leg length of the leg
 */
export function elbowTip(
  points: readonly PlanPoint[],
  { angleDegrees, turnDegrees }: Elbow,
  isFirst: boolean,
  leg: number,
): PlanPoint {
  const [end, next] = [points[0]!, points.find(({ x, y }) => x !== points[0]!.x || y !== points[0]!.y) ?? points[0]!];
  const inwards = direction(end, next);
  const along = isFirst ? inwards : { x: -inwards.x, y: -inwards.y };
  const side = { x: along.y, y: -along.x };
  const [ahead, aside] = [
    leg * Math.cos(angleDegrees * DEGREE),
    leg * Math.sin(angleDegrees * DEGREE) * Math.cos(turnDegrees * DEGREE),
  ];
  return { x: end.x - ahead * inwards.x + aside * side.x, y: end.y - ahead * inwards.y + aside * side.y };
}
