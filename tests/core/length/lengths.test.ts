import fc from 'fast-check';
import { cutLength } from '../../../src/core/length/cutLength';
import { overallLength } from '../../../src/core/length/overallLength';
import { routeLength } from '../../../src/core/length/routeLength';
import { Decimal } from '../../../src/core/units/decimal';

const d = (value: number | string) => new Decimal(value);

test('a cut of 16.5 in with two ends of .94 is 14.62 in (NAVEDTRA 14018, table 5-2, factor method)', () => {
  expect(cutLength({ overall: d('16.5'), cutOffA: d('.94'), cutOffB: d('.94') }).toString()).toBe('14.62');
});

test('overall length is the way back from cut length, exactly, for any lengths', () => {
  const millimetres = (min: number, max: number) => fc.integer({ min, max }).map(thousandths => d(thousandths).div(1000));
  fc.assert(
    fc.property(
      millimetres(1_000_000, 90_000_000),
      millimetres(-90_000, 200_000),
      millimetres(-90_000, 200_000),
      millimetres(-50_000, 50_000),
      (overall, cutOffA, cutOffB, allowance) => {
        const cut = cutLength({ overall, cutOffA, cutOffB, allowance });
        return overallLength({ cut, cutOffA, cutOffB, allowance }).equals(overall);
      },
    ),
  );
});

test('a 180° bend with straight runs is the test free length of SAE J343:2016: 650.844 mm for r 180, d 22', () => {
  const length = routeLength([d(2).times(25.4)], [{ radius: d(180), angleDegrees: d(180) }], d(22));
  expect(length.toFixed(3)).toBe('650.844');
});

test('a route of four right angles round a square is its straights and one full circle (geometry)', () => {
  const corner = { radius: d(50), angleDegrees: d(90) };
  expect(routeLength([d(10), d(20)], [corner, corner, corner, corner]).toNumber()).toBeCloseTo(30 + 2 * Math.PI * 50, 12);
});
