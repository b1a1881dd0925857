import { measureUnit, type Quantity } from '../../../src/core/units/measureUnit';
import { turnedBy, turnedCell } from '../../../src/sheets/table/turnedBy';

const unit = (quantity: Quantity, symbol: string) => measureUnit(quantity, symbol)!;

// Factors by definition: 1 in = 25.4 mm, 1 ft = 12 in; t/°C = (t/°F − 32) ÷ 1.8 = T/K − 273.15 (NIST SP 811, appendix B).
test.each([
  ['temperature', '°F', '°C', '(K5-32)/1.8'],
  ['temperature', '°C', '°F', 'K5*1.8+32'],
  ['temperature', 'K', '°C', 'K5-273.15'],
  ['temperature', '°C', 'K', 'K5+273.15'],
  ['temperature', '°C', '°C', 'K5'],
  ['length', 'in', 'mm', 'K5*25.4'],
  ['length', 'mm', 'in', 'K5/25.4'],
] as const)('%s: a cell in %s is turned into %s by %s', (quantity, from, to, formula) => {
  expect(turnedCell('K5', unit(quantity, from), unit(quantity, to))).toBe(formula);
});

test('lengths are turned by their factor alone', () => {
  expect(turnedBy(unit('length', 'ft'), unit('length', 'in'))).toBe('*12');
  expect(turnedBy(unit('length', 'in'), unit('length', 'ft'))).toBe('/12');
});
