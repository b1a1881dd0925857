import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CutPlan, CutPlanProblem } from '../../../src/core/cutplan/cutPlan';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { Decimal } from '../../../src/core/units/decimal';
import { processorTime, ROOM } from '../../processorTime';

interface ShopCase {
  readonly kerf: number;
  readonly squaring: number;
  readonly minRemnant: number;
  readonly pieces: readonly { len: number; qty: number }[];
  readonly stock: readonly { len: number; qty: number }[];
}

function shopCase(name: string, seconds: number): CutPlanProblem {
  const file = join(__dirname, '../../cases/cutting/shop', `${name}.json`);
  const given = JSON.parse(readFileSync(file, 'utf8')) as ShopCase;
  const rows = (list: ShopCase['pieces']) => list.map(({ len, qty }) => ({ length: new Decimal(len), quantity: qty }));
  return {
    pieces: rows(given.pieces),
    stock: rows(given.stock),
    kerf: new Decimal(given.kerf),
    squaring: new Decimal(given.squaring),
    keep: new Decimal(given.minRemnant),
    unit: 'mm',
    seconds,
  };
}

/** The plan while every look at the clock lets so many milliseconds pass. */
async function planWhileClockRuns(problem: CutPlanProblem, perLook: number): Promise<CutPlan> {
  let now = 0;
  const clock = jest.spyOn(performance, 'now').mockImplementation(() => (now += perLook));
  try {
    return await solveCutPlan(problem);
  } finally {
    clock.mockRestore();
  }
}

const ofTable = (list: readonly (readonly [number, number])[]) =>
  list.map(([length, quantity]) => ({ length: new Decimal(length), quantity }));

const text = (plan: CutPlan) => JSON.stringify(plan);

describe('solveCutPlan', () => {
  test('gives the same plan however slowly the clock runs, as long as the work fits into the seconds', async () => {
    const problem = shopCase('shop-small-3', 0.5);
    const still = await planWhileClockRuns(problem, 0);
    expect(still.isProven).toBe(false);
    expect(text(await planWhileClockRuns(problem, 0))).toBe(text(still));
    expect(text(await planWhileClockRuns(problem, 0.01))).toBe(text(still));
  });

  test('stops for safety when the seconds are over, with a plan and a bound that still hold', async () => {
    const full = await planWhileClockRuns(shopCase('shop-small-3', 0.5), 0);
    const stopped = await planWhileClockRuns(shopCase('shop-small-3', 0.5), 100);
    expect(stopped.loss.gte(full.bound)).toBe(true);
    expect(stopped.bound.lte(full.loss)).toBe(true);
    expect(stopped.loss.gte(stopped.bound)).toBe(true);
  });

  // Goal of the cut plan: shop cases within 0.05 % of the proven bound in the work of 2 s.
  test.each(['shop-small-1', 'shop-small-3', 'shop-short-1'])(
    '%s comes within 0.05 %% of its bound',
    async name => {
      const plan = await planWhileClockRuns(shopCase(name, 2), 0);
      expect(plan.percentOver).toBeLessThanOrEqual(0.05);
    },
    60_000,
  );

  test('the work of many small linear programs is counted too, so that the work ends the search before the clock does', async () => {
    const problem: CutPlanProblem = {
      pieces: ofTable([
        [807.1, 5],
        [493.5, 2],
        [400.7, 3],
        [379.2, 10],
        [348.5, 5],
        [196.4, 8],
        [171, 12],
      ]),
      stock: ofTable([
        [1359, 45],
        [447, 5],
      ]),
      kerf: new Decimal(1),
      squaring: new Decimal(0.5),
      unit: 'mm',
      seconds: 1,
    };
    const spent = processorTime();
    const plan = await planWhileClockRuns(problem, 0);
    expect(plan.isProven).toBe(false);
    // About 1 s on an ordinary machine; while only pivots counted it was 7 s.
    expect(spent() / 1000).toBeLessThan(1 * ROOM);
  });

  test('stock that no piece fits into changes nothing, the proof least of all', async () => {
    const problem: CutPlanProblem = {
      pieces: ofTable([
        [278.3, 1],
        [212.3, 8],
        [188.7, 11],
        [112.5, 3],
        [101.3, 7],
        [77.1, 12],
      ]),
      stock: ofTable([[486, 42]]),
      kerf: new Decimal(1),
      squaring: new Decimal(0.5),
      unit: 'mm',
    };
    const plan = await planWhileClockRuns(problem, 0);
    // 13 pieces of stock: the least by an integer program over all ways to cut one (SciPy 1.17, milp).
    expect([plan.stockCut, plan.isProven]).toEqual([13, true]);
    const besides = { ...problem, stock: [...problem.stock, ...ofTable([[39.1, 2]])] };
    expect(text(await planWhileClockRuns(besides, 0))).toBe(text(plan));
  });
});
