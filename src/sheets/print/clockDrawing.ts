import { clockPoint, clockTime, wholeTurn } from './twistAngle';

/** Two bent ends as hands of a clock, in a box from -54 to 54 both ways: paths and labels, for paper and screen alike. */
export interface ClockDrawing {
  readonly radius: number;
  /** Marks of the hours. */
  readonly ticks: string;
  /** From end A to end B, with its arrow; none where both point the same way. */
  readonly arc: readonly string[];
  readonly hands: { readonly a: string; readonly b: string };
  readonly labels: readonly { readonly x: number; readonly y: number; readonly text: string }[];
  readonly alt: string;
}

export const CLOCK_BOX = '-54 -54 108 108';
const RADIUS = 40;

function arcOf(twist: number): readonly string[] {
  const turn = wholeTurn(twist);
  if (turn < 1) return [];
  const radius = 16;
  const [start, end] = [clockPoint(0, radius), clockPoint(turn, radius)];
  const [back, inner] = [clockPoint(turn - 24, radius + 5), clockPoint(turn - 24, radius - 5)];
  // Counter-clockwise on paper is sweep 0 in a picture whose y runs down.
  const line = `M${start.x} ${start.y} A${radius} ${radius} 0 ${turn > 180 ? 1 : 0} 0 ${end.x} ${end.y}`;
  return turn > 24 ? [line, `M${back.x} ${back.y} L${end.x} ${end.y} L${inner.x} ${inner.y}`] : [line];
}

function handOf(twist: number): string {
  const { x, y } = clockPoint(twist, RADIUS - 8);
  return `M0 0L${x} ${y}`;
}

/**
 * Lays out the clock picture of a twist angle.
 * @param twist degrees counter-clockwise from six o'clock, looking along the hose from end A
 */
export function clockDrawing(twist: number): ClockDrawing {
  const ticks = Array.from({ length: 12 }, (_, hour) => {
    const outer = clockPoint(hour * 30, RADIUS);
    const inner = clockPoint(hour * 30, hour % 3 === 0 ? RADIUS - 6 : RADIUS - 3);
    return `M${outer.x} ${outer.y}L${inner.x} ${inner.y}`;
  }).join('');
  const label = (angle: number, text: string) => {
    const { x, y } = clockPoint(angle, RADIUS + 9);
    return { x, y: y + 4, text };
  };
  const isSame = wholeTurn(twist) < 12 || wholeTurn(twist) > 348;
  return {
    radius: RADIUS,
    ticks,
    arc: arcOf(twist),
    hands: { a: handOf(0), b: handOf(twist) },
    labels: isSame ? [label(0, 'A B')] : [label(0, 'A'), label(twist, 'B')],
    alt: `Clock picture: end A at six o’clock, end B at ${clockTime(twist)}, ${wholeTurn(twist)}° counter-clockwise`,
  };
}
