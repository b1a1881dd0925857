import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { TradeError } from '../../../src/core/tradeError';
import { leastLoss, smallCase } from './bruteForce';
import { problemOf } from './smallProblem';

/** `npm run bench` runs 30,000. */
const CASES = Number(process.env.SMALL_CASES ?? 3000);
const BLOCK = 250;

test.each(Array.from({ length: Math.ceil(CASES / BLOCK) }, (_, block) => block * BLOCK))(
  'random cases from %i on lose what brute force finds',
  async first => {
    for (let seed = first; seed < Math.min(CASES, first + BLOCK); seed++) {
      const small = smallCase(seed);
      const least = leastLoss(small);
      try {
        const plan = await solveCutPlan(problemOf(small));
        expect(plan.bound.times(10).toNumber()).toBeLessThanOrEqual(least);
        const loss = plan.loss.times(10).toNumber();
        expect({ seed, loss, isProven: plan.isProven }).toEqual({ seed, loss: least, isProven: true });
      } catch (error) {
        if (!(error instanceof TradeError)) throw error;
        expect({ seed, least, message: error.message }).toEqual({
          seed,
          least: Infinity,
          message: expect.stringMatching(/short of|longer than every stock/),
        });
        expect(error.message).not.toContain('seems');
      }
    }
  },
  120_000,
);
