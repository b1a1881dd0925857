import { Decimal } from '../../../src/core/units/decimal';
import { checkReading, type ReadingLimits } from '../../../src/sheets/crimps/readingCheck';

const mm: ReadingLimits = { unit: 'mm', target: new Decimal('25'), tolerance: new Decimal('0.1') };
const inches: ReadingLimits = { unit: 'in', target: new Decimal('0.984'), tolerance: new Decimal('0.004') };

test.each([
  ['25.01', '25.01'],
  [' 25.01 ', '25.01'],
  ['25,01', '25.01'],
  ['+25.010', '25.01'],
  ['25.01 mm', '25.01'],
  ['0025.01', '25.01'],
  // 2 % of the target is the farthest that is not asked about.
  ['25.5', '25.5'],
])('%p is the reading %s mm', (typed, value) => {
  const answer = checkReading(typed, mm);
  expect('value' in answer && answer.value.eq(value)).toBe(true);
  expect(answer.kind).toBe('reading');
});

test.each([
  ['0.985', '0.985'],
  ['.985"', '0.985'],
  ['63/64', '0.984375'],
])('%p is the reading %s in', (typed, value) => {
  const answer = checkReading(typed, inches);
  expect('value' in answer && answer.value.eq(value)).toBe(true);
  expect(answer.kind).toBe('reading');
});

test.each([
  ['', /nothing was typed/],
  ['abc', /"abc" is not a reading/],
  ['25.0125.03', /is not a reading/],
  ['1,025.01', /is not a reading/],
  ['0', /0 is no diameter/],
  ['0.00', /0 is no diameter/],
  ['-25.01', /below 0/],
  ['0.985', /looks like inches \(25\.02 mm\)/],
  ['25/32', /looks like inches, but this row is in mm/],
  ['0.985 in', /is in inches, but this row is in mm/],
  ['0.985"', /is in inches, but this row is in mm/],
  ['25.01.2026', /looks like a date/],
  ['2026-01-25', /looks like a date/],
  ['25/01/2026', /looks like a date/],
  // Day number of 2026-01-25 in a sheet.
  ['46047', /46047 looks like a date/],
  ['2501', /is the decimal point missing\? 25\.01/],
  ['12.7', /cannot be a reading of a crimp of 25 mm/],
])('%p is refused', (typed, sentence) => {
  const answer = checkReading(typed, mm);
  expect(answer.kind).toBe('refused');
  expect('sentence' in answer && answer.sentence).toMatch(sentence);
});

test('millimetres among inches are refused', () => {
  expect(checkReading('25.01', inches)).toEqual({
    kind: 'refused',
    sentence: '25.01 looks like millimetres (0.9846 in): set the caliper to inches and measure again',
  });
});

test.each(['25.51', '24.4', '28', '20'])('%s mm is far from 25: it is asked about', typed => {
  expect(checkReading(typed, mm)).toMatchObject({ kind: 'ask', value: new Decimal(typed) });
});
