import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { crimpCause, type CrimpCauseInput } from '../../../src/core/quality/crimpCause';
import { fitGroups, measureGroup } from '../../../src/core/quality/crimpGroups';
import { fUpperTail } from '../../../src/core/quality/fUpperTail';
import { standardDeviation } from '../../../src/core/quality/standardDeviation';
import { Decimal } from '../../../src/core/units/decimal';

const S1 = {
  A: [0.11, 0.08, 0.12, 0.09, 0.1, 0.13],
  B: [0.07, 0.1, 0.12, 0.11, 0.09, 0.08],
  C: [0.12, 0.09, 0.1, 0.08, 0.14, 0.11],
  D: [0.1, 0.06, 0.09, 0.12, 0.11, 0.1],
  E: [0.09, 0.13, 0.11, 0.1, 0.08, 0.12],
};
type Sets = Record<string, number[]>;
const shifted = (sets: Sets, by: (name: string) => number): Sets =>
  Object.fromEntries(
    Object.entries(sets).map(([name, values]) => [name, values.map(value => new Decimal(value).plus(by(name)).toNumber())]),
  );
const S2 = shifted(S1, name => (name === 'C' ? 0.1 : -0.1));

const groupsOf = (sets: Sets) =>
  Object.entries(sets).map(([name, values]) => ({ name, deviations: values.map(value => new Decimal(value)) }));
const cause = (sets: Sets, options: Partial<CrimpCauseInput> = {}) =>
  crimpCause({
    groups: groupsOf(sets),
    tolerance: new Decimal(0.05),
    confidence: 0.95,
    actionShare: new Decimal(0.5),
    ...options,
  });
const findings = (sets: Sets, options?: Partial<CrimpCauseInput>) => {
  const result = cause(sets, options);
  return [result.finding, ...result.combinations.map(({ finding }) => (finding === 'OWN SETTING' ? 'own' : '-'))];
};

// Sets and results computed in R 4.2, independent of this project.
test('S1: all alike and off: the machine', () => {
  const result = cause(S1);
  expect(result.all!.F).toBeCloseTo(0.450257, 6);
  expect(result.all!.p).toBeCloseTo(0.771213, 6);
  expect(result.finding).toBe('MACHINE');
  expect(result.offset!.toNumber()).toBeCloseTo(0.101667, 6);
  expect(result.interval![0]).toBeCloseTo(0.094254, 6);
  expect(result.interval![1]).toBeCloseTo(0.10908, 6);
  expect(result.correction.toNumber()).toBeCloseTo(-0.101667, 6);
  expect(result.combinations.map(({ correction }) => correction.toNumber())).toEqual([0, 0, 0, 0, 0]);
});

test('S2: one combination off: its setting', () => {
  const result = cause(S2);
  expect(result.all!.F).toBeCloseTo(131.6681, 4);
  expect(result.rest!.F).toBeCloseTo(0.462754, 6);
  expect(result.finding).toBe('SETTING');
  expect(result.offset!.toNumber()).toBeCloseTo(0.000417, 6);
  expect(result.interval![0]).toBeCloseTo(-0.007764, 6);
  expect(result.interval![1]).toBeCloseTo(0.008598, 6);
  expect(result.correction.toNumber()).toBe(0);
  const own = result.combinations[2]!;
  expect([own.name, own.finding]).toEqual(['C', 'OWN SETTING']);
  expect(own.correction.toNumber()).toBeCloseTo(-0.20625, 6);
  expect(own.interval![0]).toBeCloseTo(0.187717, 6);
  expect(own.interval![1]).toBeCloseTo(0.224783, 6);
  expect(result.combinations.filter(({ finding }) => finding === 'OWN SETTING')).toHaveLength(1);
});

test('GUM H.5: ten days × five, F 2.2615 against 2.124 (95 %)', () => {
  // GUM (JCGM 100:2008) H.5, table H.9: daily means and their standard deviations in µV above 10 V (the table recalled from memory; s of the means 57
  // and F 2.2615 against 2.124 published).
  const means = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41];
  const deviations = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86];
  const noise = [-2, -1, 0, 1, 2].map(value => value / Math.sqrt(2.5));
  const days = means.map((mean, day) => ({
    name: String(day + 1),
    deviations: noise.map(value => new Decimal(mean + value * deviations[day]!)),
  }));
  const fit = fitGroups(days.map(measureGroup));
  expect(standardDeviation(means)).toBeCloseTo(57, 0);
  expect(fit.F).toBeCloseTo(2.2615, 4);
  expect(fUpperTail(2.124, 9, 40)).toBeCloseTo(0.05, 4);
  expect(fit.p).toBeLessThan(0.05);
});

test('machine and one setting: both are found', () => {
  expect(findings(shifted(S1, name => (name === 'B' ? -0.2 : 0)))).toEqual(['BOTH', '-', 'own', '-', '-', '-']);
});

test('all near zero: in spec, nothing to correct', () => {
  const result = cause(shifted(S1, () => -0.1));
  expect(result.finding).toBe('IN SPEC');
  expect(result.correction.toNumber()).toBe(0);
});

test('a proven but small offset is no reason to touch the machine; the share decides', () => {
  const small = shifted(S1, () => -0.085);
  expect(cause(small).interval![0]).toBeGreaterThan(0);
  expect(findings(small)[0]).toBe('IN SPEC');
  expect(findings(small, { actionShare: new Decimal(0.3) })[0]).toBe('MACHINE');
});

test('an offset of exactly half the tolerance counts', () => {
  const sets = { A: [0.02, 0.03], B: [0.03, 0.02], C: [0.024, 0.026] };
  expect(cause(sets).offset!.toString()).toBe('0.025');
  expect(findings(sets)[0]).toBe('MACHINE');
  expect(findings({ ...sets, C: [0.024, 0.0259] })[0]).toBe('IN SPEC');
});

test('a combination taken out whose own deviation is small is left alone', () => {
  const exact = (level: number) => [level - 0.0001, level, level + 0.0001];
  const result = cause({ A: exact(0), B: exact(0), C: exact(0), D: exact(0.02) });
  expect(result.rest!.crimps).toBe(9);
  expect(result.combinations[3]).toMatchObject({ name: 'D', finding: 'WITH THE MACHINE' });
  expect(result.combinations[3]!.correction.toNumber()).toBe(0);
  expect(result.finding).toBe('IN SPEC');
});

test('two of five off are taken out one after the other, the worst first; the innocent are not condemned', () => {
  const two = shifted(S1, name => ({ A: 0.2, B: 0.15 })[name] ?? -0.1);
  expect(findings(two)).toEqual(['SETTING', 'own', 'own', '-', '-', '-']);
  const apart = shifted(S1, name => ({ A: 0.2, B: -0.4 })[name] ?? -0.1);
  expect(findings(apart)).toEqual(['SETTING', 'own', 'own', '-', '-', '-']);
});

test('no more than two are left: where these differ, step 3 does not show them alike', () => {
  const result = cause({ A: [0, 0.001], B: [0.1, 0.101], C: [0.3, 0.301] });
  expect(result.rest!.crimps).toBe(4);
  expect(result.finding).toBe('NOT ENOUGH DATA');
  expect(result.combinations.map(({ correction, finding }) => [correction.toNumber(), finding])).toEqual(
    Array(3).fill([0, 'WITH THE MACHINE']),
  );
});

test.each<[string, Sets]>([
  ['no crimps at all', {}],
  ['fewer than three combinations', { A: S1.A, B: S1.B }],
  ['no repeat crimps', { A: [0.1], B: [0.11], C: [0.09] }],
  ['scatter too wide to show them alike', { A: [-0.1, 0.1], B: [-0.09, 0.1], C: [-0.1, 0.09] }],
  ['repeats only in the combination that is taken out', { A: [0, 0.0001], B: [0.5], C: [0.5] }],
])('%s: not enough data, and nothing is corrected', (_, sets) => {
  const result = cause(sets);
  expect(result.finding).toBe('NOT ENOUGH DATA');
  expect(result.correction.toNumber()).toBe(0);
  expect(result.combinations.every(({ correction }) => correction.isZero())).toBe(true);
});

test('a mean out of tolerance though nothing counts is not called in spec', () => {
  // Share 1: D is out of tolerance by 0.001, but its own deviation from the offset is below the tolerance.
  const exact = (level: number) => [level - 0.0001, level, level + 0.0001];
  const sets = { A: exact(0.01), B: exact(0.01), C: exact(0.01), D: exact(0.051) };
  expect(findings(sets, { actionShare: new Decimal(1) })).toEqual(['NOT ENOUGH DATA', '-', '-', '-', '-']);
});

test('crimps without any scatter are judged as they stand', () => {
  expect(findings({ A: [0.1, 0.1], B: [0.1, 0.1], C: [0.1] })).toEqual(['MACHINE', '-', '-', '-']);
  expect(findings({ A: [0, 0], B: [0, 0], C: [0, 0] })).toEqual(['IN SPEC', '-', '-', '-']);
  expect(findings({ A: [0, 0], B: [0, 0], C: [0.1, 0.1], D: [0, 0] })).toEqual(['SETTING', '-', '-', 'own', '-']);
});

test('one die throughout: the offset may be the die; single settings stay single settings', () => {
  expect(findings(S1, { oneDie: true })[0]).toBe('MACHINE OR DIE');
  expect(findings(S2, { oneDie: true })[0]).toBe('SETTING');
});

test('a set and its mirror image give mirrored corrections', () => {
  const mirror = (sets: Sets) =>
    Object.fromEntries(Object.entries(sets).map(([name, values]) => [name, values.map(value => -value)]));
  for (const sets of [S1, S2]) {
    const [plain, mirrored] = [cause(sets), cause(mirror(sets))];
    expect(mirrored.finding).toBe(plain.finding);
    expect(mirrored.correction.plus(plain.correction).toNumber()).toBe(0);
    mirrored.combinations.forEach(({ correction }, index) =>
      expect(correction.plus(plain.combinations[index]!.correction).abs().toNumber()).toBeLessThan(1e-12),
    );
  }
});

interface Case {
  readonly groups: Sets;
  readonly oneDie: boolean;
  readonly confidence: number | null;
  readonly actionShare: number | null;
  readonly finding: string;
  readonly offset: number;
  readonly correction: number;
  readonly own: Readonly<Record<string, number>>;
}
const computed = JSON.parse(readFileSync(join(__dirname, '../../cases/crimpCause/scipy.json'), 'utf8')) as { cases: Case[] };

test.each(computed.cases.map((one, index) => ({ ...one, index })))(
  'case $index, computed in SciPy: $finding',
  ({ groups, oneDie, confidence, actionShare, finding, offset, correction, own }) => {
    const result = cause(groups, {
      oneDie,
      ...(confidence === null ? {} : { confidence }),
      ...(actionShare === null ? {} : { actionShare: new Decimal(actionShare) }),
    });
    expect([result.finding, result.offset!.toNumber(), result.correction.toNumber()]).toEqual([
      finding,
      expect.closeTo(offset, 8),
      expect.closeTo(correction, 8),
    ]);
    const found = result.combinations.filter(combination => combination.finding === 'OWN SETTING');
    expect(Object.fromEntries(found.map(({ name, correction: change }) => [name, change.toNumber()]))).toEqual(
      Object.fromEntries(Object.entries(own).map(([name, change]) => [name, expect.closeTo(change, 8)])),
    );
  },
);

test('10,000 crimps of 500 combinations, a hundred of them off, are judged in good time', () => {
  const groups = Array.from({ length: 500 }, (_, group) => ({
    name: String(group),
    deviations: Array.from({ length: 20 }, (_, crimp) => new Decimal((crimp % 7) / 1000 + (group % 5 === 0 ? 0.1 : 0))),
  }));
  const start = Date.now();
  const result = crimpCause({ groups, tolerance: new Decimal(0.05), confidence: 0.95, actionShare: new Decimal(0.5) });
  expect(Date.now() - start).toBeLessThan(10_000);
  expect(result.combinations.filter(({ finding }) => finding === 'OWN SETTING')).toHaveLength(100);
});
