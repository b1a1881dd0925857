import {
  ambiguousDate,
  dateOrders,
  dayNumber,
  isDateFormat,
  isoDate,
  isoMoment,
  looksLikeDate,
  momentNumber,
} from '../../../src/core/units/sheetDate';

/** Day numbers: 2026-11-29 is 46355 in spreadsheets (1900-01-01 = 1, 1900 counted as a leap year); computed with R: as.Date + 25569. */
test.each([
  ['2026-11-29', 46_355],
  ['2026/11/29', 46_355],
  ['2026.11.29', 46_355],
  ['29.11.2026', 46_355],
  ['29. 11. 2026', 46_355],
  ['29/11/2026', 46_355],
  ['11/29/2026', 46_355],
  ['29-11-2026', 46_355],
  ['29 Nov 2026', 46_355],
  ['29-Nov-2026', 46_355],
  ['29. November 2026', 46_355],
  ['Nov 29, 2026', 46_355],
  ['03/03/2026', 46_084],
  ['3.4.2026', 46_115],
  ['2026-11-29 12:00', 46_355.5],
  ['2026-11-29T06:00:00Z', 46_355.25],
  ['29.11.2026 18:00:00', 46_355.75],
  ['11/29/2026 6:00 PM', 46_355.75],
  ['2028-02-29', 46_812],
])('%s is %d', (text, moment) => {
  expect(momentNumber(text)).toBeCloseTo(moment, 9);
  expect(dayNumber(text)).toBe(Math.floor(moment));
});

test.each([
  '2026-02-29',
  '31.04.2026',
  '29.11.26',
  '29/11/26',
  '2026-13-01',
  '13/13/2026',
  '2026-11-29 25:00',
  'soon',
  '',
  '29 Foo 2026',
  '29 ma 2026',
])('"%s" is no date', text => expect([momentNumber(text), ambiguousDate(text)]).toEqual([undefined, undefined]));

test('a date that may be read either way round is refused with both readings', () => {
  expect(momentNumber('03/04/2026')).toBeUndefined();
  expect(ambiguousDate('03/04/2026')).toBe('write 2026-04-03 or 2026-03-04');
  expect(ambiguousDate('3-4-2026 14:30')).toBe('write 2026-04-03 or 2026-03-04');
  expect(['29/11/2026', '03/03/2026', '3.4.2026', '2026-03-04'].map(ambiguousDate)).toEqual(Array(4).fill(undefined));
});

test('numbers of the sheet keep their time of day', () => {
  expect([momentNumber(46_355.25), dayNumber(46_355.25), isoDate(46_355.25), isoMoment(46_355.25)]).toEqual([
    46_355.25,
    46_355,
    '2026-11-29',
    '2026-11-29 06:00',
  ]);
  expect([isoMoment(46_355), momentNumber(0), momentNumber(3e6)]).toEqual(['2026-11-29', undefined, undefined]);
});

test('what looks like a date where a length is due', () => {
  expect([36_525, 36_526, 46_355, 46_355.5, 73_050, 73_051].map(looksLikeDate)).toEqual([false, true, true, false, true, false]);
});

test.each([
  ['yyyy-mm-dd', true],
  ['d. mmm', true],
  ['[$-407]dd.mm.yyyy', true],
  ['General', false],
  ['0.00 "day"', false],
  ['hh:mm', false],
  ['@', false],
])('number format %s shows dates: %s', (format, expected) => expect(isDateFormat(format)).toBe(expected));

test.each([
  [['9/1/2026', '9/13/2026'], { '/': 'month' }],
  [['13/9/2026 14:30', '9/1/2026'], { '/': 'day' }],
  // Each mark is a way of writing of its own.
  [['13-9-2026', '9/13/2026'], { '-': 'day', '/': 'month' }],
  // Two hands that write differently: nobody knows which of them wrote the third.
  [['13/9/2026', '9/13/2026', '9/1/2026'], {}],
  [['9/1/2026', '3/3/2026', '2026-01-09', '13.9.2026', '31/2/2026', '13/13/2026', 'soon'], {}],
])('what a column of %j says of day and month', (texts, orders) => expect(dateOrders(texts)).toEqual(orders));

test('the order of its column settles a date that could be two', () => {
  const iso = (text: string, orders: Parameters<typeof momentNumber>[1]) => isoDate(momentNumber(text, orders)!);
  expect(iso('9/1/2026', { '/': 'month' })).toBe('2026-09-01');
  expect(iso('9/1/2026', { '/': 'day' })).toBe('2026-01-09');
  expect(momentNumber('9-1-2026', { '/': 'day' })).toBeUndefined();
  expect(iso('2026-01-09', { '-': 'month' })).toBe('2026-01-09');
});
