import type { CutPlanProblem } from '../src/core/cutplan/cutPlan';
import { Decimal } from '../src/core/units/decimal';
import { seededUniform } from './seededUniform';

/** A problem drawn at random as a class of the literature is, with its class. */
export interface DrawnInstance {
  readonly family: string;
  readonly problem: CutPlanProblem;
}

/** Whole numbers of a range, both ends included. */
type Draw = (low: number, high: number) => number;

interface Kind {
  readonly family: string;
  readonly stock: number;
  readonly times: number;
  pieces(draw: Draw): number[];
  /** Drawn again until the pieces fill all but this share of the last piece of stock at least. */
  readonly full?: number;
}

const many = (count: number, low: number, high: number) => (draw: Draw) => Array.from({ length: count }, () => draw(low, high));

/** Three pieces that fill the stock, the first 380 to 490, the others at least 250 (Falkenauer 1996). */
function triplet(draw: Draw): number[] {
  const first = draw(380, 490);
  const second = draw(250, Math.floor((1000 - first) / 2));
  return [first, second, 1000 - first - second];
}

const KINDS: readonly Kind[] = [
  ...[160, 180, 200].flatMap(count =>
    [700, 800].map(longest => ({
      family: 'like Hard28 (160 to 200 pieces of 1 to 700 or 800, stock 1000, filled to 95 % of a piece of stock)',
      stock: 1000,
      times: 4,
      pieces: many(count, 1, longest),
      full: 0.95,
    })),
  ),
  {
    family: 'like Scholl-3 (200 pieces of 20,000 to 35,000, stock 100,000)',
    stock: 100_000,
    times: 6,
    pieces: many(200, 20_000, 35_000),
  },
  ...[
    [86, 50, 7500],
    [91, 90, 4800],
    [111, 30, 5000],
    [153, 100, 2500],
    [200, 10, 4000],
    [60, 1, 2500],
  ].map(([count, low, high]) => ({
    family: 'like Waescher (60 to 200 pieces of up to 2500 to 7500, stock 10,000, filled to 96 %)',
    stock: 10_000,
    times: 2,
    pieces: many(count!, low!, high!),
    full: 0.96,
  })),
  ...[40, 83, 167].map(count => ({
    family: 'like Falkenauer-T (120, 249 and 501 pieces)',
    stock: 1000,
    times: 4,
    pieces: (draw: Draw) => Array.from({ length: count }, () => triplet(draw)).flat(),
  })),
  ...[50, 100, 200, 500].flatMap(count =>
    [3, 5, 7, 9].flatMap(each =>
      [0.2, 0.5, 0.9].map(spread => ({
        family: 'like Scholl-2 (50 to 500 pieces, 3 to 9 of them in stock 1000, spread 20 to 90 %)',
        stock: 1000,
        times: 1,
        pieces: many(count, Math.ceil((1000 / each) * (1 - spread)), Math.floor((1000 / each) * (1 + spread))),
      })),
    ),
  ),
  ...[120, 250, 500, 1000].map(count => ({
    family: 'like Falkenauer-U (120 to 1000 pieces of 20 to 100, stock 150)',
    stock: 150,
    times: 1,
    pieces: many(count, 20, 100),
  })),
  ...[100, 120].map(count => ({
    family: 'like Schwerin (100 and 120 pieces of 150 to 200, stock 1000)',
    stock: 1000,
    times: 1,
    pieces: many(count, 150, 200),
  })),
];

/** Instances of all classes, drawn anew for each seed. */
export function drawnInstances(seed: number): DrawnInstance[] {
  const uniform = seededUniform(seed);
  const draw: Draw = (low, high) => low + Math.floor(uniform() * (high - low + 1));
  return KINDS.flatMap(({ family, stock, times, pieces, full = 0 }) =>
    Array.from({ length: times }, () => {
      let lengths = pieces(draw);
      while ((lengths.reduce((sum, length) => sum + length, 0) / stock) % 1 < full) lengths = pieces(draw);
      return {
        family,
        problem: {
          pieces: lengths.map(length => ({ length: new Decimal(length), quantity: 1 })),
          stock: [{ length: new Decimal(stock) }],
          kerf: new Decimal(0),
          unit: 'mm' as const,
        },
      };
    }),
  );
}
