import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { dayNumber, isoDate } from '../../../src/core/units/sheetDate';
import { dueDay, dueList, gaugeRefusals, laterChecks } from '../../../src/sheets/gauges/gaugeDue';
import { gaugesSheet } from '../../../src/sheets/gauges/gaugesSheet';
import { checkOfGauge, studyOfGauge } from '../../../src/sheets/gauges/gaugeStudies';
import { pressureRangeNote } from '../../../src/sheets/gauges/pressureRange';
import { readGauges } from '../../../src/sheets/gauges/readGauges';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const day = (text: string) => dayNumber(text)!;
const OWN: readonly (readonly FakeCell[])[] = [
  ['Gauges of the workshop', '', '', '', '', '', '', ''],
  [],
  ['Gauge no.', 'Kind', 'Calibrated on', 'Interval (months)', 'Range from', 'Range to', 'Unit', 'U'],
  ['Caliper 3', 'vernier caliper', '2026-01-01', 12, 0, 150, 'mm', '0,03'],
  ['Gauge 7', 'pressure gauge', '2025-10-01', 12, 0, 1000, 'bar', 10],
  ['Gauge 8', 'pressure gauge', '2026-03-01', '', 0, 1600, 'bar', ''],
  ['D26', 'die', '2026-11-01', 6, '', '', '', ''],
  ['Gauge 9', 'pressure gauge', '05/06/2026', 12, 0, 15000, 'psi', ''],
];
const gauges = async (rows = OWN) => {
  const { workbook } = fakeWorkbook({ Gauges: rows }, { sheet: 'Gauges', address: 'A1' }, { hiddenRows: { Gauges: [4] } });
  return (await readGauges(workbook))!;
};

test('own headings, a title block, months; every row is read, hidden ones too, and a date that may be two days is said', async () => {
  const { gauges: all, report } = await gauges();
  expect(all.map(({ name, kind, every }) => [name, kind, every])).toEqual([
    ['Caliper 3', 'caliper', { months: 12 }],
    ['Gauge 7', 'pressure gauge', { months: 12 }],
    ['Gauge 8', 'pressure gauge', undefined],
    ['D26', 'die', { months: 6 }],
    ['Gauge 9', 'pressure gauge', { months: 12 }],
  ]);
  expect(all[0]!.uncertainty!.toNumber()).toBe(0.03);
  expect(report.leftOut.map(({ row, reason }) => [row, reason])).toEqual([[8, 'problem']]);
});

// Months and years are those of the calendar.
test.each<[string, FakeCell, string]>([
  ['Interval (days)', 90, '2026-11-29'],
  ['Interval (weeks)', 26, '2027-03-01'],
  ['Interval (months)', 6, '2027-02-28'],
  ['Interval (years)', 2, '2028-08-31'],
  ['Interval (years)', 0.5, '2027-02-28'],
  ['Interval', '10 days', '2026-09-10'],
  ['Interval', '3 weeks', '2026-09-21'],
  ['Interval', '12 months', '2027-08-31'],
  ['Interval', 'every 6 months', '2027-02-28'],
  ['Interval', '18 mths', '2028-02-29'],
  ['Interval', '6-monthly', '2027-02-28'],
  ['Interval', '1 year', '2027-08-31'],
  ['Interval', 'weekly', '2026-09-07'],
  ['Interval', 'monthly', '2026-09-30'],
  ['Interval', 'every month', '2026-09-30'],
  ['Interval', 'quarterly', '2026-11-30'],
  ['Interval', 'half-yearly', '2027-02-28'],
  ['Interval', 'half yearly', '2027-02-28'],
  ['Interval', 'every half year', '2027-02-28'],
  ['Interval', 'annually', '2027-08-31'],
  ['Interval', 'annual', '2027-08-31'],
  ['Interval', 'yearly', '2027-08-31'],
])('%s %s from 2026-08-31: next on %s', async (heading, interval, next) => {
  const { gauges: all } = await gauges([
    ['Gauge no.', 'Kind', 'Calibrated on', heading],
    ['Caliper 3', 'vernier caliper', '2026-08-31', interval],
  ]);
  expect(all.map(gauge => isoDate(dueDay(gauge)!))).toEqual([next]);
});

test('an interval beyond all dates is none', async () => {
  const { gauges: all } = await gauges([
    ['Gauge no.', 'Kind', 'Calibrated on', 'Interval (months)'],
    ['Caliper 3', 'vernier caliper', '2026-08-31', 1e9],
  ]);
  expect(dueDay(all[0]!)).toBeUndefined();
});

test('months that are not whole are refused', async () => {
  const { gauges: all, report } = await gauges([
    ['Gauge no.', 'Kind', 'Calibrated on', 'Interval (months)'],
    ['Caliper 3', 'vernier caliper', '2026-08-31', 1.5],
  ]);
  expect(all[0]!.every).toBeUndefined();
  expect(report.leftOut[0]!.sentence).toBe('interval is 1.5 months: enter whole months, or days');
});

test('what is due: what cannot be dated first, then the most overdue', async () => {
  const { gauges: all } = await gauges();
  expect(dueList(all, day('2026-10-05')).map(({ gauge, sentence }) => `${gauge.name}: ${sentence}`)).toEqual([
    'Gauge 8: no interval: write in how many days it is checked again',
    'D26: its check of 2026-11-01 lies ahead of 2026-10-05',
    'Gauge 9: no date of its last check: check it first',
    'Gauge 7: overdue by 4 days, since 2026-10-01',
    // 26 days of October, November and December, and one.
    'Caliper 3: due in 88 days, on 2027-01-01',
  ]);
});

test.each([
  ['2027-01-01', []],
  ['2027-01-02', ['Caliper 3: overdue by 1 day, since 2027-01-01']],
])('a record on %s: %j', async (on, refusals) => {
  expect(gaugeRefusals((await gauges()).gauges, ['caliper 3'], day(on))).toEqual(refusals);
});

test.each([
  ['on the same day', ['Caliper 3', 'caliper', '2026-01-01', 12, 0, 150, 'mm', '']],
  ['of another range', ['Caliper 3', 'caliper', '2026-02-01', 12, 0, 300, 'mm', '']],
  ['of another kind', ['Caliper 3', 'pressure gauge', '2026-02-01', 12, 0, 150, 'mm', '']],
  ['without a day', ['Caliper 3', 'caliper', '', 12, 0, 150, 'mm', '']],
])('a gauge that is not on the sheet is refused, and one that stands there twice: %s', async (_, again) => {
  const { gauges: all } = await gauges([...OWN, again]);
  expect(gaugeRefusals(all, ['Caliper 5', 'Caliper 3', ''], day('2026-10-05'))).toEqual([
    'Caliper 5: not on sheet Gauges, no check of it is known',
    'Caliper 3: twice on sheet Gauges',
  ]);
});

describe('a row for each check of one gauge', () => {
  const checks = async () =>
    (
      await gauges([
        ['Gauge', 'Kind', 'Checked', 'Every (months)', 'Next due'],
        ['C3', 'caliper', '2026-10-01', 12, ''],
        ['C3', 'caliper', '2024-03-01', 12, ''],
        ['C3', 'caliper', '2025-09-25', 12, ''],
      ])
    ).gauges;
  test.each([
    ['2026-09-20', []],
    ['2026-09-26', ['C3: overdue by 1 day, since 2026-09-25']],
    ['2026-10-02', []],
    ['2025-03-02', ['C3: overdue by 1 day, since 2025-03-01']],
  ])('the last one before the day counts: %s', async (on, refusals) => {
    expect(gaugeRefusals(await checks(), ['c3'], day(on), day('2026-10-09'))).toEqual(refusals);
  });
  test('before all of them nobody knows; what is due counts the gauge once', async () => {
    const all = await checks();
    expect(gaugeRefusals(all, ['C3'], day('2024-02-01'), day('2026-10-09'))).toEqual([]);
    expect(laterChecks(all, ['C3'], day('2024-02-01'), day('2026-10-09'))).toEqual([
      'C3: its check of 2024-03-01 came after its use on 2024-02-01: whether it was due then is not known',
    ]);
    expect(dueList(all, day('2026-10-09')).map(({ sentence }) => sentence)).toEqual(['due in 357 days, on 2027-10-01']);
  });
  test('a check that lies ahead of the day of the record is refused', async () => {
    const [first] = await checks();
    expect(gaugeRefusals([first!], ['C3'], day('2026-09-20'), day('2026-09-30'))).toEqual([
      'C3: its check of 2026-10-01 lies ahead of 2026-09-20',
    ]);
  });
});

describe('a pressure gauge reads best in the middle half of its range (common practice)', () => {
  const note = async (name: string, value: number, unit = 'bar') => {
    const gauge = (await gauges()).gauges.find(each => each.name === name)!;
    return pressureRangeNote(gauge, { value: new Decimal(value), unit: measureUnit('pressure', unit)! });
  };
  test.each([
    ['Gauge 7', 250, undefined],
    ['Gauge 7', 750, undefined],
    [
      'Gauge 7',
      249,
      'Gauge 7 reads at the bottom of its range 249 bar: it reads best at 250 … 750 bar (25 … 75 % of its range, common practice).',
    ],
    [
      'Gauge 7',
      1001,
      'Gauge 7 does not reach 1001 bar: it reads best at 250 … 750 bar (25 … 75 % of its range, common practice).',
    ],
    ['Caliper 3', 1001, undefined],
  ])('%s at %d bar', async (name, value, said) => {
    expect(await note(name, value)).toBe(said);
  });
  test('psi and bar are converted', async () => {
    // 550 bar = 7977 psi, of 15,000 psi 53 %.
    expect(await note('Gauge 9', 550)).toBeUndefined();
    expect(await note('Gauge 9', 850)).toMatch(/top of its range/);
  });
});

describe('studies', () => {
  test('check: ten readings with their numbers beside them', () => {
    const values = [
      ['No.', 'Reading'],
      ...[9.99, 10.01, 10, 10.02, 9.98, 10, 10.01, 9.99, 10.01, 10].map((reading, n) => [n + 1, reading]),
    ];
    const { check, count, isCapable } = checkOfGauge(values, new Decimal(10), new Decimal('0.24'));
    expect(count).toBe(10);
    // By hand: mean 10.001, squares 0.00129, s = √(0.00129 ÷ 9) = 0.011972; Cg = 0.048 ÷ 0.071833; Cgk = (0.024 − 0.001) ÷ 0.035917.
    expect(check.bias.toNumber()).toBeCloseTo(0.001, 12);
    expect(check.cg.toNumber()).toBeCloseTo(0.048 / (6 * Math.sqrt(0.00129 / 9)), 9);
    expect(check.cgk.toNumber()).toBeCloseTo(0.023 / (3 * Math.sqrt(0.00129 / 9)), 9);
    expect(isCapable).toBe(false);
  });

  test.each([
    [25, [], ''],
    [2.5, [], 'All readings, the first 25, differ from the reference 2.5 by more than 20 %: is it a slip of the decimal point?'],
    [25, [250], 'Reading 11 (250) differs from the reference 25 by more than 20 %: is it a slip of the decimal point?'],
    [
      25,
      [250, 2.5],
      'Readings 11 (250), 12 (2.5) differ from the reference 25 by more than 20 %: is it a slip of the decimal point?',
    ],
  ])('readings of 25 against a reference of %d, with %j: %s', (reference, more, doubt) => {
    const readings = [25, 25.01, 25, 25.01, 25, 25.01, 25, 25.01, 25, 25.01, ...more].map(reading => [reading]);
    expect(checkOfGauge(readings, new Decimal(reference), new Decimal('0.24')).doubt).toBe(doubt);
  });

  test('study of one person: a part a row; headings and names are no readings', () => {
    const values = [
      ['Part', 1, 2],
      ['a', 10.0, 10.02],
      ['b', 11.0, 11.02],
      ['c', 12.0, 11.98],
    ];
    const { study, parts, repeats, finding } = studyOfGauge(values, new Decimal('0.6'));
    expect([parts, repeats]).toEqual([3, 2]);
    // Repeatability: each pair differs by 0.02: variance 0.02² ÷ 2 = 0.0002. 6·√0.0002 ÷ 0.6 = 14.1 %.
    expect(study.sources.find(({ source }) => source === 'Repeatability')!.variance).toBeCloseTo(0.0002, 10);
    expect(study.sources.find(({ source }) => source === 'Reproducibility')!.variance).toBeUndefined();
    expect(finding).toBe('14.1 % of the tolerance: may do, depending on the work');
  });

  test('too few readings say what to do', () => {
    expect(() => checkOfGauge([[10], [10.01]], new Decimal(10), new Decimal(1))).toThrow('take ten or more');
  });
});

test('a new sheet Gauges is read again', async () => {
  const { workbook } = fakeWorkbook({ Jobs: [['a']] }, { sheet: 'Jobs', address: 'A1' });
  await workbook.write(gaugesSheet().changes);
  await workbook.write([
    { kind: 'values', at: { sheet: 'Gauges', address: 'A2:E2' }, values: [['K 1', 'caliper', 'mm', '2026-10-01', 365]] },
  ]);
  expect((await readGauges(workbook))!.gauges[0]).toMatchObject({ name: 'K 1', kind: 'caliper', every: { days: 365 } });
});

test.each<[string, readonly (readonly FakeCell[])[], readonly string[]]>([
  [
    'a day on which the next check is due, instead of an interval',
    [
      ['Tool #', 'Type', 'Cal date', 'Cal due'],
      ['C3', '6" caliper', '2025-12-09', '2026-12-09'],
      ['G7', 'pressure gauge', '2025-10-02', '2026-10-02'],
    ],
    ['pressure gauge G7: overdue by 58 days, since 2026-10-02', 'caliper C3: due in 10 days, on 2026-12-09'],
  ],
  [
    'both: the earlier one counts',
    [
      ['Gage', 'Kind', 'Last cal', 'Interval (days)', 'Next due'],
      ['C3', 'caliper', '2026-11-01', 10, '2027-11-01'],
      ['C4', 'caliper', '2026-11-01', 365, '2026-12-01'],
    ],
    ['caliper C3: overdue by 18 days, since 2026-11-11', 'caliper C4: due in 2 days, on 2026-12-01'],
  ],
  [
    'intervals with their unit in the cell',
    [
      ['Gauge', 'Kind', 'Checked', 'Every'],
      ['C3', 'caliper', '2026-11-01', '2 weeks'],
      ['C4', 'caliper', '2026-11-01', 'yearly'],
      ['C5', 'caliper', '2026-11-01', 'now and then'],
    ],
    [
      'caliper C5: no interval: write in how many days it is checked again',
      'caliper C3: overdue by 14 days, since 2026-11-15',
      'caliper C4: due in 337 days, on 2027-11-01',
    ],
  ],
])('gauges of other workshops: %s', async (_, rows, expected) => {
  const { gauges: all } = await gauges(rows);
  expect(dueList(all, day('2026-11-29')).map(({ gauge, sentence }) => `${gauge.kind} ${gauge.name}: ${sentence}`)).toEqual(
    expected,
  );
});
