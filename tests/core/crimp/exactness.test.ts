import { measureCrimp } from '../../../src/core/crimp/crimpMeasure';
import { judgeCrimp } from '../../../src/core/crimp/crimpVerdict';
import { decimalOfCell } from '../../../src/core/units/scaledDecimal';

type Crimp = { readings: number[]; target: number; tolerance: number };

function verdict({ readings, target, tolerance }: Crimp): string {
  const allowed = decimalOfCell(tolerance);
  return judgeCrimp(measureCrimp({ readings: readings.map(decimalOfCell), target: decimalOfCell(target), tolerance: allowed }), {
    tolerance: allowed,
  });
}

/** The same judgement in binary floating point, as a spreadsheet formula would make it. */
function binaryVerdict({ readings, target, tolerance }: Crimp): string {
  const deviation = readings.reduce((sum, reading) => sum + reading, 0) / readings.length - target;
  return Math.abs(deviation) <= tolerance ? 'IN SPEC' : deviation < 0 ? 'TIGHT' : 'LOOSE';
}

/** Crimps whose mean lies exactly on a limit, made in whole units of the caliper's last digit, so that no arithmetic of ours is used. */
function* onTheLimit(
  digit: number,
  targets: readonly number[],
  tolerances: readonly number[],
): Generator<{ crimp: Crimp; beyond: Crimp; side: 'TIGHT' | 'LOOSE' }> {
  for (const target of targets) {
    for (const tolerance of tolerances) {
      for (const sign of [-1, 1] as const) {
        const limit = target + sign * tolerance;
        for (const [a, b] of [
          [0, 0],
          [1, 2],
          [3, 1],
          [7, 5],
        ] as const) {
          const digits = [limit + a, limit - a, limit + b, limit - b];
          const inUnits = (list: readonly number[]) => list.map(value => Number((value / digit).toFixed(6)));
          const [t, w] = inUnits([target, tolerance]) as [number, number];
          const crimp = { readings: inUnits(digits), target: t, tolerance: w };
          const beyond = { ...crimp, readings: inUnits([digits[0]! + sign, ...digits.slice(1)]) };
          yield { crimp, beyond, side: sign < 0 ? 'TIGHT' : 'LOOSE' };
        }
      }
    }
  }
}

const range = (from: number, to: number, step: number) =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => from + index * step);

describe.each([
  ['millimetres, caliper of 0.01 mm', 100, range(1200, 9000, 37), [5, 10, 13, 20]],
  ['inches, caliper of .0005 in', 2000, range(1000, 7000, 41), [10, 14, 20]],
  ['inches, caliper of .001 in', 1000, range(500, 3500, 23), [5, 7, 10]],
])('%s', (_, perUnit, targets, tolerances) => {
  const cases = [...onTheLimit(perUnit, targets, tolerances)];

  test('a mean exactly on a limit is in spec, one digit of one reading beyond it is not', () => {
    for (const { crimp, beyond, side } of cases) {
      expect({ crimp, verdict: verdict(crimp) }).toEqual({ crimp, verdict: 'IN SPEC' });
      expect({ beyond, verdict: verdict(beyond) }).toEqual({ beyond, verdict: side });
    }
  });

  test('binary floating point gets many of the same values wrong, so the check above can fail', () => {
    const wrong = cases.filter(({ crimp }) => binaryVerdict(crimp) !== 'IN SPEC').length;
    expect(wrong).toBeGreaterThan(cases.length / 20);
  });
});

test('noise that a computed cell carries behind its 15 digits does not change a verdict', () => {
  expect(verdict({ readings: [0.1 + 0.2 + 27.1, 27.4], target: 27.3, tolerance: 0.1 })).toBe('IN SPEC');
});

test('three readings whose mean has no end are judged on their sum', () => {
  expect(verdict({ readings: [20.1, 20.1, 20.1], target: 20, tolerance: 0.1 })).toBe('IN SPEC');
  expect(verdict({ readings: [20.1, 20.1, 20.101], target: 20, tolerance: 0.1 })).toBe('LOOSE');
});
