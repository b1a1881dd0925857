import { capability, type CapabilityInput } from '../../../src/core/quality/capability';
import { controlLimits } from '../../../src/core/quality/controlLimits';
import { dialResponse } from '../../../src/core/quality/dialResponse';
import { runSignals } from '../../../src/core/quality/runSignals';
import { Decimal } from '../../../src/core/units/decimal';

/** n values of that mean and sample standard deviation. */
function valuesOf(count: number, mean: number, deviation: number): number[] {
  const half = deviation * Math.sqrt((count - 1) / count);
  return Array.from({ length: count }, (_, index) => mean + (index % 2 ? half : -half));
}
const at = (input: CapabilityInput) => Object.fromEntries(capability(input).map(row => [row.index, row]));

test('individuals chart of the e-Handbook', () => {
  // NIST/SEMATECH e-Handbook 6.3.2.2: limits 45.8159 and 55.8041 with d2 = 1.128.
  const values = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const [individual, moving] = controlLimits(values.map(value => [value]));
  expect(individual!.centre).toBeCloseTo(50.81, 12);
  expect(moving!.centre).toBeCloseTo(1.8778, 4);
  expect(individual!.lower).toBeCloseTo(45.8159, 4);
  expect(individual!.upper).toBeCloseTo(55.8041, 4);
  expect([moving!.lower, moving!.upper / moving!.centre]).toEqual([0, expect.closeTo(3.2665, 4)]);
});

test('mean and range charts by the factors of ISO 7870-2 for n = 4', () => {
  const [means, ranges] = controlLimits([
    [10, 11, 12, 13],
    [11, 12, 13, 16],
  ]);
  // Mean 12.25, mean range 4; A2 .7286, D4 2.2821.
  expect(means).toMatchObject({ chart: 'Mean', centre: 12.25, lower: expect.closeTo(12.25 - 0.7286 * 4, 3) });
  expect(ranges).toMatchObject({ chart: 'Range', centre: 4, lower: 0, upper: expect.closeTo(2.2821 * 4, 3) });
});

test('capability of the e-Handbook, n = 50', () => {
  // NIST/SEMATECH e-Handbook 6.1.6: upper 20, lower 8, mean 16, s 2; limits computed in R.
  const { Pp, Ppk, Cpm } = at({ subgroups: valuesOf(50, 16, 2).map(value => [value]), lower: 8, upper: 20, target: 14 });
  expect([Pp!.value, Pp!.low, Pp!.high]).toEqual([1, 0.802482, 1.197126].map(value => expect.closeTo(value, 6)));
  expect([Ppk!.value, Ppk!.low, Ppk!.high]).toEqual([0.666667, 0.505551, 0.827782].map(value => expect.closeTo(value, 6)));
  expect(Cpm!.value).toBeCloseTo(0.7071, 4);
  expect(Cpm!.low).toBeUndefined();
});

test('scatter within subgroups is pooled and keeps its degrees of freedom', () => {
  // Two subgroups of 24 with s 2 about 10 and 22: pooled s 2 with 46 degrees of freedom; limits sqrt(chi2.ppf([.025, .975], 46)/46) of SciPy 1.17.
  const { Cp, Pp } = at({ subgroups: [valuesOf(24, 10, 2), valuesOf(24, 22, 2)], lower: 8, upper: 20 });
  expect([Cp!.value, Cp!.low, Cp!.high]).toEqual([1, 0.796187, 1.203406].map(value => expect.closeTo(value, 6)));
  expect(Pp!.value).toBeLessThan(0.4);
});

test('a single column: scatter from moving ranges, without limits', () => {
  const { Cp, Cpk, Pp } = at({ subgroups: [[1], [3], [2], [4]], lower: 0, upper: 5 });
  // Moving ranges 2, 1, 2: mean 5/3, ÷ 1.128 = 1.47754.
  expect(Cp!.value).toBeCloseTo(5 / (6 * 1.47754), 5);
  expect([Cp!.low, Cpk!.low]).toEqual([undefined, undefined]);
  expect(Pp!.low).toBeGreaterThan(0);
});

test('one limit only: just Cpk and Ppk', () => {
  const indices = at({
    subgroups: [
      [1, 2],
      [2, 3],
    ],
    upper: 5,
    target: 2,
  });
  expect(Object.values(indices).map(({ value }) => value !== undefined)).toEqual([false, true, false, false, true]);
  expect(indices.Ppk!.value).toBeCloseTo(3 / (3 * Math.sqrt(2 / 3)), 12);
});

test.each<[CapabilityInput, string]>([
  [{ subgroups: [[1, 2]] }, 'lower and upper limit are both blank'],
  [{ subgroups: [[1, 2]], lower: 3, upper: 3 }, 'it must lie below the upper limit'],
  [{ subgroups: [[1, 2]], lower: 1, upper: 3, target: 4 }, 'it must lie between the limits'],
  [{ subgroups: [[1, 2]], lower: 1, upper: 3, target: 0 }, 'target is blank or zero'],
  [{ subgroups: [[1]], lower: 1, upper: 3 }, 'give two values or more'],
  [
    {
      subgroups: [
        [2, 2],
        [2, 2],
      ],
      lower: 1,
      upper: 3,
    },
    'no scatter',
  ],
])('capability refuses %j', (input, message) => expect(() => capability(input)).toThrow(message));

const signals = (...values: number[]) =>
  runSignals(
    values.map(value => new Decimal(value)),
    new Decimal(10),
    new Decimal(0.1),
  ).map(rules => rules.join(' '));

// Western Electric rules, e-Handbook 6.3.2.
test.each([
  ['1: beyond three sigma, on the line is not beyond', [10.3, 10.31, 9.69], ['', '1 2', '1']],
  ['2: two of three beyond two sigma on one side', [10.25, 10, 10.25, 10, 9.75], ['', '', '2', '', '']],
  ['2: not across the centre line', [10.25, 9.75, 10.25], ['', '', '2']],
  ['3: four of five beyond one sigma', [10.15, 10.15, 9.9, 10.15, 10.15, 9.95], ['', '', '', '', '3', '']],
  ['4: eight on one side, each further one again', Array(9).fill(9.95), [...Array(7).fill(''), '4', '4']],
  ['4: a point on the centre line belongs to no side', [...Array(7).fill(10.05), 10, 10.05], Array(9).fill('')],
  ['several at once', [...Array(7).fill(10.05), 10.35], [...Array(7).fill(''), '1 4']],
])('run rule %s', (_, values, expected) => expect(signals(...values)).toEqual(expected));

test('a dial response is one slope for all combinations, each at its own level', () => {
  const crimps = (level: number, ...noise: number[]) =>
    noise.map((value, index) => ({ dial: 100 + 10 * index, mean: level - 0.05 * 10 * index + value }));
  const response = dialResponse([crimps(30, 0.01, -0.02, 0.01), crimps(50, 0, 0.02, -0.02), [{ dial: 500, mean: 1 }]]);
  // numpy.linalg.lstsq on two levels and one slope: −.0505; standard error .00104083 with 3 degrees of freedom × t .975 of SciPy: .0033124.
  expect(response.crimps).toBe(6);
  expect(response.perDigit).toBeCloseTo(0.0505, 10);
  expect(response.high! - response.perDigit).toBeCloseTo(0.0033123951, 9);
  expect(response.perDigit - response.low!).toBeCloseTo(0.0033123951, 9);
});

test('a dial response needs a dial that changes within a combination; two crimps give no limits', () => {
  const still = [
    { dial: 1, mean: 2 },
    { dial: 1, mean: 2.1 },
  ];
  expect(() => dialResponse([still])).toThrow('crimp one combination at two settings or more');
  expect(() => dialResponse([])).toThrow('two settings');
  expect(
    dialResponse([
      [
        { dial: 1, mean: 2 },
        { dial: 3, mean: 1.9 },
      ],
    ]),
  ).toEqual({
    perDigit: expect.closeTo(0.05, 12),
    low: undefined,
    high: undefined,
    crimps: 2,
  });
});
