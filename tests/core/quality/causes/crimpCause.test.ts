import { book } from '../../../cases/crimpCause/trial.mjs';
import { crimpsOf } from '../../../../bench/plantedBooks';
import { crimpCause } from '../../../../src/core/quality/causes/crimpCause';
import type { CrimpOfMachine } from '../../../../src/core/quality/causes/crimpSeries';
import { fUpperTail } from '../../../../src/core/quality/fUpperTail';
import { processorTime, ROOM } from '../../../processorTime';

type Sets = Record<string, number[]>;
const S1: Sets = {
  A: [0.11, 0.08, 0.12, 0.09, 0.1, 0.13],
  B: [0.07, 0.1, 0.12, 0.11, 0.09, 0.08],
  C: [0.12, 0.09, 0.1, 0.08, 0.14, 0.11],
  D: [0.1, 0.06, 0.09, 0.12, 0.11, 0.1],
  E: [0.09, 0.13, 0.11, 0.1, 0.08, 0.12],
};
const shifted = (sets: Sets, by: (name: string) => number): Sets =>
  Object.fromEntries(Object.entries(sets).map(([name, values]) => [name, values.map(value => value + by(name))]));
const S2 = shifted(S1, name => (name === 'C' ? 0.1 : -0.1));

const crimps = (sets: Sets, more: (name: string, index: number) => Partial<CrimpOfMachine> = () => ({})): CrimpOfMachine[] =>
  Object.entries(sets).flatMap(([combination, values]) =>
    values.map((deviation, index) => ({ combination, deviation, tolerance: 0.05, ...more(combination, index) })),
  );
const cause = (list: readonly CrimpOfMachine[], options = {}) =>
  crimpCause({ crimps: list, confidence: 0.95, actionShare: 0.5, ...options });
const findings = (list: readonly CrimpOfMachine[], options = {}) => {
  const { finding, combinations } = cause(list, options);
  return [
    finding,
    ...combinations.map(each => (each.finding === 'OWN SETTING' ? 'own' : each.finding === 'CANNOT TELL' ? '?' : '-')),
  ];
};

// Sets and results computed in R 4.2, independent of this project.
describe('without time or die causes the numbers are plain least squares', () => {
  test('S1: all alike and off: the machine', () => {
    const { finding, machine, combinations, scatter } = cause(crimps(S1));
    expect(finding).toBe('MACHINE');
    expect(machine.offset).toBeCloseTo(0.101667, 6);
    expect(machine.interval![0]).toBeCloseTo(0.094254, 6);
    expect(machine.interval![1]).toBeCloseTo(0.10908, 6);
    expect(machine.correction).toBeCloseTo(-0.101667, 6);
    expect(combinations.map(({ correction }) => correction)).toEqual([0, 0, 0, 0, 0]);
    // One-way F of the same crimps.
    const between = combinations.reduce((total, { offset, crimps: count }) => total + count * offset! ** 2, 0) / 4;
    expect(between / scatter ** 2).toBeCloseTo(0.450257, 6);
    expect(fUpperTail(between / scatter ** 2, 4, 25)).toBeCloseTo(0.771213, 6);
  });

  test('S2: one combination off: its setting', () => {
    const { finding, machine, combinations } = cause(crimps(S2));
    expect(finding).toBe('SETTING');
    expect(machine.offset).toBeCloseTo(0.000417, 6);
    expect(machine.interval![0]).toBeCloseTo(-0.007764, 6);
    expect(machine.interval![1]).toBeCloseTo(0.008598, 6);
    expect(machine.correction).toBe(0);
    expect(combinations.map(({ finding: own }) => own === 'OWN SETTING')).toEqual([false, false, true, false, false]);
    const own = combinations[2]!;
    expect(own.offset).toBeCloseTo(0.20625, 6);
    expect(own.correction).toBeCloseTo(-0.20625, 6);
    expect(own.interval![0]).toBeCloseTo(0.187717, 6);
    expect(own.interval![1]).toBeCloseTo(0.224783, 6);
  });
});

describe('what is off', () => {
  test('machine and one setting: both are found', () => {
    expect(findings(crimps(shifted(S1, name => (name === 'B' ? -0.2 : 0))))).toEqual([
      'MACHINE + SETTING',
      '-',
      'own',
      '-',
      '-',
      '-',
    ]);
  });

  test('all near zero: in spec, nothing to correct', () => {
    const result = cause(crimps(shifted(S1, () => -0.1)));
    expect([result.finding, result.machine.correction, result.next]).toEqual(['IN SPEC', 0, undefined]);
  });

  test('a small offset is no reason to touch the machine; the share decides', () => {
    const small = crimps(shifted(S1, () => -0.085));
    expect(findings(small)[0]).toBe('IN SPEC');
    expect(findings(small, { actionShare: 0.2 })[0]).toBe('MACHINE');
  });

  test('two of five off: both settings, the innocent are not condemned', () => {
    const apart = shifted(S1, name => ({ A: 0.2, B: -0.4 })[name] ?? -0.1);
    expect(findings(crimps(apart))).toEqual(['SETTING', 'own', 'own', '-', '-', '-']);
  });

  test('one die throughout: machine or die; single settings stay single settings', () => {
    const oneDie = () => ({ die: 'D22' });
    expect(findings(crimps(S1, oneDie))[0]).toBe('MACHINE OR DIE');
    expect(findings(crimps(S2, oneDie))[0]).toBe('SETTING');
    expect(
      findings(
        crimps(
          shifted(S1, name => (name === 'B' ? -0.2 : 0)),
          oneDie,
        ),
      )[0],
    ).toBe('MACHINE OR DIE + SETTING');
  });

  test('a die that one combination alone is crimped with is not told from its setting: another die is asked for', () => {
    const { finding, combinations, dies, next } = cause(crimps(S2, name => ({ die: name === 'C' ? 'D24' : 'D22' })));
    expect(finding).toBe('CANNOT TELL');
    expect(combinations.map(each => each.finding)).toEqual([
      'WITH THE MACHINE',
      'WITH THE MACHINE',
      'CANNOT TELL',
      'WITH THE MACHINE',
      'WITH THE MACHINE',
    ]);
    expect(dies.map(each => [each.name, each.finding])).toEqual([
      ['D22', 'WITH THE MACHINE'],
      ['D24', 'CANNOT TELL'],
    ]);
    expect(next).toMatchObject({ combination: 'C', otherDie: true });
  });

  test('a worn die of three: the die, and its combinations go with it', () => {
    const dieOf = (name: string) => ({ A: 'D19', B: 'D19', C: 'D22', D: 'D22' })[name] ?? 'D25';
    const sets = shifted({ ...S1, F: S1.E!, G: S1.A! }, name => (dieOf(name) === 'D22' ? 0 : -0.1));
    const { finding, dies, combinations, machine } = cause(crimps(sets, name => ({ die: dieOf(name) })));
    expect(finding).toBe('DIE');
    expect(dies.map(each => each.finding)).toEqual(['WITH THE MACHINE', 'DIE', 'WITH THE MACHINE']);
    expect(dies[1]!.offset).toBeCloseTo(0.1, 2);
    expect(combinations.map(each => each.finding).filter(each => each === 'WITH THE DIE')).toHaveLength(2);
    expect(combinations.every(({ correction }) => correction === 0) && machine.correction === 0).toBe(true);
  });
});

describe('since when', () => {
  // Six rounds of five combinations, one a day; places in the list are those of the sets.
  const daily = (_: string, index: number) => ({ time: 46_000 + index });

  test('a machine that shifted on the fifth day', () => {
    const list = crimps(S1, daily).map(crimp => ({ ...crimp, deviation: crimp.deviation - (crimp.time! < 46_004 ? 0.1 : 0) }));
    const { finding, machine } = cause(list);
    expect(finding).toBe('MACHINE');
    expect(list[machine.since!.place]).toMatchObject({ combination: 'A', time: 46_004 });
    expect(machine.since!.isRising).toBe(false);
    expect(machine.before).toBeCloseTo(0, 1);
    expect(machine.offset).toBeGreaterThan(0.08);
  });

  test('the same crimps without dates, or with one date missing, have no time causes', () => {
    const shiftedLate = (index: number) => (index < 4 ? -0.1 : 0);
    const dated = crimps(S1, daily).map((crimp, place) => ({ ...crimp, deviation: crimp.deviation + shiftedLate(place % 6) }));
    const lacking = dated.map((crimp, place) => (place === 7 ? { ...crimp, time: undefined } : crimp));
    const undated = dated.map(crimp => ({ ...crimp, time: undefined }));
    // The offset over time is a function: it is compared by what it gives.
    const plain = ({ machineAt, ...found }: ReturnType<typeof cause>) => ({
      ...found,
      early: machineAt?.(0),
      late: machineAt?.(5),
    });
    expect(plain(cause(lacking))).toEqual(plain(cause(undated)));
    expect(cause(lacking).machine.since).toBeUndefined();
  });

  test('a recalibration: in spec now, since that day', () => {
    const list = crimps(S1, daily).map(crimp => ({ ...crimp, deviation: crimp.deviation - (crimp.time! < 46_003 ? 0 : 0.1) }));
    const { finding, machine } = cause(list);
    expect([finding, machine.correction, list[machine.since!.place]!.time]).toEqual(['IN SPEC', 0, 46_003]);
    expect(machine.before).toBeCloseTo(0.1, 1);
  });

  test('the order of the rows does not matter where they are dated', () => {
    const rows = crimpsOf(book('ample', 'shift+setting', 11));
    const mixed = rows.map((_, index) => rows[(index * 7) % rows.length]!);
    const [plain, other] = [cause(rows), cause(mixed)];
    expect(other.finding).toBe(plain.finding);
    expect(other.machine.offset).toBeCloseTo(plain.machine.offset!, 9);
    expect(mixed[other.machine.since!.place]!.time).toBe(rows[plain.machine.since!.place]!.time);
  });
});

describe('what is left out', () => {
  test('one crimp far from the others is set aside and moves nothing', () => {
    const slip = crimps(shifted(S1, () => -0.1));
    const list = slip.map((crimp, place) => (place === 8 ? { ...crimp, deviation: 0.6 } : crimp));
    const { finding, setAside, combinations } = cause(list);
    expect([finding, setAside.map(({ place }) => place)]).toEqual(['IN SPEC', [8]]);
    expect(setAside[0]!.offset).toBeCloseTo(0.6, 1);
    expect(combinations[1]!.offset).toBeCloseTo(-0.005, 1);
  });

  test.each<[string, Sets, number | undefined]>([
    ['no crimps at all', {}, undefined],
    ['fewer than three combinations', { A: S1.A!, B: S1.B! }, 2],
    ['one combination', { A: S1.A! }, 4],
    ['no repeats', { A: [0.1], B: [0.11], C: [0.09] }, 3],
    ['two repeats', { A: [0.1, 0.1], B: [0.11, 0.11], C: [0.09] }, 1],
  ])('%s: not enough data, and nothing is corrected', (_, sets, more) => {
    const { finding, machine, combinations, next } = cause(crimps(sets));
    expect([finding, machine.correction, next?.crimps]).toEqual(['NOT ENOUGH DATA', 0, more]);
    expect(combinations.every(each => each.correction === 0 && each.finding === 'CANNOT TELL')).toBe(true);
  });

  test('three repeats are enough', () => {
    expect(findings(crimps({ A: [0.1, 0.1], B: [0.1, 0.1], C: [0.1, 0.1] }))[0]).toBe('MACHINE');
  });

  test('more settings off than an explanation can hold: the others cannot be told, none of them passes as right', () => {
    const wide = Object.fromEntries(
      Array.from({ length: 90 }, (_, k) => [`N${k}`, [0, 0.001, -0.001, 0].map(x => x + (k % 4 === 0 ? 0.1 : 0))]),
    );
    const { combinations } = cause(crimps(wide));
    const off = combinations.filter((_, k) => k % 4 === 0).map(({ finding }) => finding);
    expect(off).not.toContain('WITH THE MACHINE');
    expect(off).toContain('CANNOT TELL');
    expect(new Set(combinations.filter((_, k) => k % 4 !== 0).map(({ finding }) => finding))).toEqual(
      new Set(['WITH THE MACHINE']),
    );
  });

  test('501 combinations are refused', () => {
    const many = Object.fromEntries(Array.from({ length: 501 }, (_, k) => [`N${k}`, [0]]));
    expect(() => cause(crimps(many))).toThrow(/combination has 501 names: give at most 500/);
  });
});

describe('a column of tolerances', () => {
  const toleranceOf = (name: string) => ({ tolerance: name < 'C' ? 0.05 : 0.1 });

  test('a machine that is off by one diameter is one cause, however wide the tolerances', () => {
    const { finding, machine, combinations } = cause(crimps(S1, toleranceOf));
    expect(finding).toBe('MACHINE');
    expect(machine.offset).toBeCloseTo(0.101667, 6);
    expect(combinations.every(({ correction }) => correction === 0)).toBe(true);
  });

  test('the smallest tolerance decides about the machine, its own about a combination', () => {
    // 0.03 is more than half of 0.05, less than half of 0.1.
    expect(
      findings(
        crimps(
          shifted(S1, () => -0.067),
          toleranceOf,
        ),
      )[0],
    ).toBe('MACHINE');
    const own = (wide: string) =>
      findings(
        crimps(
          shifted(S1, name => (name === wide ? -0.06 : -0.1)),
          toleranceOf,
        ),
      );
    expect(own('A')).toEqual(['SETTING', 'own', '-', '-', '-', '-']);
    expect(own('E')[0]).not.toMatch('SETTING');
  });
});

test('a list and its mirror image give mirrored corrections', () => {
  for (const [size, planted] of [
    ['ample', 'shift+setting'],
    ['small', 'die+machine'],
    ['thin', 'setting'],
  ] as const) {
    const rows = crimpsOf(book(size, planted, 5));
    const [plain, mirrored] = [cause(rows), cause(rows.map(crimp => ({ ...crimp, deviation: -crimp.deviation })))];
    expect(mirrored.finding).toBe(plain.finding);
    expect(mirrored.machine.correction + plain.machine.correction).toBeCloseTo(0, 9);
    plain.combinations.forEach(({ correction }, k) =>
      expect(mirrored.combinations[k]!.correction + correction).toBeCloseTo(0, 9),
    );
  }
});

test('400 crimps take a fifth of a second of processor time, 5,000 two seconds', () => {
  const large = Array.from({ length: 5000 }, (_, k) => {
    const c = (k * 37) % 100;
    const noise = Math.sin(k * 12.9898) * 0.3;
    const planted = (k > 3000 ? 0.9 : 0) + (c === 3 ? 1.2 : 0) + (c % 5 === 1 ? k / 5000 : 0);
    return { combination: `N${c}`, die: `D${c % 5}`, time: 46_000 + k / 77, tolerance: 1, deviation: planted + noise };
  });
  const ample = crimpsOf(book('ample', 'die+machine', 3));
  const milliseconds = (list: readonly CrimpOfMachine[]) => {
    const spent = processorTime();
    cause(list);
    return spent();
  };
  milliseconds(ample);
  expect(Math.min(milliseconds(ample), milliseconds(ample))).toBeLessThan(200 * ROOM);
  expect(milliseconds(large)).toBeLessThan(2000 * ROOM);
});
