import type { CutPlanProblem } from '../../../src/core/cutplan/cutPlan';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { TradeError } from '../../../src/core/tradeError';
import { Decimal } from '../../../src/core/units/decimal';
import { processorTime, ROOM } from '../../processorTime';
import { seeded } from './bruteForce';

const d = (value: number) => new Decimal(value);

/** So many lengths (in whole tenths) from a range, each so many times. */
function lengths(count: number, from: number, to: number, quantity: number | undefined, seed = 1) {
  const random = seeded(seed);
  return Array.from({ length: count }, () => ({ length: d(random(from * 10, to * 10)).div(10), quantity }));
}

const pieces = (count: number, from: number, to: number, quantity: number) =>
  lengths(count, from, to, quantity).map(piece => ({ ...piece, quantity }));

const SECONDS = 1;
/* A step begun before the stop and what comes after it (writing the plan, its check) take 0.1 to 0.3 s more on a quiet machine. A step that
   outlived the clock took many times the seconds. */
const AT_MOST = SECONDS + 0.3 * ROOM + 1;
const bench = { kerf: d(3), keep: d(500), squaring: d(10), unit: 'mm', seconds: SECONDS } as const;
const reels = (length: number, quantity?: number) => [{ length: d(length), quantity }];

// The safety clock runs on processor time, so that other work on the machine does not change what is tested.
beforeEach(() => {
  jest.spyOn(performance, 'now').mockImplementation(processorTime());
});
afterEach(() => {
  jest.restoreAllMocks();
});

/** What became of a problem, and after how many seconds of the processor. */
async function outcome(problem: CutPlanProblem): Promise<{ said: string; seconds: number }> {
  const spent = processorTime();
  const said = await solveCutPlan(problem).then(
    plan => `${plan.stockCut} cut`,
    (error: unknown) => {
      if (!(error instanceof TradeError)) throw error;
      return error.message;
    },
  );
  return { said, seconds: spent() / 1000 };
}

test.each<[string, CutPlanProblem]>([
  ['a million pieces of one length', { ...bench, pieces: pieces(1, 500, 600, 1_000_000), stock: reels(6000) }],
  ['a million pieces of 20 lengths', { ...bench, pieces: pieces(20, 300, 2500, 50_000), stock: reels(6000) }],
  ['1,000 lengths, one of each', { ...bench, pieces: pieces(1000, 300, 2500, 1), stock: reels(20_000) }],
  ['1,000 lengths, 100 of each', { ...bench, pieces: pieces(1000, 300, 2500, 100), stock: reels(20_000) }],
  ['1,000 lengths from 120 offcuts', { ...bench, pieces: pieces(1000, 300, 2500, 1), stock: lengths(120, 8000, 24_000, 1) }],
  ['300 lengths from 1,000 offcuts', { ...bench, pieces: pieces(300, 300, 2500, 10), stock: lengths(1000, 2000, 20_000, 1) }],
  ['tiny pieces from long stock', { ...bench, kerf: d(0), pieces: pieces(200, 1, 9, 500), stock: reels(10_000_000) }],
])('%s are planned, and no step outlives the seconds', async (_, problem) => {
  const { said, seconds } = await outcome(problem);
  expect(said).toMatch(/^\d+ cut$/);
  expect(seconds).toBeLessThan(AT_MOST);
});

test.each<[string, CutPlanProblem, RegExp]>([
  [
    'a thousandth of the stock',
    { ...bench, pieces: pieces(20, 300, 2500, 50_000), stock: reels(6000, 1000) },
    /^stock is short of 50000 x .* mm with kerf are missing/,
  ],
  [
    '1,000 lengths from 200 offcuts',
    { ...bench, pieces: pieces(1000, 300, 2500, 5), stock: lengths(200, 2000, 20_000, 1) },
    /^stock is short of .* mm with kerf are missing/,
  ],
  [
    'enough length, but each piece takes more than half a reel',
    { ...bench, pieces: pieces(100, 5010, 9000, 200), stock: reels(10_000, 19_000) },
    /^stock is short of .* mm with kerf are missing/,
  ],
  [
    'a shortage that division does not see',
    { ...bench, pieces: pieces(300, 300, 2500, 3), stock: reels(20_000, 63) },
    /^(\d+ cut$|stock (is|seems) short of )/,
  ],
])('%s: what is short is said within the seconds', async (_, problem, sentence) => {
  const { said, seconds } = await outcome(problem);
  expect(said).toMatch(sentence);
  expect(seconds).toBeLessThan(AT_MOST);
});

test('a stop from outside ends a long search within a second', async () => {
  const signal = { aborted: false };
  let sinceStop: (() => number) | undefined;
  setTimeout(() => {
    signal.aborted = true;
    sinceStop = processorTime();
  }, 300);
  const problem: CutPlanProblem = {
    ...bench,
    pieces: pieces(300, 300, 2500, 2),
    stock: lengths(200, 2000, 20_000, 1),
    seconds: 600,
  };
  const plan = await solveCutPlan(problem, { signal });
  expect(plan.stockCut).toBeGreaterThan(50);
  expect(sinceStop!() / 1000).toBeLessThan(1 * ROOM);
});
