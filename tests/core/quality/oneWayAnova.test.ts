import { oneWayAnova } from '../../../src/core/quality/oneWayAnova';
import { oneWay } from './nistFile';

// NIST StRD, analysis of variance: certified F in the header of each file.
test.each([
  ['SiRstvt.dat', 5, 25, 1e-9],
  ['AtmWtAgt.dat', 2, 48, 1e-7],
  ['SmLs01t.dat', 9, 189, 1e-12],
  ['SmLs04t.dat', 9, 189, 1e-8],
])('%s: F as certified', (name, groupCount, count, within) => {
  const { groups, F } = oneWay(name);
  expect([groups.length, groups.flat().length]).toEqual([groupCount, count]);
  expect(Math.abs(oneWayAnova(groups).F / F - 1)).toBeLessThan(within);
});

test('the worked example of the e-Handbook', () => {
  // NIST/SEMATECH e-Handbook 7.4.3.
  const anova = oneWayAnova([
    [6.9, 5.4, 5.8, 4.6, 4.0],
    [8.3, 6.8, 7.8, 9.2, 6.5],
    [8.0, 10.5, 8.1, 6.9, 9.3],
  ]);
  expect(anova.between.squares).toBeCloseTo(27.897, 3);
  expect(anova.within.squares).toBeCloseTo(17.452, 3);
  expect(anova.F).toBeCloseTo(9.59, 2);
  expect(anova.p).toBeCloseTo(0.00325, 5);
});

test('groups that differ without scatter are told apart for certain, equal ones never', () => {
  expect(
    oneWayAnova([
      [1, 1],
      [2, 2],
    ]),
  ).toMatchObject({ F: Infinity, p: 0 });
  expect(
    oneWayAnova([
      [1, 1],
      [1, 1],
    ]),
  ).toMatchObject({ F: 0, p: 1 });
});
