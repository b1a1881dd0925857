import fc from 'fast-check';
import { sellPrice } from '../../../src/core/price/sellPrice';
import { Decimal } from '../../../src/core/units/decimal';

const price = (cost: string, margin: string, roundTo?: string, minimum?: string) =>
  sellPrice({
    cost: new Decimal(cost),
    margin: new Decimal(margin),
    roundTo: roundTo === undefined ? undefined : new Decimal(roundTo),
    minimum: minimum === undefined ? undefined : new Decimal(minimum),
  }).toString();

// g = m/(1 + m): 40 % margin = 66.667 % markup, 50 % markup = 33.333 % margin; definition.
test.each([
  ['60', '0.4', undefined, undefined, '100'],
  ['60', '0', undefined, undefined, '60'],
  ['60', '-0.2', undefined, undefined, '50'],
  ['61.01', '0.4', '0.05', undefined, '101.7'],
  ['60', '0.4', '0.05', undefined, '100'],
  ['7', '0.3', '10', undefined, '10'],
  ['21', '0.3', '0.1', undefined, '30'],
  ['0.3', '0', '0.1', undefined, '0.3'],
  ['3', '0.4', undefined, '12.5', '12.5'],
  ['3', '0.4', '5', '12.5', '15'],
  ['0', '0.4', '0.05', undefined, '0'],
])('cost %s, margin %s, round to %s, minimum %s: %s', (cost, margin, roundTo, minimum, expected) => {
  expect(price(cost, margin, roundTo, minimum)).toBe(expected);
});

test('a margin of 1 or more is refused', () => {
  expect(() => price('10', '1')).toThrow('a margin is a share of the price and lies below 1');
  expect(() => price('10', '40')).toThrow('margin is 40');
});

test('a rounded price is a multiple of the step, never below the exact one and less than a step above it', () => {
  const amount = fc.integer({ min: 0, max: 1_000_000 });
  const share = fc.integer({ min: -50, max: 99 });
  const step = fc.integer({ min: 1, max: 1000 });
  fc.assert(
    fc.property(amount, share, step, (cents, percent, stepCents) => {
      const input = { cost: new Decimal(cents).div(100), margin: new Decimal(percent).div(100) };
      const roundTo = new Decimal(stepCents).div(100);
      const exact = sellPrice(input);
      const rounded = sellPrice({ ...input, roundTo });
      expect(rounded.mod(roundTo).isZero()).toBe(true);
      expect(rounded.minus(exact).gte('-1e-20')).toBe(true);
      expect(rounded.minus(exact).lt(roundTo)).toBe(true);
    }),
  );
});
