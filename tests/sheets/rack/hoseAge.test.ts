import { madeDay, monthsBetween } from '../../../src/sheets/rack/hoseAge';

test('days come as serial numbers (45,658 is 1 January 2025, as spreadsheets count), as text or as a year', () => {
  expect([45_658, '2025-01-01', '2025-01', 2025, '2025', '1 Jan 2025'].map(madeDay)).toEqual(Array(6).fill('2025-01-01'));
  expect(['', 'spring', '2025-13', '2025-13-01', 500, true, { error: '#N/A' }].map(madeDay)).toEqual(Array(7).fill(''));
});

test('days that no calendar has are refused; 2024 is a leap year, 2026 and 2100 are none (Gregorian calendar)', () => {
  expect(['2026-02-30', '2026-02-29', '2100-02-29', '2026-04-31'].map(madeDay)).toEqual(['', '', '', '']);
  expect(madeDay('2024-02-29')).toBe('2024-02-29');
});

test('a date that may be read either way round is refused, one that may not is taken', () => {
  expect([madeDay('03/04/2025'), madeDay('13/04/2025')]).toEqual(['', '2025-04-13']);
});

test('quarters, as hoses are marked, count from their first day; 1/2026 may be a month and is refused', () => {
  const second = ['2026 Q2', '2026-Q2', 'Q2 2026', 'q2/2026', '2Q26', '2Q2026'];
  expect(second.map(madeDay)).toEqual(second.map(() => '2026-04-01'));
  expect(['5Q26', '2026 Q0', '1/2026', '26Q1', 'Q2'].map(madeDay)).toEqual(['', '', '', '', '']);
});

test.each([
  ['2020-06-15', '2026-06-15', 72],
  ['2020-06-15', '2026-06-14', 71],
  ['2025-12-31', '2026-01-01', 0],
])('from %s to %s are %i whole months', (from, to, months) => {
  expect(monthsBetween(from, to)).toBe(months);
});
