import { clockPoint, clockTime, wholeTurn } from './twistAngle';

const RADIUS = 40;

function hand(twist: number, className: string, width: number, dash: string): string {
  const { x, y } = clockPoint(twist, RADIUS - 8);
  return `<line class="${className}" x1="0" y1="0" x2="${x}" y2="${y}" stroke="currentColor" stroke-width="${width}"${dash} stroke-linecap="round"/>`;
}

function arc(twist: number): string {
  const turn = wholeTurn(twist);
  if (turn < 1) return '';
  const radius = 16;
  const start = clockPoint(0, radius);
  const end = clockPoint(turn, radius);
  const back = clockPoint(turn - 24, radius + 5);
  const inner = clockPoint(turn - 24, radius - 5);
  // Counter-clockwise on paper is sweep 0 in a picture whose y runs down.
  return `<path d="M${start.x} ${start.y} A${radius} ${radius} 0 ${turn > 180 ? 1 : 0} 0 ${end.x} ${end.y}" fill="none" stroke="currentColor" stroke-width="1.2"/>${
    turn > 24
      ? `<path d="M${back.x} ${back.y} L${end.x} ${end.y} L${inner.x} ${inner.y}" fill="none" stroke="currentColor" stroke-width="1.2"/>`
      : ''
  }`;
}

/**
 * The clock picture of two bent ends as SVG text: end A a thick hand at six o'clock, end B a thin dashed one.
 * @param twist degrees counter-clockwise from six o'clock, looking along the hose from end A
 */
export function clockPicture(twist: number): string {
  const ticks = Array.from({ length: 12 }, (_, hour) => {
    const outer = clockPoint(hour * 30, RADIUS);
    const inner = clockPoint(hour * 30, hour % 3 === 0 ? RADIUS - 6 : RADIUS - 3);
    return `M${outer.x} ${outer.y}L${inner.x} ${inner.y}`;
  }).join('');
  const label = (angle: number, text: string) => {
    const { x, y } = clockPoint(angle, RADIUS + 9);
    return `<text x="${x}" y="${y + 4}" text-anchor="middle" font-size="11" font-weight="bold">${text}</text>`;
  };
  const isSame = wholeTurn(twist) < 12 || wholeTurn(twist) > 348;
  const alt = `Clock picture: end A at six o’clock, end B at ${clockTime(twist)}, ${wholeTurn(twist)}° counter-clockwise`;
  return [
    `<svg class="clock" viewBox="-54 -54 108 108" role="img" aria-label="${alt}" xmlns="http://www.w3.org/2000/svg" fill="currentColor">`,
    `<circle r="${RADIUS}" fill="none" stroke="currentColor" stroke-width="1.2"/>`,
    `<path d="${ticks}" stroke="currentColor" stroke-width="1" fill="none"/>`,
    arc(twist),
    hand(0, 'endA', 5, ''),
    hand(twist, 'endB', 2.5, ' stroke-dasharray="5 4"'),
    '<circle r="4"/>',
    isSame ? label(0, 'A B') : label(0, 'A') + label(twist, 'B'),
    '</svg>',
  ].join('');
}
