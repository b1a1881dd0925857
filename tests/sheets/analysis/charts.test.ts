import { indexText } from '../../../src/sheets/analysis/diameterText';
import { measureCrimp } from '../../../src/core/crimp/crimpMeasure';
import { Decimal } from '../../../src/core/units/decimal';
import type { MachineReadings } from '../../../src/sheets/analysis/analyseReadings';
import type { JudgedCrimp } from '../../../src/sheets/analysis/judgedCrimp';
import { capabilityOf } from '../../../src/sheets/analysis/capabilityOf';
import { controlCharts } from '../../../src/sheets/analysis/controlChart';
import { chartNotes, controlLimitsText, signalTexts } from '../../../src/sheets/analysis/controlText';
import { responseText } from '../../../src/sheets/analysis/responseText';

/** A row that says nothing but its combination. */
const BLANK = {
  sheet: 'Readings',
  end: '',
  title: '',
  line: '',
  assembly: '',
  piece: '',
  order: '',
  operator: '',
  date: undefined,
  dateInSheet: '',
  hose: '',
  fitting: '',
  combination: 'Larch',
  isNamed: true,
  machine: '',
  die: '',
  wantedDie: '',
  hoseLot: '',
  hoseMade: '',
  fittingLot: '',
  unit: 'mm',
  cells: [],
  largestSpread: undefined,
  dial: undefined,
  wantedDial: undefined,
  hasNoDial: false,
  step: undefined,
  lowest: undefined,
  highest: undefined,
  largestMove: undefined,
  fields: {},
  gauges: [],
  gaugeKinds: new Map<string, never>(),
  witness: [],
  notes: [],
  problem: undefined,
  readingProblem: undefined,
  locked: undefined,
} as const;

/** A crimp of two readings whose mean is off by `deviation`. */
function crimp(deviation: number, row: number, more: Partial<JudgedCrimp> = {}): JudgedCrimp {
  const [target, tolerance] = [new Decimal(50), new Decimal(10).div(2)];
  const readings = [target.plus(deviation).minus('0.01'), target.plus(deviation).plus('0.01')];
  return {
    ...BLANK,
    row,
    rows: [row],
    verdict: 'IN SPEC',
    target,
    tolerance,
    readings,
    measure: measureCrimp({ readings, target, tolerance }),
    ...more,
  };
}

// NIST/SEMATECH e-Handbook 6.3.2.2, published: centre 50.81, mean moving range 1.8778, limits 45.8159 and 55.8041 with d2 = 1.128.
const INDIVIDUALS = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

test('individuals: the published limits, as deviations from the target', () => {
  const { charts, leftOut } = controlCharts(
    INDIVIDUALS.map((value, i) => crimp(value - 50, i + 2)),
    'each',
  );
  const [individual, moving] = charts;
  expect(individual!.limits.centre).toBeCloseTo(0.81, 10);
  expect(individual!.limits.lower).toBeCloseTo(45.8159 - 50, 2);
  expect(individual!.limits.upper).toBeCloseTo(55.8041 - 50, 2);
  expect(moving!.limits.centre).toBeCloseTo(1.8778, 4);
  expect([individual!.points.length, moving!.points.length, leftOut]).toEqual([10, 9, 0]);
  expect(moving!.points[0]!.crimp.row).toBe(3);
  expect(controlLimitsText(individual!, 'mm')).toMatch(
    /^Individual: 10 points, centre \+0\.810 mm, limits −4\.18\d and \+5\.80\d\.$/,
  );
  expect(chartNotes({ charts, leftOut }, false)).toEqual(['Limits from 10 points are a first guess: 20 or more make them firm.']);
});

test('a jump is marked with the rule it completes and the row it stands in', () => {
  const steady = [0.01, -0.01, 0.01, -0.01, 0.01, -0.01, 0.01, -0.01, 0.2].map((value, i) => crimp(value, i + 5));
  const [individual, moving] = controlCharts(steady, 'each').charts;
  expect(individual!.points.map(({ rules }) => rules)).toEqual([[], [], [], [], [], [], [], [4], [1]]);
  expect(signalTexts(individual!, 'mm')).toEqual([
    // The jump itself lifts the centre line above the eight before it.
    'Individual −0.010, row 12, Larch: eight in a row on one side (4)',
    'Individual +0.200, row 13, Larch: beyond the limits (1)',
  ]);
  expect(signalTexts(moving!, 'mm')).toEqual(['Moving range 0.210, row 13, Larch: beyond the limits (1)']);
});

test('mean and range of crimps in a row: what makes no whole subgroup is told', () => {
  const crimps = [1, 3, 2, 4, 3, 5, 9].map((value, i) => crimp(value / 100, i + 2));
  const { charts, leftOut } = controlCharts(crimps, '2');
  expect(charts.map(({ limits }) => limits.chart)).toEqual(['Mean', 'Range']);
  expect(charts[0]!.points.map(({ value }) => value)).toEqual([0.02, 0.03, 0.04].map(value => expect.closeTo(value, 12)));
  expect(charts[1]!.points.map(({ value }) => value)).toEqual([0.02, 0.02, 0.02].map(value => expect.closeTo(value, 12)));
  // A2 for n = 2 is 1.8800 (ISO 7870-2): limits 0.03 ± 1.88 × 0.02.
  expect(charts[0]!.limits.upper).toBeCloseTo(0.03 + 1.88 * 0.02, 5);
  expect(chartNotes({ charts, leftOut }, false)).toContain('1 crimp does not fill a subgroup and is on no chart.');
});

test('the readings of each crimp as subgroups come with a warning', () => {
  const { charts, leftOut } = controlCharts([crimp(0, 2), crimp(0.01, 3), crimp(-0.01, 4)], 'readings');
  expect(charts[1]!.points.map(({ value }) => value)).toEqual([0.02, 0.02, 0.02].map(value => expect.closeTo(value, 12)));
  expect(chartNotes({ charts, leftOut }, true).join(' ')).toMatch(/readings round one crimp/);
});

test('capability of one combination: overall indices with limits, within without', () => {
  const found = capabilityOf(
    INDIVIDUALS.map((value, i) => crimp(value - 50, i)),
    5,
  );
  const indices = 'indices' in found ? found.indices : [];
  const index = (name: string) => indices.find(each => each.index === name)!;
  // s of the published individuals is 2.0366 (recomputed by hand: sum of squares 37.229 over 9): Ppk = (5 − 0.81) ÷ 3 s.
  expect(index('Ppk').value).toBeCloseTo((5 - 0.81) / (3 * Math.sqrt(37.229 / 9)), 6);
  expect(index('Ppk').low).toBeLessThan(0.5);
  expect(index('Ppk').high).toBeGreaterThan(0.9);
  // e-Handbook: sigma = 1.8778 ÷ 1.128.
  expect(index('Cp').value).toBeCloseTo(10 / (6 * (1.8778 / 1.128)), 3);
  expect([index('Cp').low, index('Cp').high]).toEqual([undefined, undefined]);
});

test('capability of crimps that do not differ says why there is none', () => {
  expect(capabilityOf([crimp(0, 2), crimp(0, 3)], 5)).toEqual({ reason: expect.stringContaining('do not differ') });
});

describe('the dial’s response', () => {
  const at = (dial: number, deviation: number) => crimp(deviation, dial, { dial: new Decimal(dial) });
  const machine = (crimps: readonly JudgedCrimp[], step?: string) =>
    ({
      crimps,
      die: '',
      facts: () => (step ? { step: { value: new Decimal(step), from: 'table Machines' } } : {}),
    }) as unknown as MachineReadings;
  const crimps = [at(10, 0.2), at(20, 0.101), at(30, -0.001), at(40, -0.1)];

  test('one digit up crimps tighter, and fits what the table says', () => {
    expect(responseText(machine(crimps, '0.01'), 'mm')).toMatch(
      /^Dial: one digit up crimps 0\.0100 mm tighter \(95 %: 0\.\d+ to 0\.\d+ mm; 4 crimps\)\. That fits 0\.01 mm, table Machines\.$/,
    );
  });
  test('or does not fit', () =>
    expect(responseText(machine(crimps, '0.03'), 'mm')).toMatch(/does not fit 0\.03 mm, table Machines: check it/));
  test('one dial throughout shows nothing', () =>
    expect(responseText(machine([at(10, 0), at(10, 0.1)]), 'mm')).toMatch(/not show what a digit does/));
});

test.each([
  [1.333, '1.33'],
  [-0.234, '−0.23'],
  [-0.001, '0.00'],
])('an index of capability in words: %d', (value, text) => expect(indexText(value)).toBe(text));
