import { CLOCK_BOX, clockDrawing } from './clockDrawing';

const line = (path: string, width: number, more = '') =>
  `<path d="${path}" fill="none" stroke="currentColor" stroke-width="${width}"${more}/>`;

/**
 * The clock picture of two bent ends as SVG text: end A a thick hand at six o'clock, end B a thin dashed one.
 * @param twist degrees counter-clockwise from six o'clock, looking along the hose from end A
 */
export function clockPicture(twist: number): string {
  const { radius, ticks, arc, hands, labels, alt } = clockDrawing(twist);
  return [
    `<svg class="clock" viewBox="${CLOCK_BOX}" role="img" aria-label="${alt}" xmlns="http://www.w3.org/2000/svg" fill="currentColor">`,
    `<circle r="${radius}" fill="none" stroke="currentColor" stroke-width="1.2"/>`,
    line(ticks, 1),
    ...arc.map(path => line(path, 1.2)),
    line(hands.a, 5, ' class="endA" stroke-linecap="round"'),
    line(hands.b, 2.5, ' class="endB" stroke-dasharray="5 4" stroke-linecap="round"'),
    '<circle r="4"/>',
    ...labels.map(
      ({ x, y, text }) => `<text x="${x}" y="${y}" text-anchor="middle" font-size="11" font-weight="bold">${text}</text>`,
    ),
    '</svg>',
  ].join('');
}
