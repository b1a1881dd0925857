import { findShortage, shortageError, type Shortage } from '../../../src/core/cutplan/shortage';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { toGrid } from '../../../src/core/cutplan/toGrid';
import { Work } from '../../../src/core/cutplan/work';
import { TradeError } from '../../../src/core/tradeError';
import { Decimal } from '../../../src/core/units/decimal';
import { leastMissing, smallCase, type SmallCase } from './bruteForce';
import { problemOf } from './smallProblem';

/** What a shortage says is missing, in tenths, and the length of the pieces it names; undefined where there is a plan or a piece too long. */
async function missingOf(small: SmallCase): Promise<{ said: number; named: number } | undefined> {
  try {
    await solveCutPlan(problemOf(small));
    return undefined;
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    if (error.argument !== 'stock') return undefined;
    const [, length] = /^([\d.]+) mm with kerf are missing; add stock or cut fewer$/.exec(error.advice)!;
    const named = error.received.replace('is short of ', '').split(' + ');
    const sum = named.reduce((total, one) => {
      const [count, piece] = one.split(' x ').map(Number);
      return total + count! * (Math.round(piece! * 10) + small.kerf);
    }, 0);
    return { said: Math.round(Number(length) * 10), named: sum };
  }
}

test('a shortage names the least hose that is missing, as brute force finds it', async () => {
  let shortages = 0;
  for (let seed = 0; seed < 600; seed++) {
    const small = smallCase(seed);
    const missing = await missingOf(small);
    if (!missing) continue;
    shortages++;
    const least = leastMissing(small);
    expect({ seed, ...missing }).toEqual({ seed, said: least, named: least });
  }
  expect(shortages).toBeGreaterThan(20);
});

/** What is found to be missing with so much work, in steps of the grid; undefined where a piece is too long for all stock. */
function foundWith(small: SmallCase, work: Work): (Shortage & { readonly steps: number }) | undefined {
  try {
    const gridded = toGrid(problemOf(small));
    const search = findShortage(gridded, work);
    let step = search.next();
    while (!step.done) step = search.next();
    const steps = step.value.missing.reduce((sum, count, item) => sum + count * gridded.grid.widths[item]!, 0);
    return { ...step.value, steps };
  } catch (error) {
    if (error instanceof TradeError && error.argument === 'piece') return undefined;
    throw error;
  }
}

test('a search that ends early calls no shortage the least that is more than what brute force finds, and none less', () => {
  let [least, most] = [0, 0];
  for (let seed = 0; seed < 600; seed++) {
    const small = smallCase(seed);
    const found = foundWith(small, new Work(30 * (seed % 5)));
    if (!found) continue;
    const missing = leastMissing(small);
    expect({ seed, isEnough: found.steps >= missing }).toEqual({ seed, isEnough: true });
    if (found.isLeast) expect({ seed, steps: found.steps }).toEqual({ seed, steps: missing });
    if (missing > 0 && found.isLeast) least++;
    if (missing > 0 && !found.isLeast) most++;
  }
  expect(Math.min(least, most)).toBeGreaterThan(5);
});

describe('the sentence of a shortage', () => {
  const d = (value: number) => new Decimal(value);
  const problem = {
    pieces: [
      { length: d(840), quantity: 1 },
      { length: d(1250), quantity: 3 },
      { length: d(839.95), quantity: 2 },
    ],
    stock: [{ length: d(3000), quantity: 1 }],
    kerf: d(3),
    unit: 'mm',
  } as const;
  // Two widths: 1250 + 3 = 12530 steps, and 840 + 3 = 8430 for the two lengths that share a tenth; of these the shorter is named first.
  const sentence = (missing: readonly number[], isLeast: boolean, isCertain: boolean) =>
    shortageError(problem, toGrid(problem), { missing, isLeast }, isCertain);

  test.each([
    // 12530 + 3 × 8430 = 37820 steps
    [
      'names each length and the least there is to add',
      sentence([1, 3], true, true),
      'impossible',
      'stock is short of 1 x 1250 + 2 x 839.95 + 1 x 840: 3782 mm with kerf are missing; add stock or cut fewer',
    ],
    [
      'says at most where less may be missing',
      sentence([0, 1], false, true),
      'impossible',
      'stock is short of 1 x 839.95: at most 843 mm with kerf are missing; add stock or cut fewer',
    ],
    [
      'leaves it open where a plan may exist that was not found',
      sentence([2, 0], true, false),
      'unsettled',
      'stock seems short of 2 x 1250: no plan that cuts everything was found; at most 2506 mm with kerf are missing; add stock, or allow more seconds',
    ],
    [
      'names nothing where all could be cut but no plan was found',
      sentence([0, 0], true, false),
      'unsettled',
      'stock is very tight: no plan was found, though the stock may be enough: allow more seconds, or add stock',
    ],
  ])('%s', (_, error, code, message) => {
    expect([error.code, error.argument, error.message]).toEqual([code, 'stock', message]);
  });
});
