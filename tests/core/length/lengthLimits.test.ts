import { lengthLimits, type LengthRule } from '../../../src/core/length/lengthLimits';
import { Decimal } from '../../../src/core/units/decimal';
import type { LengthUnit } from '../../../src/core/units/lengthUnit';

function limits(overall: number | string, bore: number | string, unit: LengthUnit, rule: LengthRule): string {
  const { shortest, longest } = lengthLimits(new Decimal(overall), new Decimal(bore), unit, rule);
  return `${shortest} … ${longest}`;
}

// Values of both standards: memory (REFERENCE of the project), boundaries worked out by hand.
test.each([
  [630, 25.4, '627 … 637', 'DN 25 ends at its real bore'],
  [630, 25.5, '626 … 642', 'the next band begins'],
  [630, 50.8, '626 … 642', 'DN 50 ends at its real bore'],
  [630.1, 12.7, '626.1 … 642.1', 'the next length band begins'],
  [1250, 12.7, '1246 … 1262', ''],
  [1250, 31.8, '1244 … 1270', ''],
  [2500, 12.7, '2494 … 2520', ''],
  [2500, 50, '2494 … 2525', ''],
  [2501, 12.7, '2488.495 … 2538.515', 'shares of the overall length'],
  [8000, 50, '7960 … 8120', ''],
  [8001, 25, '7920.99 … 8241.03', ''],
])('DIN 20066: %s mm at bore %s lies within %s %s', (overall, bore, expected) => {
  expect(limits(overall, bore, 'mm', 'DIN 20066')).toBe(expected);
});

test.each([
  ['12', '11.875 … 12.125'],
  ['12.01', '11.8225 … 12.1975'],
  ['18', '17.8125 … 18.1875'],
  ['36', '35.75 … 36.25'],
  ['36.5', '36.125 … 36.875'],
  ['50', '49.5 … 50.5'],
  ['56', '55.5 … 56.5'],
  ['100', '99 … 101'],
])('SAE J517: %s in lies within %s', (overall, expected) => {
  expect(limits(overall, '0.5', 'in', 'SAE J517')).toBe(expected);
});

test('a rule of the other unit is converted both ways: 12 in are 304.8 mm, 1/8 in 3.175 mm', () => {
  expect(limits('304.8', '12.7', 'mm', 'SAE J517')).toBe('301.625 … 307.975');
  const { shortest, longest } = lengthLimits(new Decimal(20), new Decimal('0.5'), 'in', 'DIN 20066');
  expect([shortest.times('25.4').toNumber(), longest.times('25.4').toNumber()]).toEqual([505, 515]);
});

test('a bore above DN 50 and a length shorter than its tolerance are refused', () => {
  expect(() => limits(1000, 50.9, 'mm', 'DIN 20066')).toThrow('DIN 20066 ends at DN 50');
  expect(() => limits(40, 3, 'in', 'DIN 20066')).toThrow('bore is 3 in (76.2 mm): DIN 20066 ends at DN 50');
  expect(() => limits(2, 12.7, 'mm', 'DIN 20066')).toThrow('shorter than its own tolerance');
});
