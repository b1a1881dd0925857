import fc from 'fast-check';
import { lengthLimits } from '../../../src/core/length/lengthLimits';
import { Decimal } from '../../../src/core/units/decimal';
import { benchCut } from '../../../src/sheets/jobs/benchRounding';
import { lengthText } from '../../../src/sheets/table/lengthText';

const d = (value: number | string) => new Decimal(value);
const sixteenth = d(1).div(16);

test.each([
  ['1099.5', '1', '1100', 'a tie is cut longer'],
  ['1099.4', '1', '1099', 'nearest'],
  ['1099.4', '5', '1100', 'coarser bench'],
  ['1099.4', '0.1', '1099.4', 'nothing to round'],
])('%s mm in steps of %s is cut %s (%s)', (wanted, step, cut) => {
  expect(benchCut(d(wanted), d(step), 'mm').cutLength.toString()).toBe(cut);
});

test('inches go to whole sixteenths: 14.62 in (NAVEDTRA 14018 t. 5-2) is cut 14 5/8', () => {
  expect(lengthText(benchCut(d('14.62'), sixteenth, 'in').cutLength, 'in')).toBe('14 5/8');
});

test('where the nearest step misses the length limits the other side is taken', () => {
  const limits = { shortest: d(990), longest: d(1001) };
  const cut = benchCut(d(903), d(5), 'mm', { overall: d(1000), limits });
  expect([cut.cutLength.toString(), cut.isOtherWay]).toEqual(['900', true]);
});

test('where no step keeps the limits it says so', () => {
  const limits = { shortest: d(999), longest: d(1001) };
  expect(() => benchCut(d('902.5'), d(5), 'mm', { overall: d(1000), limits })).toThrow(
    'cut length 902.5 in steps of 5 mm: no step keeps the finished length within its limits; take a finer step or check the length',
  );
});

test('whole millimetres never leave the limits of DIN 20066 (narrowest band −3 mm, memory)', () => {
  fc.assert(
    fc.property(fc.integer({ min: 3000, max: 90_000 }), fc.integer({ min: 0, max: 999 }), (tenths, off) => {
      const overall = d(tenths).div(10);
      const limits = lengthLimits(overall, d('12.7'), 'mm', 'DIN 20066');
      const wanted = overall.minus(d(off).div(10));
      const { change } = benchCut(wanted, d(1), 'mm', { overall, limits });
      return change.abs().lte('0.5') && overall.plus(change).gte(limits.shortest) && overall.plus(change).lte(limits.longest);
    }),
  );
});

test.each([
  ['14.625', 'in', '14 5/8'],
  ['0.0625', 'in', '1/16'],
  ['12', 'in', '12'],
  ['3.1', 'in', '3.1'],
  ['1099.50', 'mm', '1099.5'],
] as const)('%s %s is written %s', (length, unit, text) => {
  expect(lengthText(d(length), unit)).toBe(text);
});
