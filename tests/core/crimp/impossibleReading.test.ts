import { impossibleReading } from '../../../src/core/crimp/impossibleReading';
import { decimalOfCell } from '../../../src/core/units/scaledDecimal';

const found = (readings: readonly number[], target: number, tolerance: number) => {
  const stray = impossibleReading({
    readings: readings.map(decimalOfCell),
    target: decimalOfCell(target),
    tolerance: decimalOfCell(tolerance),
  });
  return stray && [stray.index + 1, stray.reading.toNumber()];
};

/** The limits are rules of the shop (0.8 … 1.25 of the target; 10 tolerances and 2 % from the median); worked by hand, no outside source. */
test.each([
  ['all near the target', [24.9, 24.9, 24.8, 25], 24.9, 0.12, undefined],
  ['a decimal point in the wrong place', [27.5, 2.75, 27.5, 27.5], 27.5, 0.1, [2, 2.75]],
  ['inches against millimetres', [1.082, 1.083, 1.083, 1.084], 27.5, 0.1, [1, 1.082]],
  ['millimetres against inches', [27.5, 27.5], 1.083, 0.005, [1, 27.5]],
  ['exactly 0.8 of the target', [22, 22], 27.5, 0.1, undefined],
  ['just below 0.8 of the target', [22, 21.9999], 27.5, 0.1, [2, 21.9999]],
  ['exactly 1.25 of the target', [34.375, 34.375], 27.5, 0.1, undefined],
  ['just above 1.25 of the target', [34.375, 34.3751], 27.5, 0.1, [2, 34.3751]],
  ['another crimp among these', [24.9, 29.4, 24.9, 24.8], 24.9, 0.12, [2, 29.4]],
  ['exactly 10 tolerances from the median', [24.9, 24.9, 26.1, 24.9], 24.9, 0.12, undefined],
  ['just beyond 10 tolerances and 2 %', [24.9, 24.9, 26.1001, 24.9], 24.9, 0.12, [3, 26.1001]],
  ['beyond 10 tolerances, but not beyond 2 %', [25, 25, 25.5, 25], 25, 0.02, undefined],
  ['beyond both where 2 % is the farther one', [25, 25, 25.5001, 25], 25, 0.02, [3, 25.5001]],
  ['two readings, each as far from the median: the one farther from the target', [29.4, 24.9], 24.9, 0.12, [1, 29.4]],
  ['the farthest of several', [24.9, 26.5, 24.9, 22.5, 24.9], 24.9, 0.12, [4, 22.5]],
])('%s', (_, readings, target, tolerance, expected) => expect(found(readings, target, tolerance)).toEqual(expected));
