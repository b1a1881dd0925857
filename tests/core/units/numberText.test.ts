import { isNumberWithCommas, numberFromText } from '../../../src/core/units/numberText';

test.each([
  ['12.5', '12.5', 'none'],
  [' 3/8 ', '0.375', 'none'],
  ['1 1/2', '1.5', 'none'],
  ['1-1/2', '1.5', 'none'],
  ['1/2"', '0.5', 'inch'],
  ['1 1/2 "', '1.5', 'inch'],
  [`4' 3 1/2"`, '51.5', 'inch'],
  [`4'-3 1/2"`, '51.5', 'inch'],
  [`4'3"`, '51', 'inch'],
  [`4'`, '48', 'inch'],
  ['4′ 3 1/2″', '51.5', 'inch'],
  [`1/2''`, '0.5', 'inch'],
  [`4' 3 1/2''`, '51.5', 'inch'],
  ['4\u2019 3\u201d', '51', 'inch'],
  ['-1 1/2', '-1.5', 'none'],
  ['\u22123/8', '-0.375', 'none'],
  ['+2', '2', 'none'],
  ['.5', '0.5', 'none'],
  ['5.', '5', 'none'],
  ['1\u00a01/2', '1.5', 'none'],
])('%s is read as %s (%s)', (text, value, mark) => {
  const found = numberFromText(text);
  expect([found?.value.toString(), found?.mark]).toEqual([value, mark]);
});

test.each([
  '',
  'abc',
  '12,5',
  '1,250',
  '3/0',
  '1/2/3',
  '1 2',
  '12 mm',
  '1e3',
  '--3',
  '3/8/2026',
  `4' 3' 2"`,
  `'`,
  `''`,
  `4'' 3''`,
  `4''' 3`,
  '"',
  '1.5/2',
  '½',
  'Infinity',
  'NaN',
  '0x10',
])('"%s" is not guessed at', text => expect(numberFromText(text)).toBeUndefined());

test.each([
  ['12,5', true],
  ['1,250', true],
  ['1,250.5', true],
  ['-3,5"', true],
  ['12.5', false],
  ['a,b', false],
  ['M22,5 x 1', false],
  [',', false],
  ['12,', false],
])('"%s" is a number but for its commas: %s', (text, expected) => expect(isNumberWithCommas(text)).toBe(expected));
