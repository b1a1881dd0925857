import { markup, Markup } from '../print/markup';

/** What is drawn of an assembly. */
export interface DrawnAssembly {
  /** Angles of the couplings in degrees: 0 = straight; undefined = no coupling. */
  readonly ends: readonly [number | undefined, number | undefined];
  /** As it is written at the dimension line: `1250 mm`. */
  readonly overall: string;
}

const SIZE = 100;
const [LEFT, RIGHT, LEVEL] = [24, 76, 46];
const COUPLING = 16;
const DIMENSION = 66;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where a coupling ends that begins at the end of the hose; elbows point up. */
function endOf(from: Point, outwards: 1 | -1, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  const round = (value: number) => Math.round(value * 10) / 10;
  return { x: round(from.x + outwards * COUPLING * Math.cos(angle)), y: round(from.y - COUPLING * Math.sin(angle)) };
}

function coupling(from: Point, to: Point): Markup {
  return markup`<path d="M${from.x} ${from.y}L${to.x} ${to.y}" stroke="#555" stroke-width="7" fill="none"/>`;
}

/** A square picture (SVG text) of an assembly, not to scale: hose, straight and elbow couplings, overall length. */
export function assemblyDrawing({ ends, overall }: DrawnAssembly): string {
  const starts: readonly [Point, Point] = [
    { x: LEFT, y: LEVEL },
    { x: RIGHT, y: LEVEL },
  ];
  const [a, b] = ends.map((degrees, index) =>
    degrees === undefined ? starts[index]! : endOf(starts[index]!, index === 0 ? -1 : 1, degrees),
  ) as [Point, Point];
  const couplings = [a, b].flatMap((end, index) => (ends[index] === undefined ? [] : [coupling(starts[index]!, end)]));
  const tick = (x: number) => markup`<path d="M${x} ${LEVEL + 6}V${DIMENSION + 3}" stroke="#000" stroke-width="0.6"/>`;
  return markup`<svg viewBox="0 0 ${SIZE} ${SIZE}" xmlns="http://www.w3.org/2000/svg"><rect width="${SIZE}" height="${SIZE}" fill="#fff"/><path d="M${LEFT} ${LEVEL}H${RIGHT}" stroke="#111" stroke-width="9" fill="none"/>${couplings}${tick(a.x)}${tick(b.x)}<path d="M${a.x} ${DIMENSION}H${b.x}M${a.x + 4} ${DIMENSION - 2}L${a.x} ${DIMENSION}L${a.x + 4} ${DIMENSION + 2}M${b.x - 4} ${DIMENSION - 2}L${b.x} ${DIMENSION}L${b.x - 4} ${DIMENSION + 2}" stroke="#000" stroke-width="0.8" fill="none"/><text x="50" y="82" font-family="sans-serif" font-size="13" text-anchor="middle" fill="#000">${overall}</text></svg>`
    .text;
}
