import { bentOtherwise, routePlan, scaleLength, stretch, upTo } from '../../../src/sheets/duty/routePlan';

const lengthOf = (points: readonly { x: number; y: number }[]) =>
  points.slice(1).reduce((sum, { x, y }, index) => sum + Math.hypot(x - points[index]!.x, y - points[index]!.y), 0);

test('a right-angled bend to the left ends a radius ahead and a radius up, to the right a radius down', () => {
  for (const turn of ['left', 'right'] as const) {
    const [bend] = routePlan([{ kind: 'bend', radius: 90, angleDegrees: 90, turn }], 20);
    const end = bend!.points.at(-1)!;
    expect([end.x, end.y].map(value => Math.round(value * 1e6) / 1e6)).toEqual([100, turn === 'left' ? 100 : -100]);
  }
});

test('a route that turns four times the same way comes back to its beginning', () => {
  const side = [
    { kind: 'straight', length: 300 },
    { kind: 'bend', radius: 80, angleDegrees: 90, turn: 'left' },
  ] as const;
  const end = routePlan([...side, ...side, ...side, ...side], 25)
    .at(-1)!
    .points.at(-1)!;
  expect(Math.hypot(end.x, end.y)).toBeLessThan(1e-9);
});

test('drawn arcs are as long as the arcs of geometry, π·r, to a thousandth', () => {
  const [bend] = routePlan([{ kind: 'bend', radius: 180, angleDegrees: 180, turn: 'left' }], 22);
  expect(lengthOf(bend!.points) / (Math.PI * 191)).toBeCloseTo(1, 3);
});

test('labels stand outwards of a bend', () => {
  const [bend] = routePlan([{ kind: 'bend', radius: 100, angleDegrees: 90, turn: 'left' }], 0);
  expect(bend!.away.x).toBeCloseTo(Math.SQRT1_2, 9);
  expect(bend!.away.y).toBeCloseTo(-Math.SQRT1_2, 9);
});

test('a coupling is drawn along the route, never longer than it', () => {
  const points = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
  ];
  expect(upTo(points, 15)).toEqual([...points.slice(0, 2), { x: 10, y: 5 }]);
  expect(upTo(points, 99)).toEqual(points);
});

test('a stretch of a line begins and ends where it is asked to, over corners too', () => {
  const corner = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
  ];
  expect(stretch(corner, 4, 15)).toEqual([
    { x: 4, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 5 },
  ]);
  expect(stretch(corner, 2, 6)).toEqual([
    { x: 2, y: 0 },
    { x: 6, y: 0 },
  ]);
  expect(lengthOf(stretch(corner, 99, 120))).toBe(0);
});

test('a bend with another radius begins at the same place and ends in the same direction, its own radius further on', () => {
  const part = { kind: 'bend', radius: 200, angleDegrees: 90, turn: 'right' } as const;
  const [, bend] = routePlan([{ kind: 'straight', length: 50 }, part], 20);
  const points = bentOtherwise(bend!, part, 90, 20);
  expect(points[0]!.x).toBeCloseTo(50, 9);
  expect([points.at(-1)!.x, points.at(-1)!.y].map(value => Math.round(value * 1e6) / 1e6)).toEqual([150, -100]);
});

test.each([
  [99, 50],
  [100, 100],
  [230, 200],
  [0.6, 0.5],
])('the scale for a width of %d is %d long', (width, length) => expect(scaleLength(width)).toBeCloseTo(length, 12));
