import { called, col, FakeCellError } from '../host/customFunctions';
import { calibrationTurns, conformity, crimpCheck, crimpDetail, nextDial } from '../../src/functions/crimp';

const one = (value: unknown): any[][] => [[value]];
const none = null as never;

describe('CRIMPCHECK', () => {
  const check = (readings: any[][], target: unknown, tolerance: unknown, uncertainty?: unknown, maxSpread?: unknown) =>
    called(() => crimpCheck(readings, one(target), one(tolerance), one(uncertainty ?? null), one(maxSpread ?? null)));

  // ± .005 in as tolerance: common practice, REFERENCE of the project.
  test('judges the mean of four readings against the tolerance; a mean on the limit is in spec', () => {
    const readings = [
      [1.001, 0.999, 1, 1],
      [1.005, 1.005, 1.005, 1.005],
      [0.995, 0.995, 0.995, 0.995],
      [1.005, 1.005, 1.005, 1.0051],
      [0.994, 0.995, 0.995, 0.995],
    ];
    expect(check(readings, 1, 0.005).flat()).toEqual(['IN SPEC', 'IN SPEC', 'IN SPEC', 'LOOSE', 'TIGHT']);
  });

  test('a row without readings is blank, also when a host delivers blanks as 0; a missing reading is named', () => {
    const readings = [
      [null, '', ' ', null],
      [0, 0, 0, 0],
      [27.5, 27.5, null, 27.5],
      [27.5, 0, 27.5, 27.5],
      [27.5, 'x', 27.5, 27.5],
      [27.5, 27.5, 27.5, -27.5],
    ];
    expect(check(readings, 27.5, 0.1).flat()).toEqual([
      '',
      '',
      '#VALUE! reading 3 is blank or zero: take all readings of the crimp, or clear the row',
      '#VALUE! reading 2 is blank or zero: take all readings of the crimp, or clear the row',
      '#VALUE! reading 2 is "x": enter the caliper reading, like 12.5, 3/8 or 1 1/2',
      '#VALUE! reading 4 is -27.5: it must be more than 0',
    ]);
  });

  test('a reading that cannot be is an error of its row that names it', () => {
    const readings = [
      [27.5, 2.75, 27.5, 27.5],
      [27.5, 32, 27.5, 27.5],
      [27.5, 27.5, 27.5, 27.6],
    ];
    const expected = [
      '#VALUE! reading 2 is 2.75: it cannot belong to the target 27.5, which allows 22 … 34.375: decimal point? unit?',
      '#VALUE! reading 2 is 32: it does not belong to this crimp, whose readings lie around 27.5: measure again',
    ];
    expect(check(readings, 27.5, 0.1).flat()).toEqual([...expected, 'IN SPEC']);
    expect(called(() => crimpDetail(readings, one(27.5), one(0.1)))).toEqual([
      ...expected.map(sentence => Array(4).fill(sentence)),
      [27.525, 0.025, 0.1, 'IN SPEC'],
    ]);
    expect(called(() => nextDial(one(412), readings, one(27.5), one(0.1), one(0.05))).flat()).toEqual([...expected, 412]);
  });

  test('a row that is not filled in stays blank whatever its target says', () => {
    expect(called(() => crimpCheck([[null, null]], one(new FakeCellError('#N/A')), one('x')))).toEqual([['']]);
  });

  test('a single column of readings is an error that says how to lay them out', () => {
    expect(called(() => crimpCheck(col(1, 2, 3, 4), one(1), one(0.005)))).toEqual([
      [
        '#VALUE! readings came as a single column: lay the readings of one crimp side by side, one crimp a row, two readings or more',
      ],
    ]);
  });

  test('two readings are enough, and one row of readings serves a column of targets', () => {
    expect(called(() => crimpCheck([[20, 20.2]], col(20.1, 20.3), one(0.1)))).toEqual([['IN SPEC'], ['TIGHT']]);
  });

  test.each([
    [
      0.012,
      '#VALUE! tolerance is 0.012: it cannot belong to the target 25: it must lie between 1/2000 and 1/10 of it; check units and cells',
    ],
    [0.0125, 'IN SPEC'],
    [2.5, 'IN SPEC'],
    [
      2.51,
      '#VALUE! tolerance is 2.51: it cannot belong to the target 25: it must lie between 1/2000 and 1/10 of it; check units and cells',
    ],
    [0, '#VALUE! tolerance is blank or zero: fill it in'],
    ['±0.1', '#VALUE! tolerance is "±0.1": enter the tolerance as one number, without ±, like 12.5, 3/8 or 1 1/2'],
    [45000, '#VALUE! tolerance is 45000: that looks like a date; format the cell as text and type the fraction again'],
  ])('a tolerance of %s for a target of 25: %s', (tolerance, expected) => {
    expect(check([[25, 25]], 25, tolerance)).toEqual([[expected]]);
  });

  test('a target that a sheet turned into a date is found', () => {
    expect(check([[25, 25]], 46000, 1)[0]![0]).toMatch(/^#VALUE! target is 46000: that looks like a date/);
  });

  // Guard band w = U (k = 2): ILAC-G8 4.2, ISO 14253-1.
  test.each([
    [[27.5, 27.5], 'IN SPEC'],
    [[27.57, 27.57], 'IN SPEC'],
    [[27.571, 27.571], 'UNSURE'],
    [[27.6, 27.6], 'UNSURE'],
    [[27.629, 27.629], 'UNSURE'],
    [[27.63, 27.63], 'LOOSE'],
    [[27.43, 27.43], 'IN SPEC'],
    [[27.42, 27.42], 'UNSURE'],
    [[27.37, 27.37], 'TIGHT'],
  ])('with U = 0.03 around 27.5 ± 0.1 readings %j are %s', (readings, expected) => {
    expect(check([readings], 27.5, 0.1, 0.03)).toEqual([[expected]]);
  });

  test('OVAL is a mean in spec with more spread than allowed; a mean out of spec keeps its own verdict', () => {
    expect(
      check(
        [
          [27.4, 27.6],
          [27.39, 27.61],
          [27.7, 27.9],
        ],
        27.5,
        0.1,
        null,
        0.2,
      ).flat(),
    ).toEqual(['IN SPEC', 'OVAL', 'LOOSE']);
  });

  test('an uncertainty of several cells is refused, an error in it is the answer', () => {
    expect(called(() => crimpCheck([[1, 1]], one(1), one(0.01), col(1, 2)))[0]![0]).toMatch(
      /^#VALUE! uncertainty came as 2 × 1 cells/,
    );
    expect(called(() => crimpCheck([[1, 1]], one(1), one(0.01), one(new FakeCellError('#NUM!'))))).toEqual([['#NUM! ']]);
  });
});

test('CRIMPDETAIL gives mean, deviation, spread and verdict; errors and blanks fill the row', () => {
  const readings = [
    [27.46, 27.52, 27.5, 27.48],
    [null, null, null, null],
    [27.5, { type: 'Error', basicValue: '#DIV/0!' }, 27.5, 27.5],
    [27.5, 27.7, 27.9, 27.7],
  ];
  expect(called(() => crimpDetail(readings, one(27.5), one(0.1), none))).toEqual([
    [27.49, -0.01, 0.06, 'IN SPEC'],
    ['', '', '', ''],
    Array(4).fill('#DIV/0! '),
    [27.7, 0.2, 0.4, 'LOOSE'],
  ]);
  expect(called(() => crimpDetail([[27.4, 27.6]], one(27.5), one(0.1), one(0.1)))).toEqual([[27.5, 0, 0.2, 'OVAL']]);
});

describe('CONFORMITY', () => {
  test('is .977250 for 9.8 measured with u .1 and limits 9 … 10 (JCGM 106 form, computed in R)', () => {
    expect(conformity(one(9.8), one(9.5), one(0.5), one(0.2))[0]![0]).toBeCloseTo(0.97725, 6);
  });

  test('is one half on a limit far from the other, whatever the side (symmetry), and leaves blank rows blank', () => {
    const [low, high, blank] = conformity(col(9, 10, null), one(9.5), one(0.5), one(0.1)).flat();
    expect(low).toBeCloseTo(0.5, 12);
    expect(high).toBeCloseTo(0.5, 12);
    expect(blank).toBe('');
  });

  test('shows no noise of binary sums: a mean on its limit gives 0.5 to the last digit', () => {
    expect(conformity(one(10), one(9.5), one(0.5), one(0.13))[0]![0]).toBe(0.5);
    expect(conformity(one(27.47), one(27.35), one(0.12), one(0.03))[0]![0]).toBe(0.5);
  });

  test('keeps the digits of a small probability: 8 standard uncertainties outside is 6.22e-16 (tables of the normal distribution)', () => {
    expect(conformity(one(10.8), one(9.5), one(0.5), one(0.2))[0]![0] / 6.220960574271785e-16).toBeCloseTo(1, 8);
  });

  test.each([
    [0, '#VALUE! uncertainty is 0: it must be more than 0'],
    [null, '#VALUE! uncertainty is blank: fill it in'],
  ])('uncertainty %s: %s', (uncertainty, expected) => {
    expect(called(() => conformity(one(9.8), one(9.5), one(0.5), one(uncertainty)))).toEqual([[expected]]);
  });
});

describe('NEXTDIAL', () => {
  const next = (dial: unknown, mean: number, step: unknown, lowest?: unknown, highest?: unknown, largestMove?: unknown) =>
    called(() =>
      nextDial(
        one(dial),
        [[mean, mean, mean, mean]],
        one(1),
        one(0.005),
        one(step),
        one(lowest ?? null),
        one(highest ?? null),
        one(largestMove ?? null),
      ),
    )[0]![0];

  // .005 in a digit, and which way: common practice, REFERENCE of the project.
  test.each([
    [300, 1.005, 0.005, 300, 'in spec: leave it'],
    [300, 1.01, 0.005, 302, 'too large is too loose: raise it'],
    [300, 0.99, 0.005, 298, 'too small is too tight: lower it'],
    [300, 1.01, -0.005, 298, 'a machine on which a lower number crimps tighter'],
    [300, 1.0125, 0.005, 302, 'the smaller move on a tie'],
    [300, 0.9875, 0.005, 298, 'the smaller move on a tie, the other way'],
    [300, 1.0126, 0.005, 303, 'to the nearest digit'],
    ['300', 1.01, '0.005', 302, 'numbers that arrive as text'],
  ])('dial %s, mean %s, %s a digit: %s (%s)', (...[dial, mean, step, expected]) => {
    expect(next(dial, mean, step)).toBe(expected);
  });

  test('one digit too coarse, out of range and too far are errors that say what to do', () => {
    expect(next(300, 1.006, 0.012)).toMatch(/one digit is too coarse for this tolerance/);
    expect(next(300, 1.006, 0.011)).toBe(301);
    expect(next(300, 1.05, 0.005, 100, 305)).toMatch(
      /^#VALUE! dial would be 310, above 305: look at die, hose, ferrule and readings first/,
    );
    expect(next(300, 0.95, 0.005, 295, 400)).toMatch(/^#VALUE! dial would be 290, below 295/);
    expect(next(300, 1.05, 0.005, 300, 310)).toBe(310);
    expect(next(300, 1.05, 0.005, 100, 500, 9)).toMatch(/^#VALUE! dial would move by 10 digits, more than 9/);
    expect(next(300, 1.05, 0.005, 100, 500, 10)).toBe(310);
    expect(next(300, 1.01, 0)).toBe('#VALUE! step is blank or zero: fill it in');
    expect(next(300, 1.01, 0.005, 400, 200)).toBe('#VALUE! lowest is 400: it is above the highest setting 200');
  });

  test('a row without readings is blank although its dial is filled in; one without a dial is an error', () => {
    const result = called(() =>
      nextDial(
        col(300, null),
        [
          [null, null],
          [1, 1],
        ],
        one(1),
        one(0.005),
        one(0.005),
      ),
    );
    expect(result).toEqual([[''], ['#VALUE! dial is blank: fill it in']]);
  });
});

test('CALIBRATIONTURNS divides the deviation by the change per turn; positive = tighter', () => {
  expect(called(() => calibrationTurns(col(0.4, -0.2, 0, null, 'x'), one(0.4)))).toEqual([
    [1],
    [-0.5],
    [0],
    [''],
    ['#VALUE! deviation is "x": enter the deviation, like 12.5, 3/8 or 1 1/2'],
  ]);
  expect(called(() => calibrationTurns(one(0.1), col(0, -1)))).toEqual([
    ['#VALUE! change per turn is blank or zero: fill it in'],
    ['#VALUE! change per turn is -1: it must be more than 0'],
  ]);
});

test('a fraction that the sheet made a date of is found in every diameter, or it would pass for a huge allowance in silence', () => {
  const date = 45_000;
  const found = [
    () => crimpCheck([[1, 1]], one(1), one(0.01), one(date)),
    () => crimpCheck([[1, 1]], one(1), one(0.01), none, one(date)),
    () => crimpDetail([[1, 1]], one(1), one(0.01), one(date)),
    () => conformity(one(1), one(1), one(0.01), one(date)),
    () => nextDial(one(300), [[1.1, 1.1]], one(1), one(0.01), one(date)),
    () => calibrationTurns(one(date), one(0.5)),
    () => calibrationTurns(one(0.1), one(date)),
  ].map(call => called(call)[0]![0]);
  const names = ['uncertainty', 'largest spread', 'largest spread', 'uncertainty', 'step', 'deviation', 'change per turn'];
  expect(found).toEqual(names.map(name => expect.stringMatching(`^#VALUE! ${name} is 45000: that looks like a date`)));
});

test('a dial is a number of digits: whole thousands are no dates, and inch and foot marks are refused', () => {
  const next = (dial: unknown, lowest: unknown = null) =>
    called(() => nextDial(one(dial), [[1.1, 1.1]], one(1), one(0.01), one(0.01), one(lowest)))[0]![0];
  expect(next(40_000)).toBe(40_010);
  expect(next("300'")).toBe(`#VALUE! dial is "300'": inch and foot marks belong to lengths; enter the dial setting without one`);
  expect(next(300, '9"')).toMatch('lowest is "9"": inch and foot marks belong to lengths');
});
