import { lengthPer, lengthRatio } from '../../../src/core/catalogue/lengthPer';
import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit, type Quantity } from '../../../src/core/units/measureUnit';

// By definition: a foot is 12 in or 304.8 mm.
test.each<[string, Quantity, string, number]>([
  ['mm', 'perLength', 'per m', 1000],
  ['mm', 'massPerLength', 'kg/m', 1000],
  ['mm', 'perLength', 'per ft', 304.8],
  ['in', 'perLength', 'per ft', 12],
  ['in', 'massPerLength', 'lb/ft', 12],
  ['in', 'perLength', 'per 100 ft', 1200],
  ['mm', 'perLength', 'per 100 ft', 30480],
])('lengths in %s, %s %s: %d of them', (length, quantity, per, expected) => {
  const [unit, counted] = [measureUnit('length', length)!, measureUnit(quantity, per)!];
  expect(lengthRatio(unit, counted).toNumber()).toBe(expected);
  expect(lengthPer(unit, new Decimal(expected).times(3), counted).toNumber()).toBe(3);
});
