import { GREEDY_ORDERS, greedyPlan, type GreedyOrder } from '../../../src/core/cutplan/greedy';
import type { GridPlan, GridProblem } from '../../../src/core/cutplan/gridProblem';
import { processorTime } from '../../processorTime';
import { seeded } from './bruteForce';

/** Piece by piece, as the words describe it: into opened stock that has room, else from the next stock in order. Total width by stock cut. */
function pieceByPiece({ widths, demand, stock }: GridProblem, order: GreedyOrder): string[] | undefined {
  const byOrder = (sizes: readonly number[], way: GreedyOrder['pieces']) =>
    sizes
      .map((_, k) => k)
      .sort((a, b) => (way === 'sheet' ? 0 : way === 'longest' ? sizes[b]! - sizes[a]! : sizes[a]! - sizes[b]!));
  const left = stock.map(one => one.count);
  const opened: { stock: number; room: number; cuts: number[] }[] = [];
  for (const item of byOrder(widths, order.pieces)) {
    for (let piece = 0; piece < demand[item]!; piece++) {
      const roomy = opened.filter(one => one.room >= widths[item]!);
      const least = Math.min(...roomy.map(one => one.room));
      let place = order.place === 'first' ? roomy[0] : roomy.find(one => one.room === least);
      if (!place) {
        const capacities = stock.map(one => one.capacity);
        const next = byOrder(capacities, order.stock).find(t => left[t]! > 0 && capacities[t]! >= widths[item]!);
        if (next === undefined) return undefined;
        left[next]!--;
        place = { stock: next, room: capacities[next]!, cuts: [] };
        opened.push(place);
      }
      place.room -= widths[item]!;
      place.cuts.push(widths[item]!);
    }
  }
  return opened.map(({ stock: t, cuts }) => `${t}: ${[...cuts].sort((a, b) => b - a).join()}`).sort();
}

const cutsOf = (plan: GridPlan | undefined, { widths }: GridProblem) =>
  plan?.uses
    .flatMap(({ pattern, times }) => {
      const cuts = pattern.items.flatMap((item, k) => Array<number>(pattern.counts[k]!).fill(widths[item]!));
      return Array<string>(times).fill(`${pattern.stock}: ${cuts.join()}`);
    })
    .sort();

function randomProblem(seed: number): GridProblem {
  const random = seeded(seed);
  const widths = [...new Set(Array.from({ length: random(1, 6) }, () => random(3, 60)))].sort((a, b) => b - a);
  return {
    widths,
    demand: widths.map(() => random(0, 12)),
    stock: Array.from({ length: random(1, 3) }, () => {
      const length = random(40, 150);
      return { capacity: length, count: random(1, 20), unlimited: false, whole: length, base: Infinity };
    }),
    grain: 1,
  };
}

test('equal pieces placed together come to the same plans as piece by piece', () => {
  for (let seed = 1; seed <= 400; seed++) {
    const problem = randomProblem(seed);
    const sheet = { pieces: problem.widths.map((_, k) => k), stock: problem.stock.map((_, k) => k) };
    for (const order of GREEDY_ORDERS) {
      expect({ seed, order, cuts: cutsOf(greedyPlan(problem, order, sheet), problem) }).toEqual({
        seed,
        order,
        cuts: pieceByPiece(problem, order),
      });
    }
  }
});

test('a hundred thousand pieces are placed as quickly as a few hundred', () => {
  const stock = [{ capacity: 6003, count: 100_000, unlimited: true, whole: 6000, base: Infinity }];
  const problem: GridProblem = { widths: [1253, 843], demand: [50_000, 50_000], stock, grain: 6000 };
  const spent = processorTime();
  for (const order of GREEDY_ORDERS) {
    const plan = greedyPlan(problem, order, { pieces: [0, 1], stock: [0] })!;
    expect(plan.loss).toBeGreaterThanOrEqual((6000 * (50_000 * 1253 + 50_000 * 843)) / 6003);
  }
  // Half a second on an ordinary machine; piece by piece it took minutes.
  expect(spent() / 1000).toBeLessThan(10);
});
