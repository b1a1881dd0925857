import { called, col, FakeCellError } from '../host/customFunctions';
import { capability, controlLimits, dialResponse, runSignals } from '../../src/functions/quality';
import { gaugeStudy } from '../../src/functions/gauges';

const one = (value: unknown): any[][] => [[value]];
const none = null as never;
const close = (value: number, digits = 6) => expect.closeTo(value, digits);
const NA = new FakeCellError('#N/A', 'no such part');

describe('DIALRESPONSE', () => {
  const response = (names: unknown[], dials: unknown[], means: unknown[]) =>
    called(() => dialResponse(col(...names), col(...dials), col(...means)));

  test('gives slope, limits and crimps used in one row', () => {
    const [row] = response(
      ['A', 'a', 'A ', 'B', 'B', 'B', null, 0],
      [100, 110, 120, 100, 110, 120, null, 0],
      [30.01, 29.48, 29.01, 50, 49.52, 48.98, '', 0],
    );
    // numpy.linalg.lstsq and SciPy t quantile.
    expect(row).toEqual([close(0.0505), close(0.0505 - 0.0033124), close(0.0505 + 0.0033124), 6]);
  });

  test('crimps on a straight line give the very slope, without binary noise behind it', () => {
    expect(response(['A', 'A', 'A'], [0, 10, 20], [20, 19.9, 19.8])).toEqual([[0.01, 0.01, 0.01, 3]]);
    expect(response(['A', 'A'], [300, 310], [20, 20.1])).toEqual([[-0.01, '', '', 2]]);
  });

  test('a dial on which a higher number crimps looser has a negative step; two crimps leave the limits blank', () => {
    expect(response(['A', 'A'], [10, 20], [20, 21])).toEqual([[close(-0.1), '', '', 2]]);
  });

  test.each<[unknown[], unknown[], unknown[], string]>([
    [
      ['A', 'B'],
      [1, 2],
      [20, 21],
      '#VALUE! dial does not change within any combination: crimp one combination at two settings or more',
    ],
    [['A', 'A'], [1, 2], [20, 0], '#VALUE! mean in row 2 is blank or zero: fill it in'],
    [['A', 'A'], [1, null], [20, 21], '#VALUE! dial in row 2 is blank: fill it in'],
    [['A', 'A'], [1, 'two'], [20, 21], '#VALUE! dial in row 2 is "two": enter the dial setting, like 412'],
    [['A', 'A'], [1, 2], [20, NA], '#N/A no such part'],
  ])('%j %j %j is refused', (names, dials, means, message) => expect(response(names, dials, means)).toEqual([[message]]));
});

describe('CONTROLLIMITS', () => {
  const limits = (...rows: unknown[][]) => called(() => controlLimits(rows));

  test('mean and range charts; blank rows are skipped', () => {
    // Mean range 2, A2 1.8800, D4 3.2665 (ISO 7870-2).
    expect(limits([10, 12], [null, ''], [11, '13'])).toEqual([
      ['Chart', 'Lower', 'Centre', 'Upper'],
      ['Mean', close(11.5 - 3.76, 3), 11.5, close(11.5 + 3.76, 3)],
      ['Range', 0, 2, close(6.533, 3)],
    ]);
  });

  test('a single column: individual and moving range charts', () => {
    expect(limits([1], [3], [2]).map(([chart]) => chart)).toEqual(['Chart', 'Individual', 'Moving range']);
  });

  test('among diameters a row of zeros is blank and a single 0 an error; among deviations 0 is a value', () => {
    expect(limits([27.5, 27.6], [0, 0], [27.4, 27.5])[1]![2]).toBeCloseTo(27.5, 12);
    expect(limits([27.5, 27.6], [0, 27.5])).toEqual([
      ['#VALUE! subgroups hold a value that is blank or zero: fill in the whole row, or clear it'],
    ]);
    expect(limits([0.01, 0], [0, 0], [-0.01, 0.03])[1]![2]).toBeCloseTo(0.005, 12);
  });

  test.each<[unknown[][], string]>([
    [[[1, 2]], '#VALUE! subgroups came as one row: limits need two subgroups or more, one a row'],
    [[[null, null]], '#VALUE! subgroups are blank: limits need two subgroups or more, one a row'],
    [
      [Array(11).fill(1), Array(11).fill(2)],
      '#VALUE! subgroups came as 11 columns: give 1 to 10 values a row, one subgroup a row',
    ],
    [
      [
        [1, 2],
        [3, null],
      ],
      '#VALUE! subgroups in row 2 has a blank: fill in the whole row, or clear it',
    ],
    [
      [
        [1, 2],
        ['x', 2],
      ],
      '#VALUE! subgroups in row 2 is "x": enter the measured value, like 12.5, 3/8 or 1 1/2',
    ],
    [
      [
        [1, 2],
        [3, NA],
      ],
      '#N/A no such part',
    ],
  ])('%j is refused', (rows, message) => expect(limits(...rows)).toEqual([[message]]));
});

describe('RUNSIGNALS', () => {
  const signals = (...values: unknown[]) => called(() => runSignals(col(...values), one(10), one(0.1))).flat();

  test('names the rules as text; blank rows stay blank and runs go on across them', () => {
    expect(signals(10.25, null, 10.25, '', 10.35, 10)).toEqual(['', '', '2', '', '1 2', '']);
    expect(signals(...Array(5).fill(10.05), null, ...Array(3).fill(10.05)).at(-1)).toBe('4');
  });

  test('an error stays in its row', () => {
    expect(signals(10.35, NA, 'x', 10)).toEqual([
      '1',
      '#N/A no such part',
      '#VALUE! values is "x": enter the value of the point, like 12.5, 3/8 or 1 1/2',
      '',
    ]);
  });

  test('a 0 far from the centre line is a blank that the host turned into 0; on a chart of deviations 0 is a point', () => {
    expect(signals(10.35, 0, 10.35, 0)).toEqual(['1', '', '1 2', '']);
    expect(called(() => runSignals(col(0.35, 0, 0.35), one(0), one(0.1))).flat()).toEqual(['1', '', '1 2']);
    expect(called(() => runSignals(col(0), one(1), one(0.1))).flat()).toEqual(['1']);
  });

  test('a point exactly on a limit is not beyond it', () => expect(signals(10.3, 9.7)).toEqual(['', '']));

  test.each<[any[][], any[][], string]>([
    [one(null), one(1), '#VALUE! centre is blank: fill it in'],
    [one(1), one(0), '#VALUE! sigma is blank or zero: fill it in'],
    [one(1), one(-1), '#VALUE! sigma is -1: it must be more than 0'],
    [col(1, 2), one(1), '#VALUE! centre came as 2 × 1 cells: one value serves all rows here; give a single cell'],
    [one(NA), one(1), '#N/A no such part'],
  ])('centre %j, sigma %j is refused', (centre, sigma, message) => {
    expect(called(() => runSignals(col(1), centre, sigma))).toEqual([[message]]);
  });

  test('serves 10,000 points in one call', () => {
    const many = Array.from({ length: 10_000 }, (_, index) => 10 + (index % 7) / 100);
    expect(signals(...many)).toHaveLength(10_000);
  });
});

describe('CAPABILITY', () => {
  const table = (rows: unknown[][], lower: unknown, upper: unknown, target?: unknown) =>
    called(() => capability(rows, one(lower), one(upper), target === undefined ? none : one(target)));

  test('five rows; Cpm needs a target and has no limits', () => {
    const half = 2 * Math.sqrt(49 / 50);
    const values = Array.from({ length: 50 }, (_, index) => [16 + (index % 2 ? half : -half)]);
    const rows = table(values, 8, 20, 14);
    expect(rows.map(([index]) => index)).toEqual(['Index', 'Cp', 'Cpk', 'Cpm', 'Pp', 'Ppk']);
    // e-Handbook 6.1.6; limits computed in R.
    expect(rows[3]).toEqual(['Cpm', close(0.707107), '', '']);
    expect(rows[4]).toEqual(['Pp', close(1), close(0.802482), close(1.197126)]);
    expect(rows[5]).toEqual(['Ppk', close(0.666667), close(0.505551), close(0.827782)]);
    expect(table(values, 8, 20)[3]).toEqual(['Cpm', '', '', '']);
  });

  test('with one limit the two-sided indices are blank', () => {
    const rows = table(
      [
        [14, 18],
        [14, 18],
      ],
      null,
      20,
    );
    expect(rows[1]).toEqual(['Cp', '', '', '']);
    expect(rows[2]).toEqual(['Cpk', close(4 / (3 * Math.sqrt(8))), expect.any(Number), expect.any(Number)]);
    expect(rows[4]).toEqual(['Pp', '', '', '']);
  });

  test('deviations may have 0 as a limit', () => {
    expect(called(() => capability([[0.1, 0.2]], one(0), one(1)))[1]).toEqual([
      'Cp',
      close(1 / 6 / Math.sqrt(0.005)),
      expect.any(Number),
      expect.any(Number),
    ]);
  });

  test('so may a spread that lies close about its mean', () => {
    // By hand: s of .08, .09, .1 is .01; (.2 − 0) ÷ 6s, and .09 lies nearer to 0.
    const rows = table([[0.08], [0.09], [0.1]], 0, 0.2);
    expect([rows[4]![1], rows[5]![1]]).toEqual([close(0.2 / 0.06), close(0.09 / 0.03)]);
  });

  test.each<[unknown[][], unknown, unknown, unknown, string]>([
    [[[1, 2]], null, '', undefined, '#VALUE! lower and upper limit are both blank: give one of them at least'],
    [[[1, 2]], 5, 4, undefined, '#VALUE! lower limit is 5: it must lie below the upper limit 4'],
    [[[1, 2]], 'x', 4, undefined, '#VALUE! lower limit is "x": enter the limit, like 12.5, 3/8 or 1 1/2'],
    [
      [[1, 2]],
      1,
      4,
      45000,
      '#VALUE! target is 45000: that looks like a date; format the cell as text and type the fraction again',
    ],
    [
      [
        [2, 2],
        [2, 2],
      ],
      1,
      4,
      undefined,
      '#VALUE! subgroups show no scatter: values that do not differ have no capability index',
    ],
    [
      [
        [2, 2],
        [3, 3],
      ],
      1,
      4,
      undefined,
      '#VALUE! subgroups show no scatter within any row: read the caliper finer, or give the values as one column',
    ],
    [[[27.5, 27.6]], 0, 27.8, undefined, '#VALUE! lower limit is blank or zero: fill it in'],
    [[[27.5, 27.6]], 27.2, 0, undefined, '#VALUE! upper limit is blank or zero: fill it in'],
    [[[27.5, 27.6]], 0, '', undefined, '#VALUE! lower limit is blank or zero: fill it in'],
    [[[null]], 1, 4, undefined, '#VALUE! subgroups hold 0 values: give two values or more'],
    [[[1, NA]], 1, 4, undefined, '#N/A no such part'],
  ])('%j, %j … %j, target %j is refused', (rows, lower, upper, target, message) => {
    expect(table(rows, lower, upper, target)).toEqual([[message]]);
  });
});

describe('GAUGESTUDY', () => {
  const parts = [1, 1, 1, 1, 2, 2, 2, 2];
  const people = ['Kim', 'Kim', 'Lee', 'lee ', 'Kim', 'kim', 'Lee', 'Lee'];
  const readings = [1, 2, 1, 2, 5, 6, 5, 6];
  const study = (part: unknown[], operator: unknown[], reading: unknown[], tolerance?: unknown) =>
    called(() => gaugeStudy(col(...part), col(...operator), col(...reading), tolerance === undefined ? none : one(tolerance)));

  test('six rows; without tolerance the last column is blank', () => {
    // By hand: repeatability pooled 2/5 = .4, part (32 − .4)/4 = 7.9.
    expect(study(parts, people, readings)).toEqual([
      ['Source', 'Variance', 'Share of study', 'Share of tolerance'],
      ['Repeatability', close(0.4), close(Math.sqrt(0.4 / 8.3)), ''],
      ['Reproducibility', 0, 0, ''],
      ['Gauge', close(0.4), close(Math.sqrt(0.4 / 8.3)), ''],
      ['Part', close(7.9), close(Math.sqrt(7.9 / 8.3)), ''],
      ['Total', close(8.3), 1, ''],
      ['Distinct categories', 6, '', ''],
    ]);
  });

  test('the share of tolerance is six standard deviations to its full width', () => {
    expect(study(parts, people, readings, 10)[3]![3]).toBeCloseTo((6 * Math.sqrt(0.4)) / 10, 12);
  });

  test.each<[unknown[], unknown[], unknown[], string]>([
    [parts, people, [1, 2, 1, null, 5, 6, 5, 6], '#VALUE! reading in row 4 is blank: fill it in'],
    [parts, people, [1, 2, 1, 0, 5, 6, 5, 6], '#VALUE! reading is blank or zero: take all readings of the study'],
    [
      parts,
      people,
      [1, 2, 1, 'x', 5, 6, 5, 6],
      '#VALUE! reading in row 4 is "x": enter the caliper reading, like 12.5, 3/8 or 1 1/2',
    ],
    [
      parts,
      people,
      [1, 2, 1, 45000, 5, 6, 5, 6],
      '#VALUE! reading in row 4 is 45000: that looks like a date; format the cell as text and type the fraction again',
    ],
    [parts, people, [1, 2, 1, NA, 5, 6, 5, 6], '#N/A no such part'],
    [
      parts.slice(1),
      people.slice(1),
      readings.slice(1),
      '#VALUE! part 1, operator Kim has 1 of 2 readings: every operator measures every part equally often; add what is missing',
    ],
    [[null], [null], [null], '#VALUE! parts came as 0: a gauge study needs two or more'],
  ])('refuses %j', (part, operator, reading, message) => expect(study(part, operator, reading)).toEqual([[message]]));

  test('a row of zeros is a blank row of a host that has no blanks', () => {
    expect(study([...parts, 0], [...people, 0], [...readings, 0])).toEqual(study(parts, people, readings));
  });

  test('deviations may be zero', () => {
    expect(study(parts, people, [-1, 0, -1, 0, 5, 6, 5, 6])).toHaveLength(7);
  });
});
