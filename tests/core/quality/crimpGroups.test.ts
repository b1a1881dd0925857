import { fitGroups, measureGroup } from '../../../src/core/quality/crimpGroups';
import { Decimal } from '../../../src/core/units/decimal';
import { oneWay } from './nistFile';

const fitOf = (groups: readonly (readonly number[])[]) =>
  fitGroups(
    groups.map((values, group) => measureGroup({ name: String(group), deviations: values.map(value => new Decimal(value)) })),
  );

// NIST StRD, analysis of variance: certified F in the header of each file.
test.each([
  ['SiRstvt.dat', 5, 25, 1e-14],
  ['AtmWtAgt.dat', 2, 48, 1e-14],
  ['SmLs01t.dat', 9, 189, 1e-14],
  ['SmLs04t.dat', 9, 189, 1e-14],
])('%s: F as certified', (name, groupCount, count, within) => {
  const { groups, F } = oneWay(name);
  expect([groups.length, groups.flat().length]).toEqual([groupCount, count]);
  expect(Math.abs(fitOf(groups).F / F - 1)).toBeLessThan(within);
});

test('the worked example of the e-Handbook', () => {
  // NIST/SEMATECH e-Handbook 7.4.3.
  const { F, p, scatter, df, crimps } = fitOf([
    [6.9, 5.4, 5.8, 4.6, 4.0],
    [8.3, 6.8, 7.8, 9.2, 6.5],
    [8.0, 10.5, 8.1, 6.9, 9.3],
  ]);
  const meanSquare = scatter ** 2;
  expect([crimps, df]).toEqual([15, 12]);
  expect(F * meanSquare * 2).toBeCloseTo(27.897, 3);
  expect(meanSquare * df).toBeCloseTo(17.452, 3);
  expect(F).toBeCloseTo(9.59, 2);
  expect(p).toBeCloseTo(0.00325, 5);
});

test('groups that differ without scatter are told apart for certain, equal ones never', () => {
  const [ones, twos] = [
    [1, 1],
    [2, 2],
  ];
  expect(fitOf([ones, twos])).toMatchObject({ F: Infinity, p: 0 });
  expect(fitOf([ones, ones])).toMatchObject({ F: 0, p: 1 });
});
