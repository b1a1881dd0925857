import { countOfCell, measureOfCell, momentOfCell, numberOfCell } from '../../src/cells/sheetCell';
import { measureUnit } from '../../src/core/units/measureUnit';

const mm = measureUnit('length', 'mm')!;
const lengthOf = (cell: string | number, rules = {}, unit: typeof mm | undefined = mm) => {
  const found = measureOfCell(cell, 'length', 'length', unit, rules);
  return found && `${found.value} ${found.unit.symbol}`;
};

test.each([
  [1250, '1250 mm'],
  ['27.5 mm', '27.5 mm'],
  ['1,5 m', '1.5 m'],
  ['3/8"', '0.375 in'],
  [`4' 3 1/2"`, '51.5 in'],
  ['0,375', '0.375 mm'],
])('a length carries its unit: %s', (cell, expected) => {
  expect(lengthOf(cell)).toBe(expected);
});

test('a comma that may mean either is refused until its column says which', () => {
  expect(() => lengthOf('1,250')).toThrow('write 1.250 or 1250');
  expect(lengthOf('1,250', { comma: 'decimal' })).toBe('1.25 mm');
  expect(lengthOf('1,250', { comma: 'thousands' })).toBe('1250 mm');
});

test('no unit, a date, an error and a length of nothing are refused with a reason', () => {
  expect(() => measureOfCell(48, 'length', 'length', undefined)).toThrow('has no unit');
  expect(() => lengthOf(46_000, { format: 'dd/mm/yyyy' })).toThrow('is a date');
  expect(() => measureOfCell({ error: '#REF!' }, 'length', 'length', mm)).toThrow('#REF!');
  expect(() => lengthOf(0)).toThrow('more than 0');
  expect(lengthOf(' ')).toBeUndefined();
});

test('a count is a whole number', () => {
  expect(() => countOfCell('two', 'quantity')).toThrow('quantity is "two": enter a number, like 12');
  expect(() => countOfCell(1.5, 'quantity')).toThrow('quantity is 1.5: enter a whole number');
  expect(countOfCell('4 pcs', 'quantity')).toBe(4);
  expect(countOfCell('', 'quantity')).toBeUndefined();
});

test('dials and dates', () => {
  expect(numberOfCell('412', 'dial')?.toNumber()).toBe(412);
  expect(() => numberOfCell('3/8"', 'dial')).toThrow('belong to lengths');
  expect(momentOfCell('2026-11-29', 'day')).toBe(46_355);
  expect(() => momentOfCell('03/04/2026', 'day')).toThrow('write 2026-04-03 or 2026-03-04');
});
