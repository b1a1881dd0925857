import { measureUnit } from '../../src/core/units/measureUnit';
import { typedNumber, type TypedRules } from '../../src/cells/typedNumber';

const MM = measureUnit('length', 'mm');
const INCH = measureUnit('length', 'in');
const BAR = measureUnit('pressure', 'bar');

// 1 in = 25.4 mm, 1 psi = 6894.757293168361 Pa. Source: NIST SP 811, appendix B.
test.each<[string, TypedRules, string]>([
  ['12.5', {}, '12.5'],
  ['12,5', {}, '12.5'],
  ['0,375', {}, '0.375'],
  [' 3/8 ', {}, '0.375'],
  ['1 1/2"', { unit: INCH }, '1.5'],
  ['2.5 cm', { unit: MM }, '25'],
  ['27.5 mm', { unit: MM, millimetres: true }, '27.5'],
  ['1.5 in', { unit: MM, millimetres: true }, '38.1'],
  ['1 MPa', { unit: BAR, marks: 'noLength' }, '10'],
  ['40 %', { share: true }, '0.4'],
  ['37,5 %', { share: true }, '0.375'],
  ['0.4', { share: true }, '0.4'],
  ['0', { sign: 'notNegative' }, '0'],
  ['30', { whole: 'enter whole days' }, '30'],
  ['25,015', { comma: 'decimal' }, '25.015'],
  ['0,5', { least: 0, most: 1 }, '0.5'],
  ['1', { least: 1 }, '1'],
])('%j with %j is %s', (typed, rules, value) => {
  expect(typedNumber(typed, 'kerf', rules)).toEqual({ value: expect.anything() });
  expect(typedNumber(typed, 'kerf', rules).value!.toString()).toBe(value);
});

test.each<[string, TypedRules, RegExp]>([
  ['', { blank: 'enter it' }, /^Kerf is blank: enter it$/],
  ['much', {}, /^Kerf is "much": enter a number, like 12.5, 3\/8 or 1 1\/2$/],
  ['1,250', {}, /its comma may mean decimals or thousands; write 1\.250 or 1250/],
  ['0', { sign: 'positive' }, /it must be more than 0/],
  ['-2 cm', { sign: 'positive', unit: MM }, /it must be more than 0/],
  ['-1', { sign: 'notNegative' }, /it must not be less than 0/],
  ['3 bar', { unit: MM }, /^Kerf is "3 bar"/],
  ['1/2"', { millimetres: true, unit: MM }, /that is in inches/],
  ["3'", { marks: 'noLength' }, /inch and foot marks belong to lengths/],
  ['40', { share: true }, /enter 40 % or 0.4/],
  ['0.4"', { share: true }, /enter a share like 40 % or 0.4/],
  ['0.9', { least: 1 }, /^Kerf is 0.9: it must be 1 or more$/],
  ['11', { most: 10 }, /^Kerf is 11: it must be 10 or less$/],
  ['1.5', { least: 0, most: 1 }, /^Kerf is 1.5: it must be from 0 to 1$/],
  ['0', { isNever0: true }, /^Kerf is 0: it must not be 0$/],
  ['1,2,3', { comma: 'decimal' }, /^Kerf is "1,2,3"/],
  ['2.5', { whole: 'enter whole days' }, /^Kerf is 2.5: enter whole days$/],
])('%j with %j is a mistake', (typed, rules, sentence) => {
  const { value, mistake } = typedNumber(typed, 'kerf', rules);
  expect(value).toBeUndefined();
  expect(mistake).toMatch(sentence);
});

test('a field that may stay blank is neither a number nor a mistake', () => {
  expect(typedNumber('  ', 'kerf')).toEqual({});
});
