import { seededUniform } from '../../../bench/seededUniform';
import { twoGroups, type GroupedValue } from '../../../src/core/quality/twoGroups';

// Planted truth: values of ten groups with a scatter of 0.2 (sum of twelve uniform numbers), each group at a level of its own.
function series(count: number, more: (index: number, uniform: () => number) => number): GroupedValue[] {
  const uniform = seededUniform(count);
  const normal = () => Array.from({ length: 12 }, uniform).reduce((sum, each) => sum + each, -6);
  return Array.from({ length: count }, (_, index) => {
    const group = Math.floor(uniform() * 10);
    return { group: String(group), value: group / 5 + 0.2 * normal() + more(index, uniform) };
  });
}

describe('two clusters at the same time are noticed', () => {
  test('half of the crimps on either machine', () => {
    const found = twoGroups(
      series(300, (_, uniform) => (uniform() < 0.5 ? 1 : 0)),
      0.5,
    );
    expect(found!.apart).toBeCloseTo(1, 1);
    expect(found!.scatter).toBeCloseTo(0.2, 1);
  });
  test('a quarter on the other machine', () =>
    expect(
      twoGroups(
        series(400, (_, uniform) => (uniform() < 0.25 ? 1.2 : 0)),
        0.5,
      )!.apart,
    ).toBeCloseTo(1.2, 1));
  test('turn and turn about', () =>
    expect(
      twoGroups(
        series(300, index => (index % 2) * 1.1),
        0.5,
      )!.apart,
    ).toBeCloseTo(1.1, 1));
});

describe('what is no mixture is not taken for one', () => {
  test.each<[string, (index: number, uniform: () => number) => number]>([
    ['scatter alone', () => 0],
    ['a shift', index => (index < 180 ? 0 : 1.2)],
    ['a shift and back', index => (index > 100 && index < 200 ? 1.2 : 0)],
    ['a drift', index => index / 150],
    ['one crimp of twenty that strays', (index, uniform) => (uniform() < 0.05 ? 1.5 : 0)],
    ['clusters nearer than what matters', index => (index % 2) * 0.1],
  ])('%s', (_, more) => expect(twoGroups(series(300, more), 0.5)).toBeUndefined());
  test('too few crimps say nothing', () =>
    expect(
      twoGroups(
        series(25, index => (index % 2) * 2),
        0.5,
      ),
    ).toBeUndefined());
});
