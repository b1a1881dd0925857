import { Decimal } from '../../../src/core/units/decimal';
import { elbowTip } from '../../../src/sheets/duty/elbowDrawing';
import { routeDrawing } from '../../../src/sheets/duty/routeDrawing';
import { demandOf } from './duties';

const ROUTE = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
];
const round = ({ x, y }: { x: number; y: number }) => [x, y].map(value => Math.round(value * 1e6) / 1e6 + 0);
const tip = (angleDegrees: number, turnDegrees = 0) => round(elbowTip(ROUTE, { angleDegrees, turnDegrees }, true, 10));
const atB = (angleDegrees: number, turnDegrees = 0) =>
  round(elbowTip([...ROUTE].reverse(), { angleDegrees, turnDegrees }, false, 10));

// Plane geometry: a leg of 10 at an angle to the axis reaches 10·cos ahead and 10·sin aside; turned about the axis, aside shrinks by the cosine.
test('an elbow of end A leaves the hose at its angle, to the right of the way to end B', () => {
  expect(tip(90)).toEqual([0, -10]);
  expect(tip(45)).toEqual([-7.071068, -7.071068]);
  expect(tip(0)).toEqual([-10, 0]);
});

test('without twist the elbow of end B turns to the same side; half a turn to the other, a quarter out of the drawing', () => {
  expect(atB(90)).toEqual([100, -10]);
  expect(atB(90, 180)).toEqual([100, 10]);
  expect(atB(90, 90)).toEqual([100, 0]);
  expect(atB(45, 60)).toEqual([107.071068, -3.535534]);
});

test('in the drawing of a route a bent coupling has a corner, a straight one has none, and the leg stays inside the picture', () => {
  const demand = demandOf({ route: [{ kind: 'straight', length: '500' }] });
  const given = {
    demand,
    outsideDiameter: new Decimal(25),
    leastRadius: undefined,
    couplings: [new Decimal(60), new Decimal(60)],
  } as const;
  const corners = (path: string) => path.split('L').length - 1;
  const { couplings, height } = routeDrawing({ ...given, angles: [90, 0] })!;
  expect(couplings.map(corners)).toEqual([2, 1]);
  const [, y] = couplings[0]!.slice(1).split('L')[0]!.split(' ').map(Number);
  expect(y).toBeLessThan(height);
  expect(routeDrawing(given)!.couplings.map(corners)).toEqual([1, 1]);
});

test('the letter of a bent end is put beyond its leg, so that it never lies on it', () => {
  const demand = demandOf({ route: [{ kind: 'straight', length: '500' }] });
  const given = {
    demand,
    outsideDiameter: new Decimal(25),
    leastRadius: undefined,
    couplings: [new Decimal(60), new Decimal(60)],
  } as const;
  for (const angles of [
    [90, 90],
    [45, 45],
    [0, 45],
  ] as const) {
    const { couplings, ends, stroke } = routeDrawing({ ...given, angles })!;
    ends.forEach((letter, index) => {
      const points = couplings[index]!.slice(1)
        .split('L')
        .map(pair => pair.split(' ').map(Number) as [number, number]);
      const nearest = Math.min(...points.map(([x, y]) => Math.hypot(letter.x - x, letter.y - y)));
      expect(nearest).toBeGreaterThan(stroke / 2 + 5);
    });
  }
});
