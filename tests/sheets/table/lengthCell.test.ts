import { countOfCell } from '../../../src/sheets/table/lengthCell';

test('a count that is no number is answered with an example that could be one', () => {
  expect(() => countOfCell('two', 'quantity')).toThrow('quantity is "two": enter a whole number, like 12');
  expect(() => countOfCell(1.5, 'quantity')).toThrow('quantity is 1.5: enter a whole number');
  expect(countOfCell('4', 'quantity')).toBe(4);
  expect(countOfCell('', 'quantity')).toBeUndefined();
});
