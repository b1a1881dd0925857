import { errorOf, FRESH_RECALL, requestOf, type RecallFields } from '../../../src/sheets/recall/recallFields';
import { dayNumber } from '../../../src/core/units/sheetDate';

const kindOf = (gauge: string) => (gauge.trim() === 'Caliper 2' ? 'caliper' : '');
const asked = (fields: Partial<RecallFields>) => requestOf({ ...FRESH_RECALL, ...fields }, kindOf);
const day = (text: string) => dayNumber(text)!;

test.each<[string, Partial<RecallFields>, unknown]>([
  ['a lot', { lot: ' F7 ', of: 'hose', part: ' Larch DN 12 ' }, { by: 'lot', lot: 'F7', of: 'hose', part: 'Larch DN 12' }],
  ['a gauge', { by: 'gauge', gauge: ' Caliper 2 ' }, { by: 'gauge', name: 'Caliper 2', kind: 'caliper', since: undefined }],
  [
    'a gauge since a day',
    { by: 'gauge', gauge: 'Caliper 2', since: ' 2026-09-01 ' },
    { by: 'gauge', name: 'Caliper 2', kind: 'caliper', since: day('2026-09-01') },
  ],
  [
    'the days of a week',
    { by: 'days', from: '2026-09-01', to: ' 2026-09-07' },
    { by: 'days', from: day('2026-09-01'), to: day('2026-09-07') },
  ],
  [
    'one day',
    { by: 'days', from: '2026-09-01', to: '2026-09-01' },
    { by: 'days', from: day('2026-09-01'), to: day('2026-09-01') },
  ],
])('%s is asked back', (_, fields, request) => expect(asked(fields)).toEqual(request));

test.each<[string, Partial<RecallFields>, string]>([
  ['no lot', { lot: ' ' }, 'Enter the lot.'],
  ['no gauge', { by: 'gauge', gauge: ' ', since: '2026-09-01' }, 'Enter the gauge.'],
  [
    'a day that is none',
    { by: 'gauge', gauge: 'Caliper 2', since: 'last week' },
    'Since: enter a date, like 2026-09-01, or leave it blank.',
  ],
  ['no first day', { by: 'days', to: '2026-09-01' }, 'Enter both days, like 2026-09-01.'],
  ['no last day', { by: 'days', from: '2026-09-01' }, 'Enter both days, like 2026-09-01.'],
  ['days the wrong way round', { by: 'days', from: '2026-09-02', to: '2026-09-01' }, 'The first day is after the last.'],
])('%s: says what to enter', (_, fields, sentence) => expect(asked(fields)).toBe(sentence));

const CALIPER = 'Enter by how much it read too high, with its unit, like 0.03 mm; negative if too low.';
const PRESSURE = 'Enter by how much it read too high, with its unit, like 0.03 bar; negative if too low.';
const UNKNOWN = 'Nobody knows what this gauge measures: sheet Gauges does not say. Enter the unit, too: 0.03 mm or 5 bar.';

test.each<[string, string, string]>([
  ['0.03', 'caliper', '0.03 mm'],
  ['+0.03', 'caliper', '0.03 mm'],
  ['-0.001 in', 'caliper', '-0.001 in'],
  ['−0,02', 'caliper', '-0.02 mm'],
  ['5', 'pressure gauge', '5 bar'],
  ['-50 psi', 'pressure gauge', '-50 psi'],
  ['0.03 mm', '', '0.03 mm'],
  [' -3 bar', '', '-3 bar'],
])('what a gauge read too high: %s of a %s is %s', (text, kind, read) => {
  const { value, unit } = errorOf(text, kind) as Exclude<ReturnType<typeof errorOf>, string | undefined>;
  expect(`${value.toString()} ${unit.symbol}`).toBe(read);
});

test.each([
  ['much', 'caliper', CALIPER],
  ['5 bar', 'caliper', CALIPER],
  ['much', 'pressure gauge', PRESSURE],
  ['0.03', '', UNKNOWN],
  ['much', '', UNKNOWN],
])('%s of a %s cannot be read: says what to enter', (text, kind, sentence) => expect(errorOf(text, kind)).toBe(sentence));

test('a blank is no error of the gauge', () => expect(errorOf('  ', 'caliper')).toBeUndefined());
