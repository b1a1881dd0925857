import { Decimal } from '../../../src/core/units/decimal';
import { headingUnit } from '../../../src/core/units/headingUnit';
import { lengthIn, lengthUnitOf } from '../../../src/core/units/lengthUnit';
import { anyMeasureUnit, measureUnit } from '../../../src/core/units/measureUnit';
import { measureFromText } from '../../../src/core/units/measureText';

test.each([
  ['Cut length (mm)', 'Cut length', 'mm', 'mm'],
  ['Cut length [metres]', 'Cut length', 'metres', 'm'],
  ['Cut length, metres', 'Cut length', 'metres', 'm'],
  ['Cut length mm', 'Cut length', 'mm', 'mm'],
  ['Cut length\nin', 'Cut length', 'in', 'in'],
  ['Cut length"', 'Cut length', '"', 'in'],
  ['Overall ft.', 'Overall', 'ft.', 'ft'],
  ['Cut length (ell)', 'Cut length', 'ell', undefined],
  ['Cut length', 'Cut length', undefined, undefined],
  ['Series L', 'Series L', undefined, undefined],
  ['mm', 'mm', undefined, undefined],
])('heading "%s" is %s with the unit %s', (heading, name, text, symbol) => {
  const found = headingUnit(heading, 'length');
  expect([found.name, found.text, found.unit?.symbol]).toEqual([name, text, symbol]);
});

test('a heading is asked for one quantity', () => {
  expect(headingUnit('Flow US gal per min', 'flow')).toMatchObject({ name: 'Flow', unit: { symbol: 'gpm' } });
  expect(headingUnit('Working pressure, psi', 'pressure').unit?.symbol).toBe('psi');
  expect(headingUnit('Working pressure, psi', 'length').unit).toBeUndefined();
});

test('a unit of any quantity', () => {
  expect(['psi', 'yards', '°F', 'kg/m', 'per 100 ft', 'ell'].map(text => anyMeasureUnit(text)?.symbol)).toEqual([
    'psi',
    'yd',
    '°F',
    'kg/m',
    'per 100 ft',
    undefined,
  ]);
});

test.each([
  ['27.5 mm', '27.5', 'mm'],
  ['1,5 m', '1.5', 'm'],
  ['3/8 in', '0.375', 'in'],
  ['3/8"', '0.375', 'in'],
  [`4' 3 1/2"`, '51.5', 'in'],
  ['12ft', '12', 'ft'],
  ['27.5', '27.5', undefined],
])('%s in a sheet is %s %s', (text, value, symbol) => {
  const found = measureFromText('length', text);
  expect([found?.value.toString(), found?.unit?.symbol]).toEqual([value, symbol]);
});

test('a word that is no unit of the quantity is no unit', () => {
  expect(['27.5 bar', '3" in', 'mm', '27.5 mm mm', '1,250 mm'].map(text => measureFromText('length', text))).toEqual(
    Array(5).fill(undefined),
  );
  expect(measureFromText('length', '1,250 mm', 'decimal')?.value.toString()).toBe('1.25');
});

/** Source: NIST SP 811 (2008), appendix B: the inch is 25.4 mm, the foot 12 inches, the yard 3 feet, all exactly. */
test.each([
  ['1.25', 'm', 'mm', '1250'],
  ['1', 'yd', 'mm', '914.4'],
  ['2.5', 'ft', 'in', '30'],
  ['5', 'thou', 'in', '0.005'],
  ['5', 'mil', 'mm', '0.127'],
  ['254', 'mm', 'in', '10'],
] as const)('%s %s is in %s %s, exactly', (value, unit, to, expected) => {
  expect(lengthIn({ value: new Decimal(value), unit: measureUnit('length', unit)! }, to).toString()).toBe(expected);
});

test('feet and yards count in inches, metres in millimetres', () => {
  expect(['mm', 'cm', 'm', 'in', 'ft', 'yd', 'thou'].map(word => lengthUnitOf(measureUnit('length', word)!))).toEqual([
    'mm',
    'mm',
    'mm',
    'in',
    'in',
    'in',
    'in',
  ]);
});
