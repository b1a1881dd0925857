import type { CutPlanProblem } from '../../../src/core/cutplan/cutPlan';
import { toGrid } from '../../../src/core/cutplan/toGrid';
import { Decimal } from '../../../src/core/units/decimal';

const d = (value: number | string) => new Decimal(value);
const rows = (...list: readonly (readonly [number | string, number])[]) =>
  list.map(([length, quantity]) => ({ length: d(length), quantity }));

const problem: CutPlanProblem = {
  pieces: rows([1250, 3], [840, 2]),
  stock: rows([3000, 2], [2600, 1]),
  kerf: d(3),
  squaring: d(10),
  keep: d(500),
  handling: d(40),
  unit: 'mm',
};

test('a piece takes its kerf along, stock gains the last one; lengths in tenths of a millimetre (by hand)', () => {
  const { grid, perUnit } = toGrid(problem);
  expect(perUnit).toBe(10);
  expect(grid.widths).toEqual([12_530, 8_430]);
  expect(grid.demand).toEqual([3, 2]);
  // 3000 − 10 + 3 to cut from; worth 3000 − 500 above keep; cut up it loses that and handling, left open squaring, handling and its cuts.
  expect(grid.stock).toEqual([
    { capacity: 29_930, count: 2, unlimited: false, whole: 25_400, base: 500 },
    { capacity: 25_930, count: 1, unlimited: false, whole: 21_400, base: 500 },
  ]);
  // 25400, 21400, 500, 12530 and 8430 have 10 in common.
  expect(grid.grain).toBe(10);
});

test('what does not lie on the grid is rounded so that the plan can be cut: pieces, kerf, squaring, keep and handling up, stock down', () => {
  const off = toGrid({
    pieces: rows(['1250.01', 1], ['839.99', 1]),
    stock: rows(['3000.09', 1]),
    kerf: d('2.91'),
    squaring: d('9.99'),
    keep: d('499.91'),
    handling: d('39.95'),
    unit: 'mm',
  });
  expect(off.grid.widths).toEqual([12_501 + 30, 8_400 + 30]);
  expect(off.grid.stock).toEqual([{ capacity: 30_000 - 100 + 30, count: 1, unlimited: false, whole: 25_400, base: 500 }]);
});

test('inches are counted in 64ths', () => {
  // 41 3/8 = 2648/64; a third of an inch is 21.33 of them: 22 as a kerf; 120.01 = 7680.64 as stock: 7680.
  const { grid, perUnit } = toGrid({
    pieces: rows(['41.375', 2]),
    stock: rows(['120.01', 1]),
    kerf: d(1).div(3),
    unit: 'in',
  });
  expect(perUnit).toBe(64);
  expect(grid.widths).toEqual([2_648 + 22]);
  expect(grid.stock).toEqual([{ capacity: 7_680 + 22, count: 1, unlimited: false, whole: 7_680, base: Infinity }]);
});

test('without keep all stock that is opened is lost; stock no longer than keep loses its handling only', () => {
  expect(toGrid({ ...problem, keep: undefined }).grid.stock.map(({ whole, base }) => [whole, base])).toEqual([
    [30_400, Infinity],
    [26_400, Infinity],
  ]);
  expect(toGrid({ ...problem, keep: d(2600) }).grid.stock.map(({ whole, base }) => [whole, base])).toEqual([
    [4_400, 500],
    [400, Infinity],
  ]);
  expect(toGrid({ ...problem, keep: d(2700) }).grid.stock.map(({ whole, base }) => [whole, base])).toEqual([
    [3_400, 500],
    [400, Infinity],
  ]);
  expect(toGrid({ ...problem, keep: d(0) }).grid.stock.map(({ whole, base }) => [whole, base])).toEqual([
    [30_400, 500],
    [26_400, 500],
  ]);
});

test('equal lengths are one, longest first; lengths that share a step are one width, and the way back to both is kept', () => {
  const { grid, pieces, stock, sheet } = toGrid({
    ...problem,
    pieces: rows([840, 1], ['839.95', 2], [1250, 1], [840, 4], [700, 0]),
    stock: rows([2600, 1], [3000, 1], [2600, 2]),
  });
  expect(grid.widths).toEqual([12_530, 8_430]);
  expect(grid.demand).toEqual([1, 7]);
  expect(pieces.map(group => group.map(({ length, quantity }) => [length.toNumber(), quantity]))).toEqual([
    [[1250, 1]],
    [
      [840, 5],
      [839.95, 2],
    ],
  ]);
  expect(stock.map(Number)).toEqual([3000, 2600]);
  expect(grid.stock.map(({ count }) => count)).toEqual([1, 3]);
  expect(sheet).toEqual({ pieces: [2, 0], stock: [1, 0] });
});

test('no more stock is counted than there are pieces: so many are as good as any number', () => {
  const counted = (...quantities: readonly (number | undefined)[]) =>
    toGrid({ ...problem, stock: quantities.map((quantity, k) => ({ length: d(3000 - k), quantity })) }).grid.stock.map(
      ({ count, unlimited }) => [count, unlimited],
    );
  expect(counted(4, 5, 6, undefined)).toEqual([
    [4, false],
    [5, true],
    [5, true],
    [5, true],
  ]);
});

test('stock that no piece fits into is left out; stock that just takes the shortest piece stays', () => {
  const shortest = rows([840, 1]);
  // 840 and 10 squared off: 850; the kerf behind the last piece may fall beyond the end.
  expect(toGrid({ ...problem, pieces: shortest, stock: rows([850, 1], ['849.9', 1]) }).stock.map(Number)).toEqual([850]);
});

test('a piece longer than every stock is named with what there is', () => {
  const thrown = (change: Partial<CutPlanProblem>) => {
    try {
      toGrid({ ...problem, ...change });
    } catch (error) {
      return (error as Error).message;
    }
    return 'none';
  };
  expect(thrown({ pieces: rows([2990, 1]) })).toBe('none');
  expect(thrown({ pieces: rows(['2990.1', 2], [3100, 1], [840, 1]) })).toBe(
    'piece 1 x 3100 + 2 x 2990.1 is longer than every stock: the longest stock is 3000 mm, 10 of it squared off; add longer stock or check the length',
  );
  expect(thrown({ pieces: rows([3100, 1]), squaring: undefined })).toBe(
    'piece 1 x 3100 is longer than every stock: the longest stock is 3000 mm; add longer stock or check the length',
  );
  expect(thrown({ pieces: rows([3100, 1]), squaring: d(0) })).toMatch(/: the longest stock is 3000 mm; add longer stock/);
  expect(thrown({ pieces: rows([3100, 1]), stock: rows([3000, 1]), squaring: d(0.5) })).toMatch(
    /3000 mm, 0.5 of it squared off;/,
  );
  // A row of no pieces is no stock.
  expect(thrown({ pieces: rows([3100, 1]), stock: rows([9000, 0], [3000, 1]) })).toMatch(/the longest stock is 3000 mm/);
  expect(thrown({ stock: [] })).toBe(
    'piece 3 x 1250 + 2 x 840 is longer than every stock: there is no stock; add stock or check the length',
  );
});

test('a million pieces are planned at a time, and no more', () => {
  const many = (count: number) => toGrid({ ...problem, pieces: rows([1250, count], [840, 1]) }).grid.demand;
  expect(many(999_999)).toEqual([999_999, 1]);
  expect(() => many(1_000_000)).toThrow('quantities add up to 1000001 pieces: plan at most 1000000 at a time');
});
