import { called, col, FakeCellError } from '../host/customFunctions';
import { crimpCause } from '../../src/functions/causes';

const one = (value: unknown): any[][] => [[value]];
const none = null as never;
const close = (value: number, digits = 6) => expect.closeTo(value, digits);
const NA = new FakeCellError('#N/A', 'no such part');
const HEADER = ['Combination', 'Crimps', 'Mean deviation', 'Correction', 'Finding', 'Since', 'Low', 'High'];

// Sets S1 and S2 of the check values, computed in R 4.2.
const names = ['A', 'B', 'C', 'D', 'E'].flatMap(name => Array<string>(6).fill(name));
const s1 = [
  0.11, 0.08, 0.12, 0.09, 0.1, 0.13, 0.07, 0.1, 0.12, 0.11, 0.09, 0.08, 0.12, 0.09, 0.1, 0.08, 0.14, 0.11, 0.1, 0.06, 0.09, 0.12,
  0.11, 0.1, 0.09, 0.13, 0.11, 0.1, 0.08, 0.12,
];
const s2 = s1.map((value, index) => (names[index] === 'C' ? value + 0.1 : value - 0.1));

interface Optional {
  readonly die?: any[][];
  readonly confidence?: any[][];
  readonly share?: any[][];
  readonly when?: any[][];
  readonly tolerance?: any[][];
}
const cause = (combination: any[][], deviation: any[][], { die, confidence, share, when, tolerance }: Optional = {}) =>
  called(() => crimpCause(combination, deviation, tolerance ?? one(0.05), die ?? none, confidence, share, when));
const S1 = (optional?: Optional) => cause(col(...names), col(...s1), optional);

describe('the table', () => {
  test('all combinations off alike: the machine, and what each adds of its own', () => {
    expect(S1()).toEqual([
      HEADER,
      ['All', 30, close(0.101667), close(-0.101667), 'MACHINE', '', close(0.094254), close(0.10908)],
      ...[0.003333, -0.006667, 0.005, -0.005, 0.003333].map((own, index) => {
        return ['ABCDE'[index], 6, close(own), 0, 'WITH THE MACHINE', '', expect.any(Number), expect.any(Number)];
      }),
    ]);
  });

  test('one combination off: its own setting', () => {
    const [, all, , , c] = cause(col(...names), col(...s2));
    expect(all).toEqual(['All', 30, close(0.000417), 0, 'SETTING', '', close(-0.007764), close(0.008598)]);
    expect(c).toEqual(['C', 6, close(0.20625), close(-0.20625), 'OWN SETTING', '', close(0.187717), close(0.224783)]);
  });

  // The other combinations are right, to a tenth of the tolerance; a setting is not changed on one crimp.
  test.each([
    ['one crimp', [0.3], 'CANNOT TELL'],
    ['two crimps', [0.3, 0.31], 'OWN SETTING'],
  ])('%s of a combination far off: %p is %s', (_, far, finding) => {
    const right = s1.map(value => value - 0.1);
    const rows = cause(col(...names, ...far.map(() => 'F')), col(...right, ...far), { tolerance: one(0.2) });
    expect(rows.find(([name]) => name === 'F')!.slice(1, 5)).toEqual([
      far.length,
      expect.any(Number),
      expect.any(Number),
      finding,
    ]);
  });

  test('names are told apart without case and blanks, shown as they first came; numbers stay numbers; blank rows are skipped', () => {
    const result = cause(
      col(' Alder ', null, 'alder', 12, '12', '', 'ALDER', 'Birch  DN 12', 'birch dn 12'),
      col(0.1, '', 0.1, 0.1, 0.1, null, 0.1, '0.1', 0.1),
    );
    expect(result.map(([name, crimps, , , finding]) => [name, crimps, finding])).toEqual([
      ['Combination', 'Crimps', 'Finding'],
      ['All', 7, 'MACHINE'],
      ['Alder', 3, 'WITH THE MACHINE'],
      [12, 2, 'WITH THE MACHINE'],
      ['Birch  DN 12', 2, 'WITH THE MACHINE'],
    ]);
  });

  test('rows of zeros are the blank rows of a host that has no blanks', () => {
    expect(cause(col(...names, 0, 0), col(...s1, 0, 0))).toEqual(S1());
    const die = col(...names.map(() => 'D23'), 0);
    expect(cause(col(...names, 0), col(...s1, 0), { die })[1]![4]).toBe('MACHINE OR DIE');
  });

  test('nothing filled in yet: not enough data', () => {
    expect(cause(col(null, ''), col(null, ' '))).toEqual([HEADER, ['All', 0, '', 0, 'NOT ENOUGH DATA', '', '', '']]);
  });

  test('too few data: every row is open, and it says what to measure next', () => {
    const rows = cause(col('A', 'A', 'B', 'B'), col(0.1, 0.1, 0.12, 0.12));
    expect(rows.map(row => row[4])).toEqual(['Finding', 'NOT ENOUGH DATA', 'CANNOT TELL', 'CANNOT TELL', 'one more combination']);
    expect(rows[4]!.slice(0, 4)).toEqual(['Measure next', 2, '', '']);
    const repeats = cause(col('A', 'A', 'B', 'C'), col(0.1, 0.1, 0.12, 0.12));
    expect(repeats[5]).toEqual(['Measure next', 2, '', '', 'B', '', '', '']);
  });

  test('a crimp that is set aside is named by its row, blank rows counted', () => {
    const slip = s1.map((value, index) => (index === 8 ? 0.7 : value - 0.1));
    const rows = cause(col('', ...names), col('', ...slip));
    expect(rows[1]![4]).toBe('IN SPEC');
    expect(rows[7]).toEqual(['Crimp 10', 1, close(0.7, 1), 0, 'SET ASIDE', '', '', '']);
    expect(rows).toHaveLength(8);
  });
});

describe('dies', () => {
  test('one die throughout, as a column or one value: machine or die, and no row of its own', () => {
    const rows = (die: any[][]) => S1({ die });
    expect(rows(one('D23'))[1]![4]).toBe('MACHINE OR DIE');
    const column = rows(col(...names.map((_, index) => (index % 2 ? 'D23' : ' d23'))));
    expect(column[1]![4]).toBe('MACHINE OR DIE');
    expect(column).toHaveLength(7);
    expect(rows(one(null))[1]![4]).toBe('MACHINE');
  });

  test('two dies or more have a row each, before the combinations', () => {
    const die = col(...names.map(name => (name < 'C' ? 'D19' : 23)));
    const rows = S1({ die });
    expect(rows.slice(1, 5).map(([name, crimps, , correction, finding]) => [name, crimps, correction, finding])).toEqual([
      ['All', 30, close(-0.101667), 'MACHINE'],
      ['Die D19', 12, 0, 'WITH THE MACHINE'],
      ['Die 23', 18, 0, 'WITH THE MACHINE'],
      ['A', 6, 0, 'WITH THE MACHINE'],
    ]);
  });

  test('a die that is missing in a row, or is the 0 of a host without blanks: dies are not told apart', () => {
    for (const blank of [null, '', 0]) {
      const die = col(...names.map((name, index) => (index === 4 ? blank : name < 'C' ? 'D19' : 'D23')));
      expect(S1({ die })).toEqual(S1());
    }
  });

  test('setting or die cannot be told where they go together: that combination with another die', () => {
    const die = col(...names.map(name => (name === 'C' ? 'D24' : 'D22')));
    const rows = cause(col(...names), col(...s2), { die });
    expect(rows.slice(1).map(([name, , , correction, finding]) => [name, correction, finding])).toEqual([
      ['All', 0, 'CANNOT TELL'],
      ['Die D22', 0, 'WITH THE MACHINE'],
      ['Die D24', 0, 'CANNOT TELL'],
      ['A', 0, 'WITH THE MACHINE'],
      ['B', 0, 'WITH THE MACHINE'],
      ['C', 0, 'CANNOT TELL'],
      ['D', 0, 'WITH THE MACHINE'],
      ['E', 0, 'WITH THE MACHINE'],
      ['Measure next', '', 'C, with another die that fits'],
    ]);
  });
});

describe('when', () => {
  // One crimp of each combination a day; the machine shifts on the fourth.
  const shiftedLate = s1.map((value, index) => value - (index % 6 < 3 ? 0.1 : 0));
  const since = (day: (index: number) => unknown) => {
    const rows = cause(col(...names), col(...shiftedLate), { when: col(...names.map((_, index) => day(index % 6))) });
    return [rows[1]![4], rows[1]![5]];
  };

  test('since is the cell as it came: a date stays a number, text stays text', () => {
    expect(since(day => 46_000 + day)).toEqual(['MACHINE', 46_003]);
    expect(since(day => 46_000.25 + day)).toEqual(['MACHINE', 46_003.25]);
    expect(since(day => day)).toEqual(['MACHINE', 3]);
    expect(since(day => ` ${day + 1}`)).toEqual(['MACHINE', ' 4']);
    expect(since(day => `2026-03-1${day}`)).toEqual(['MACHINE', '2026-03-13']);
    expect(since(day => `2026-03-11 ${13 + day}:05`)).toEqual(['MACHINE', '2026-03-11 16:05']);
    expect(since(day => `${8 + day}:30`)).toEqual(['MACHINE', '11:30']);
    expect(since(day => (day % 2 ? 46_000 + day : `2025-12-${9 + day}`.replace('-9', '-09')))).toEqual(['MACHINE', 46_003]);
    expect(since(day => ({ type: 'FormattedNumber', basicType: 'Double', basicValue: 46_000 + day }))).toEqual([
      'MACHINE',
      46_003,
    ]);
  });

  test('a blank in any row, the 0 of a host among dates, or one value for all: no changes with time', () => {
    const without = cause(col(...names), col(...shiftedLate));
    for (const blank of [null, ' ', 0]) {
      const when = col(...names.map((_, index) => (index === 2 ? blank : 46_000 + (index % 6))));
      expect(cause(col(...names), col(...shiftedLate), { when })).toEqual(without);
    }
    expect(cause(col(...names), col(...shiftedLate), { when: one(46_000) })).toEqual(without);
  });

  test('rows in any order', () => {
    const order = names.map((_, index) => (index * 11) % 30);
    const mixed = <T>(values: readonly T[]) => col(...order.map(index => values[index]));
    const when = mixed(names.map((_, index) => 46_000 + (index % 6)));
    expect(cause(mixed(names), mixed(shiftedLate), { when })[1]!.slice(4, 6)).toEqual(['MACHINE', 46_003]);
  });
});

test('a column of tolerances: the smallest decides about the machine', () => {
  const tolerance = col(...names.map(name => (name < 'C' ? 0.05 : 0.1)));
  const small = (optional: Optional) => cause(col(...names), col(...s1.map(value => value - 0.067)), optional)[1]!;
  expect(small({ tolerance }).slice(3, 5)).toEqual([close(-0.034667), 'MACHINE']);
  expect(small({ tolerance: one(0.1) }).slice(3, 5)).toEqual([0, 'IN SPEC']);
});

describe('errors', () => {
  test.each<[string, any[], string]>([
    [
      'columns of unequal height',
      [col('A', 'B'), col(1)],
      '#VALUE! combination has 2 rows, deviation has 1: give columns of the same number of rows',
    ],
    ['a deviation that is missing', [col('A', 'B'), col(0.1, null)], '#VALUE! deviation in row 2 is blank: fill it in'],
    ['a name that is missing', [col('', 'B'), col(0.1, 0.2)], '#VALUE! combination in row 1 is blank: fill it in'],
    [
      'text for a number',
      [col('A'), col('x')],
      '#VALUE! deviation in row 1 is "x": enter the deviation, like 12.5, 3/8 or 1 1/2',
    ],
    ['the first error that came in', [col('A', NA), col(0.1, new FakeCellError('#DIV/0!'))], '#N/A no such part'],
    [
      'an error that cannot be passed on',
      [col('A'), col(new FakeCellError('#REF!'))],
      '#N/A deviation in row 1 holds #REF!: correct that cell first',
    ],
    [
      'more than 500 combinations',
      [col(...Array.from({ length: 501 }, (_, k) => `N${k}`)), col(...Array(501).fill(0))],
      '#VALUE! combination has 501 names: give at most 500 combinations of one machine a call',
    ],
  ])('%s is the error of the whole', (_, [combination, deviation], message) => {
    expect(cause(combination, deviation)).toEqual([[message]]);
  });

  test.each<[string, Optional, string]>([
    ['blank tolerance', { tolerance: one(null) }, '#VALUE! tolerance is blank: fill it in'],
    ['zero tolerance', { tolerance: one(0) }, '#VALUE! tolerance is blank or zero: fill it in'],
    ['a tolerance missing in a row', { tolerance: col(0.05, '') }, '#VALUE! tolerance in row 2 is blank: fill it in'],
    [
      'tolerances of another height',
      { tolerance: col(0.05, 0.05, 0.05) },
      '#VALUE! combination has 2 rows, tolerance has 3: give columns of the same number of rows',
    ],
    ['error in the tolerance', { tolerance: one(NA) }, '#N/A no such part'],
    ['confidence as text', { confidence: one('95%') }, '#VALUE! confidence is "95%": enter a share, like 0.95'],
    [
      'confidence with a mark of lengths',
      { confidence: one("0.95'") },
      `#VALUE! confidence is "0.95'": inch and foot marks belong to lengths; enter a share without one`,
    ],
    ['confidence in percent', { confidence: one(95) }, '#VALUE! confidence is 95: it must lie between 0.5 and 1, like 0.95'],
    ['action share in percent', { share: one(50) }, '#VALUE! action share is 50: it must lie between 0 and 1, like 0.5'],
    [
      'a time that is none',
      { when: col('soon', 'later') },
      '#VALUE! when in row 1 is "soon": enter a date, a time or a running number, like 2026-03-14 08:30 or 17',
    ],
    ['an error among the times', { when: col(46_000, NA) }, '#N/A no such part'],
  ])('%s is refused', (_, optional, message) => {
    expect(cause(col('A', 'B'), col(0.1, 0.1), optional)).toEqual([[message]]);
  });

  test.each([
    ['tolerance', { tolerance: col(0.05, 0.05) }],
    ['die', { die: col('D22', 'D22') }],
    ['when', { when: col(46_000, 46_001) }],
  ])('two rows of %s beside three crimps are refused, too', (name, optional) => {
    const message = `#VALUE! combination has 3 rows, ${name} has 2: give columns of the same number of rows`;
    expect(cause(col('A', 'B', 'A'), col(0.1, 0.1, 0.1), optional)).toEqual([[message]]);
  });
});
