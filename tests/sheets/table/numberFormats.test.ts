import { format } from 'numfmt';
import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { caliperFormat, cutLengthFormat } from '../../../src/sheets/table/numberFormats';

const step = (value: string, unit: string) => ({ value: new Decimal(value), unit: measureUnit('length', unit)! });

// The shown texts are those of numfmt, a formatter of spreadsheet number formats (ECMA-376, part 1, 18.8.30) that is no part of this project.
test.each([
  ['mm', undefined, '0', 793.75, '794'],
  ['mm', step('0.5', 'mm'), '0.0', 793.75, '793.8'],
  ['m', step('1', 'mm'), '0.000', 0.79375, '0.794'],
  ['in', undefined, '# ??/16', 31.4375, '31  7/16'],
  ['in', step('0.125', 'in'), '# ?/8', 31.375, '31 3/8'],
  ['in', step('0.1', 'in'), '0.0', 31.44, '31.4'],
])('a cut length in %s is shown to the step of the bench', (unit, said, expected, value, text) => {
  expect(cutLengthFormat(unit, said)).toBe(expected);
  expect(format(expected, value)).toBe(text);
});

test('a column without a unit keeps the host’s own format', () => {
  expect(cutLengthFormat(undefined)).toBeUndefined();
  expect(caliperFormat(undefined)).toBeUndefined();
});

test('crimp diameters are shown as a caliper shows them: hundredths of a millimetre, ten-thousandths of an inch', () => {
  expect([caliperFormat('mm'), caliperFormat('in')]).toEqual(['0.00', '0.0000']);
});
