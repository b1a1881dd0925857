import { strayReadings } from '../../../src/core/quality/strayReadings';

const good = [
  [22.1, 22.12, 22.11, 22.09],
  [22.13, 22.12, 22.1, 22.11],
  [22.08, 22.1, 22.11, 22.1],
];
const among = (readings: readonly number[], tolerance = 0.12) =>
  strayReadings([...good, readings].map(each => ({ readings: each, tolerance }))).map(({ crimp, reading }) => [crimp, reading]);

// Bounds by hand: tolerance 0.12 gives a scatter of 0.12 ÷ 20 = 0.006 at least; the median range 0.03 ÷ 2.0588 = 0.01457 is more; 6 of it are 0.0874.
test.each<[string, readonly number[], number, readonly (readonly number[])[]]>([
  ['good crimps', [22.1, 22.11, 22.12, 22.1], 0.12, []],
  ['a wrong digit', [22.1, 22.12, 21.21, 22.11], 0.12, [[3, 2]]],
  ['just within six scatters', [22.1, 22.11, 22.12, 22.195], 0.12, []],
  ['just beyond them', [22.1, 22.11, 22.12, 22.2], 0.12, [[3, 3]]],
  ['beyond them but less than half the tolerance', [22.1, 22.11, 22.12, 22.2], 0.2, []],
  ['others that spread as well: less than twice their range', [22.0, 22.06, 22.12, 22.3], 0.12, []],
  ['two of four strays are no single reading', [22.1, 22.12, 21.21, 21.22], 0.12, []],
  ['two readings do not say which one strays', [22.1, 21.2], 0.12, []],
])('%s', (_, readings, tolerance, wanted) => {
  expect(among(readings, tolerance)).toEqual(wanted);
});

test('the median of the others is told; without readings nothing is found', () => {
  const list = [[22.1, 22.12, 22.11, 21.21], ...good].map(readings => ({ readings, tolerance: 0.12 }));
  expect(strayReadings(list)).toEqual([{ crimp: 0, reading: 3, others: 22.11 }]);
  expect(strayReadings([])).toEqual([]);
});
