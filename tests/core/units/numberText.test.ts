import { commaAdvice, hasDecimalComma, numberFromText } from '../../../src/core/units/numberText';

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
  [`0' 11 7/8"`, '11.875', 'inch'],
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
  ['12,5', '12.5', 'none'],
  ['12,55', '12.55', 'none'],
  ['12,5555', '12.5555', 'none'],
  ['0,375', '0.375', 'none'],
  ['-0,375', '-0.375', 'none'],
  [',5', '0.5', 'none'],
  ['48,5"', '48.5', 'inch'],
  [`4' 3,5"`, '51.5', 'inch'],
])('%s is read as %s (%s)', (text, value, mark) => {
  const found = numberFromText(text);
  expect([found?.value.toString(), found?.mark]).toEqual([value, mark]);
});

test.each([
  '',
  'abc',
  '1,250',
  '24,905',
  '1250,500',
  '00,375',
  '1,250.5',
  '1,250,000',
  '12,',
  '3/0',
  '1/2/3',
  '1 2',
  '12 mm',
  '1e3',
  '--3',
  '3/8/2026',
  `4' 3' 2"`,
  `1'250`,
  '1\u2019250',
  `2' 12"`,
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
  ['1,250', 'its comma may mean decimals or thousands; write 1.250 or 1250'],
  [' -24,905 ', 'its comma may mean decimals or thousands; write -24.905 or -24905'],
  ['1,250"', 'its comma may mean decimals or thousands; write 1.250" or 1250"'],
  ['1,250.5', 'write a decimal point, and thousands without a mark, like 1250.5'],
  ['1,250,000', 'write a decimal point, and thousands without a mark, like 1250.5'],
  ['12,5', undefined],
  ['12.5', undefined],
  ['a,b', undefined],
  ['M22,5 x 1', undefined],
  [',', undefined],
  ['12,', undefined],
])('what is said to "%s": %s', (text, expected) => expect(commaAdvice(text)).toBe(expected));

test('a comma with three digits behind it is decimal where its column has decimal commas', () => {
  expect(['12,5', '0,375', '1,250', '12.5', '3/8'].map(hasDecimalComma)).toEqual([true, true, false, false, false]);
  expect(['1,250', '24,905', '1,250"'].map(text => numberFromText(text, 'decimal')?.value.toString())).toEqual([
    '1.25',
    '24.905',
    '1.25',
  ]);
  expect(numberFromText('1,250.5', 'decimal')).toBeUndefined();
});
