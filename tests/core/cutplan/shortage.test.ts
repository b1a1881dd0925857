import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { TradeError } from '../../../src/core/tradeError';
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
