import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { Decimal } from '../../../src/core/units/decimal';
import type { CutLine } from '../../../src/sheets/jobs/cutLine';
import type { CutSettings } from '../../../src/sheets/cutlist/cutSettings';
import type { Gathered } from '../../../src/sheets/cutlist/gatherCuts';
import { bestPlan } from '../../../src/sheets/cutlist/bestPlan';
import { hoseJobs } from '../../../src/sheets/cutlist/hoseJob';
import { planHoses } from '../../../src/sheets/cutlist/planHoses';
import type { PlanSolver } from '../../../src/sheets/cutlist/planSolver';
import { processorTime, ROOM } from '../../processorTime';

const d = (value: number) => new Decimal(value);
const settings: CutSettings = {
  unit: 'mm',
  step: d(1),
  kerf: d(3),
  squaring: d(10),
  keep: d(500),
  ageLimitMonths: undefined,
  isOldestFirst: false,
};

/** So many hoses with 30 lines each; every second rack is too short for all of them. */
function gathered(hoses: number): Gathered {
  const lines = Array.from({ length: hoses * 30 }, (_, k): CutLine => {
    const cutLength = d(400 + ((k * 373) % 1900));
    return { row: k + 2, line: `${k}`, label: '', hose: `Alder ${k % hoses}`, quantity: 2, wanted: cutLength, cutLength };
  });
  const rack = Array.from({ length: hoses }, (_, k) => ({
    row: k + 2,
    hose: `Alder ${k}`,
    length: d(9000),
    quantity: k % 2 === 0 ? 20 : 6,
    place: '',
    lot: '',
    made: '',
  }));
  const reelLengths = new Map(rack.map(({ hose }) => [hose.toLowerCase(), d(9000)]));
  return { jobs: hoseJobs(lines, rack, settings, '2026-10-05'), settings, reelLengths } as unknown as Gathered;
}

test('two hoses at a time give the plans that one at a time gives, in the order of the sheet', async () => {
  // The clock stands still, so that only the work limit ends a search.
  const clock = jest.spyOn(performance, 'now').mockReturnValue(0);
  const quick: PlanSolver = (problem, watch) => solveCutPlan({ ...problem, seconds: 0.2 }, watch);
  const plansOf = async (atOnce: number) => {
    const plans = await planHoses(gathered(4), quick, () => {}, { aborted: false }, atOnce);
    return plans.map(({ job, totals, later }) => [job.hose, totals?.worth.toString(), later.map(({ row }) => row)]);
  };
  const both = await plansOf(2);
  expect(both.map(([hose]) => hose)).toEqual(['Alder 0', 'Alder 1', 'Alder 2', 'Alder 3']);
  expect(both).toEqual(await plansOf(1));
  clock.mockRestore();
});

test('no more hoses are planned at a time than asked for, and progress is that of the first of them', async () => {
  const running = new Set<object>();
  let most = 0;
  const slow: PlanSolver = async (problem, watch) => {
    const own = {};
    most = Math.max(most, running.add(own).size);
    await new Promise(resolve => setTimeout(resolve, 5));
    try {
      return await solveCutPlan({ ...problem, seconds: 0.02 }, watch);
    } finally {
      running.delete(own);
    }
  };
  const seen: number[] = [];
  await planHoses(gathered(5), slow, ({ number }) => seen.push(number), { aborted: false }, 2);
  expect(most).toBe(2);
  expect(seen).toEqual([...seen].sort((a, b) => a - b));
  expect(seen[0]).toBe(1);
});

test('a stop acts on all hoses within a second, short racks and all, and each still gets a plan', async () => {
  const signal = { aborted: false };
  let sinceStop: (() => number) | undefined;
  const patient: PlanSolver = (problem, watch) => solveCutPlan({ ...problem, seconds: 60 }, watch);
  setTimeout(() => {
    signal.aborted = true;
    sinceStop = processorTime();
  }, 300);
  const plans = await planHoses(gathered(12), patient, () => {}, signal, 1);
  expect(sinceStop!() / 1000).toBeLessThan(1 * ROOM);
  expect(plans.map(({ reels }) => reels.length > 0)).toEqual(Array<boolean>(12).fill(true));
});

test.each([
  ['in rack order', false],
  ['oldest first', true],
])(
  'after a stop each hose that is left asks the solver no more than three times, %s, and its pieces are all told of',
  async (_, isOldestFirst) => {
    let questions = 0;
    const counting: PlanSolver = (problem, watch) => {
      questions += 1;
      return solveCutPlan(problem, watch);
    };
    const jobs = { ...gathered(12), settings: { ...settings, isOldestFirst } };
    const plans = await planHoses(jobs, counting, () => {}, { aborted: true }, 2);
    expect(questions).toBeLessThanOrEqual(12 * 3);
    for (const [index, { reels, later }] of plans.entries()) {
      const cut = reels.reduce((sum, { cuts }) => sum + cuts.length, 0);
      const waiting = later.reduce((sum, { quantity }) => sum + quantity, 0);
      expect({ hose: index, isCut: cut > 0, pieces: cut + waiting }).toEqual({ hose: index, isCut: true, pieces: 60 });
    }
  },
);

test('a search that is ended with less than was at hand leaves what was at hand', async () => {
  const { jobs } = gathered(1);
  const { problem } = jobs[0]!;
  const first = await solveCutPlan({ ...problem, seconds: 0.2 });
  const worse = { ...first, loss: first.loss.plus(1) };
  expect(await bestPlan(problem, first, async () => worse)).toBe(first);
  expect(await bestPlan(problem, worse, async () => first)).toBe(first);
});
