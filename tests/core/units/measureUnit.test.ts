import { Decimal } from '../../../src/core/units/decimal';
import { convertMeasure, measureUnit, type Quantity } from '../../../src/core/units/measureUnit';

/** Source: NIST SP 811 (2008), appendix B.8 and its exact definitions. */
test.each<[Quantity, string, string, string, string]>([
  ['length', '1', 'in', 'mm', '25.4'],
  ['length', '1', 'ft', 'mm', '304.8'],
  ['length', '1', 'm', 'cm', '100'],
  ['length', '1', 'yd', 'in', '36'],
  ['length', '1', 'mil', 'mm', '0.0254'],
  ['volume', '1', 'gal', 'L', '3.785411784'],
  ['flow', '1', 'gpm', 'L/min', '3.785411784'],
  ['velocity', '1', 'ft/s', 'm/s', '0.3048'],
  ['pressure', '1', 'bar', 'MPa', '0.1'],
  // psi: 6894.757293168361 Pa, from the pound-force of 4.4482216152605 N over (25.4 mm)².
  ['pressure', '1', 'psi', 'kPa', '6.894757293168'],
  ['pressure', '1', 'psi', 'Pa', '6894.757293168'],
  ['temperature', '212', '°F', '°C', '100'],
  ['temperature', '-40', '°F', '°C', '-40'],
  ['temperature', '0', '°C', 'K', '273.15'],
  ['mass', '1', 'lb', 'g', '453.59237'],
  ['massPerLength', '1', 'lb/ft', 'kg/m', '1.488163943570'],
])('%s: %s %s is in %s %s', (quantity, value, from, to, expected) => {
  const result = convertMeasure(new Decimal(value), measureUnit(quantity, from)!, measureUnit(quantity, to)!);
  expect(result.toSignificantDigits(13).toString()).toBe(new Decimal(expected).toString());
});

test.each<[Quantity, string, string]>([
  ['length', ' MM ', 'mm'],
  ['length', 'inches', 'in'],
  ['length', '"', 'in'],
  ['length', '″', 'in'],
  ['length', "''", 'in'],
  ['length', 'in.', 'in'],
  ['length', "'", 'ft'],
  ['length', '′', 'ft'],
  ['length', 'foot', 'ft'],
  ['length', 'feet', 'ft'],
  ['length', 'Yards', 'yd'],
  ['length', 'metres', 'm'],
  ['length', 'meter', 'm'],
  ['length', 'millimetres', 'mm'],
  ['pressure', 'PSI', 'psi'],
  ['pressure', 'inches of mercury', 'inHg'],
  ['pressure', 'in. Hg', 'inHg'],
  ['flow', 'l/min', 'L/min'],
  ['flow', 'litres per minute', 'L/min'],
  ['flow', 'US gpm', 'gpm'],
  ['volume', 'litres', 'L'],
  ['volume', 'US gallons', 'gal'],
  ['velocity', 'm/s', 'm/s'],
  ['viscosity', 'cSt', 'mm²/s'],
  ['length', 'mm per digit', 'mm'],
  ['pressure', 'mpa', 'MPa'],
  ['temperature', 'ºC', '°C'],
  ['temperature', '° F', '°F'],
  ['temperature', 'deg C', '°C'],
  ['massPerLength', 'kg per m', 'kg/m'],
  ['massPerLength', 'lbs/ft', 'lb/ft'],
  ['perLength', 'per m', 'per m'],
  ['perLength', '€/m', 'per m'],
  ['perLength', 'EUR per 100 ft', 'per 100 ft'],
])('%s written "%s" is %s', (quantity, text, symbol) => {
  expect(measureUnit(quantity, text)?.symbol).toBe(symbol);
});

test('what is no unit of the quantity is not guessed', () => {
  expect(['ell', '', 'bar', 'mm²'].map(text => measureUnit('length', text))).toEqual(Array(4).fill(undefined));
  expect(measureUnit('perLength', 'EUR')).toBeUndefined();
});
