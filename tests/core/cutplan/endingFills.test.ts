import { closedFills, openFills } from '../../../src/core/cutplan/endingFills';
import { Work } from '../../../src/core/cutplan/work';
import { seeded } from './bruteForce';

/** Every filling of pieces of limited number, as its width and worth. */
function everyFilling(widths: readonly number[], values: readonly number[], limits: readonly number[]) {
  let all = [{ width: 0, worth: 0 }];
  widths.forEach((each, item) => {
    all = all.flatMap(({ width, worth }) =>
      Array.from({ length: limits[item]! + 1 }, (_, copies) => ({
        width: width + copies * each,
        worth: worth + copies * values[item]!,
      })),
    );
  });
  return all;
}

test('fillings that leave an offcut of worth, and those that leave none, are the best of their kind (all tried)', () => {
  const random = seeded(3);
  for (let round = 0; round < 1000; round++) {
    const widths = [...new Set(Array.from({ length: random(1, 5) }, () => random(5, 60)))].sort((a, b) => b - a);
    const demand = widths.map(() => random(1, 3));
    const values = widths.map(width => random(0, width + 5));
    const gains = widths.map((width, item) => values[item]! - width);
    const capacity = random(60, 120);
    const [whole, base] = [capacity, random(5, 50)];
    const stock = [{ capacity, count: 1, unlimited: false, whole, base }];
    const problem = { widths, demand, stock, grain: 1 };
    const fitting = everyFilling(widths, values, demand).filter(({ width }) => width <= capacity);
    const best = (list: readonly { worth: number }[]) => Math.max(-Infinity, ...list.map(one => one.worth));
    const closed = best(fitting.filter(({ width }) => width > whole - base));
    const open = best(
      everyFilling(widths, gains, demand).filter(({ width }) => width > 0 && width <= Math.min(capacity, whole - base)),
    );
    const work = new Work(Infinity);
    expect({ round, upper: closedFills(problem, values, demand, [0], work)[0]!.upper }).toEqual({ round, upper: closed });
    expect({ round, upper: openFills(problem, gains, demand, [0], work)[0]!.upper }).toEqual({ round, upper: open });
  }
});
