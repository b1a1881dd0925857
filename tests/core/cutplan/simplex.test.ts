import { Simplex } from '../../../src/core/cutplan/simplex';
import { Work } from '../../../src/core/cutplan/work';
import { seeded } from './bruteForce';

/** min cost·x over columns, with rows ≥ below `cover` and rows ≤ from there on; each ≥ row can stay short at a price. */
interface Program {
  readonly rhs: number[];
  readonly cover: number;
  readonly columns: { readonly cost: number; readonly entries: readonly number[]; isBanned: boolean }[];
}

const SHORT = 1000;

function randomProgram(random: (low: number, high: number) => number, rows: number, count: number): Program {
  const cover = random(1, rows);
  return {
    rhs: Array.from({ length: rows }, () => random(0, 12)),
    cover,
    columns: Array.from({ length: count }, () => randomColumn(random, rows)),
  };
}

function randomColumn(random: (low: number, high: number) => number, rows: number): Program['columns'][number] {
  const entries = Array.from({ length: rows }, () => (random(0, 2) === 0 ? random(1, 4) : 0));
  return { cost: random(1, 20), entries, isBanned: false };
}

function add(simplex: Simplex, { cost, entries }: Program['columns'][number]): number {
  const rows = entries.map((_, row) => row).filter(row => entries[row] !== 0);
  return simplex.addColumn(
    cost,
    rows,
    rows.map(row => entries[row]!),
  );
}

/** Theorem of duality: a solution and duals that are both possible and worth the same are both best. Asks about thousands of numbers: what is wrong is gathered. */
function expectOptimal(simplex: Simplex, { rhs, cover, columns }: Program): void {
  const x = new Map(simplex.solution().columns);
  const y = simplex.duals();
  const sums = rhs.map((_, row) => columns.reduce((sum, { entries }, k) => sum + entries[row]! * (x.get(k) ?? 0), 0));
  let value = columns.reduce((sum, { cost }, k) => sum + cost * (x.get(k) ?? 0), 0);
  const wrong: object[] = [];
  sums.forEach((sum, row) => {
    if (row < cover) value += SHORT * Math.max(0, rhs[row]! - sum);
    const dual = y[row]!;
    const isPossible = row < cover ? dual >= -1e-6 && dual <= SHORT + 1e-6 : sum <= rhs[row]! + 1e-3 && dual <= 1e-6;
    if (!isPossible) wrong.push({ row, sum, dual });
  });
  columns.forEach(({ cost, entries, isBanned }, k) => {
    const reduced = cost - entries.reduce((sum, entry, row) => sum + entry * y[row]!, 0);
    const isRight = isBanned ? (x.get(k) ?? 0) === 0 : reduced >= -1e-6;
    if (!isRight) wrong.push({ column: k, taken: x.get(k), reduced });
  });
  expect(wrong).toEqual([]);
  const paid = rhs.reduce((sum, b, row) => sum + b * y[row]!, 0);
  expect(Math.abs(value - paid)).toBeLessThan(0.01 + 1e-4 * Math.abs(paid));
}

test.each([3, 8, 30])(
  'random programs of %i rows are solved, and again after columns come, rows change and columns are forbidden',
  rows => {
    const random = seeded(rows);
    for (let round = 0; round < 40; round++) {
      const program = randomProgram(random, rows, 3 * rows);
      const simplex = new Simplex(program.rhs, program.cover, SHORT, new Work(Infinity));
      program.columns.forEach(column => add(simplex, column));
      expect(simplex.solve()).toBe(true);
      expectOptimal(simplex, program);
      for (let k = 0; k < rows; k++) {
        program.columns.push(randomColumn(random, rows));
        add(simplex, program.columns[program.columns.length - 1]!);
      }
      expect(simplex.solve()).toBe(true);
      expectOptimal(simplex, program);
      program.rhs.forEach((_, row) => (program.rhs[row] = random(0, 12)));
      simplex.changeRhs(program.rhs);
      expect(simplex.solve()).toBe(true);
      expectOptimal(simplex, program);
      for (const [column] of simplex.solution().columns.slice(0, 2)) {
        program.columns[column]!.isBanned = true;
        simplex.ban(column);
      }
      expect(simplex.solve()).toBe(true);
      expectOptimal(simplex, program);
      const again = new Simplex(program.rhs, program.cover, SHORT, new Work(Infinity));
      program.columns.forEach(column => column.isBanned ? again.ban(add(again, column)) : add(again, column)); // prettier-ignore
      expect(again.start(simplex.basicColumns)).toBe(true);
      expect(again.solve()).toBe(true);
      expectOptimal(again, program);
    }
  },
);

test('it ends where no solution can cost less than what is enough, and goes on where one might', () => {
  // 5 and 10 wanted of two kinds, then 10 and 5; both together for 2, each alone for 1.5: 5 · 2 + 5 · 1.5 = 17.5 both times.
  const simplex = new Simplex([5, 10], 2, SHORT, new Work(Infinity));
  for (const rows of [[0, 1], [0], [1]]) simplex.addColumn(rows.length === 2 ? 2 : 1.5, rows, [1, 1]); // prettier-ignore
  simplex.solve();
  expect(simplex.objective()).toBeCloseTo(17.5, 4);
  simplex.changeRhs([10, 5]);
  // Its start, with −5 of the second alone, costs 10 · 2 − 5 · 1.5 = 12.5: no solution costs less.
  simplex.solve(12);
  expect(simplex.objective()).toBeCloseTo(12.5, 4);
  simplex.solve(13);
  expect(simplex.objective()).toBeCloseTo(17.5, 4);
});
