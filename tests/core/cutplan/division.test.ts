import { isShortByDivision } from '../../../src/core/cutplan/division';
import { toGrid } from '../../../src/core/cutplan/toGrid';
import { leastLoss, smallCase } from './bruteForce';
import { problemOf } from './smallProblem';

const stock = (capacity: number, count: number) => ({ capacity, count, unlimited: false, whole: capacity, base: Infinity });

test.each([
  ['enough in length and number', [40], [2], [stock(100, 1)], false],
  ['too little in all', [40], [3], [stock(100, 1)], true],
  ['enough in all, but no stock takes two', [60], [3], [stock(100, 2)], true],
  ['enough in all, too little that is long enough', [60, 20], [2, 1], [stock(60, 1), stock(50, 9)], true],
  ['just enough that is long enough', [60, 20], [1, 1], [stock(60, 1), stock(50, 1)], false],
])('%s', (_, widths, demand, all, isShort) => {
  expect(isShortByDivision({ widths, demand, stock: all, grain: 1 })).toBe(isShort);
});

test('division never calls stock short from which brute force cuts everything, and mostly sees where it cannot', () => {
  let short = 0;
  let seen = 0;
  for (let seed = 0; seed < 3000; seed++) {
    const small = smallCase(seed);
    const longest = Math.max(...small.stock.map(({ length }) => length)) - small.squaring;
    if (Math.max(...small.pieces) > longest) continue;
    const isShort = isShortByDivision(toGrid(problemOf(small)).grid);
    if (leastLoss(small) === Infinity) short++;
    else expect({ seed, isShort }).toEqual({ seed, isShort: false });
    if (isShort) seen++;
  }
  expect(short).toBeGreaterThan(100);
  expect(seen / short).toBeGreaterThan(0.7);
});
