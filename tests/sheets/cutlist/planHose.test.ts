import fc from 'fast-check';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { TradeError } from '../../../src/core/tradeError';
import { Decimal } from '../../../src/core/units/decimal';
import type { CutLine } from '../../../src/sheets/jobs/cutLine';
import type { CutSettings } from '../../../src/sheets/cutlist/cutSettings';
import { firstFit, onePerPiece } from '../../../src/sheets/cutlist/firstFit';
import { fillRests } from '../../../src/sheets/cutlist/fillRests';
import { hoseJobs, withRack } from '../../../src/sheets/cutlist/hoseJob';
import { planHose, type HosePlan } from '../../../src/sheets/cutlist/planHose';
import type { PlanSolver } from '../../../src/sheets/cutlist/planSolver';
import { overallResult } from '../../../src/sheets/cutlist/overallResult';
import { buySentence, hoseSummary, shortageSentence, tooLongSentence } from '../../../src/sheets/cutlist/planText';
import { reelsToBuy } from '../../../src/sheets/cutlist/reelsToBuy';
import { reelName } from '../../../src/sheets/cutlist/reelText';
import type { RackRow } from '../../../src/sheets/rack/rackRow';
import { processorTime } from '../../processorTime';
import { USUAL_SETTINGS } from './usualSettings';

const d = (value: number) => new Decimal(value);
const today = '2026-10-05';

const line = (row: number, length: number, quantity: number, hose = 'Larch DN 12'): CutLine => ({
  row,
  line: String(row),
  label: `job ${row}`,
  hose,
  quantity,
  wanted: d(length),
  cutLength: d(length),
});

const reel = (row: number, length: number, quantity = 1, made = '', hose = 'Larch DN 12'): RackRow => ({
  row,
  hose,
  length: d(length),
  quantity,
  place: `A${row}`,
  lot: '',
  made,
});

test('lines are planned hose by hose, each from its own part of the rack, names compared without case', () => {
  const jobs = hoseJobs(
    [line(1, 900, 1), line(2, 700, 2, 'Alder'), line(3, 800, 1, 'larch dn 12')],
    [reel(1, 5000), reel(2, 6000, 1, '', 'ALDER')],
    USUAL_SETTINGS,
    today,
  );
  expect(jobs.map(job => [job.hose, job.lines.map(one => one.row), job.rack.map(one => one.row)])).toEqual([
    ['Larch DN 12', [1, 3], [1]],
    ['Alder', [2], [2]],
  ]);
});

/** The properties hold for any plan, so little work is enough; the clock counts time of the processor, so that other work does not matter. */
beforeEach(() => {
  jest.spyOn(performance, 'now').mockImplementation(processorTime());
});
afterEach(() => {
  jest.restoreAllMocks();
});

const quick: PlanSolver = (problem, watch) => solveCutPlan({ ...problem, seconds: 0.05 }, watch);

test('every piece is cut once, for its line, and stock = used + kept + lost, whatever the job', async () => {
  const job = fc.record({
    lines: fc.array(fc.tuple(fc.integer({ min: 200, max: 1900 }), fc.integer({ min: 1, max: 5 })), {
      minLength: 1,
      maxLength: 6,
    }),
    rack: fc.array(fc.tuple(fc.integer({ min: 2000, max: 9000 }), fc.integer({ min: 1, max: 3 })), {
      minLength: 3,
      maxLength: 6,
    }),
    keep: fc.option(fc.integer({ min: 300, max: 900 }), { nil: undefined }),
  });
  await fc.assert(
    fc.asyncProperty(job, async ({ lines, rack, keep }) => {
      const set = { ...USUAL_SETTINGS, keep: keep === undefined ? undefined : d(keep) };
      const [one] = hoseJobs(
        lines.map(([l, q], i) => line(i + 1, l, q)),
        rack.map(([l, q], i) => reel(i + 1, l, q)),
        set,
        today,
      );
      const result = await planHose(one!, set, undefined, quick);
      const cuts = result.reels.flatMap(({ cuts: all }) => all);
      // What is short comes last of its line, so that the pieces that are cut and those to come make up the whole.
      const lacking = result.later.flatMap(each => {
        const first = (each.ordered ?? each.quantity) - each.quantity + 1;
        return Array.from({ length: each.quantity }, (_, n) => `${each.row}/${first + n}/${each.cutLength}`);
      });
      expect(result.shortage === undefined).toBe(lacking.length === 0);
      const names = cuts
        .map(cut => `${cut.line.row}/${cut.piece}/${cut.length}`)
        .concat(lacking)
        .sort();
      const wanted = lines.flatMap(([l, q], i) => Array.from({ length: q }, (_, n) => `${i + 1}/${n + 1}/${l}`)).sort();
      expect(names).toEqual(wanted);
      // Of a rack that is short, what can be cut now may not be found in so little time: then nothing is planned, and all is said to lack.
      if (!result.plan) {
        expect([result.reels, [...lacking].sort()]).toEqual([[], wanted]);
        return;
      }
      const { stock, used, kept, lost } = result.totals!;
      expect(used.plus(kept).plus(lost).eq(stock)).toBe(true);
      expect(lost.gte(0)).toBe(true);
      expect(result.totals!.worth).toEqual(result.plan!.loss);
      // The solver tries the sheet's order itself, so no plan is worse than it.
      if (keep === undefined && result.inSheetOrder) expect(stock.lte(result.inSheetOrder.stock)).toBe(true);
      for (const { row, quantity } of one!.rack) {
        expect(result.reels.filter(planned => planned.rack.row === row).length).toBeLessThanOrEqual(quantity);
      }
    }),
    { numRuns: 60 },
  );
});

test('in sheet order each piece goes on the first reel begun where it fits (worked by hand)', () => {
  const lines = [line(1, 600, 1), line(2, 500, 2), line(3, 380, 1)];
  const plain = { ...USUAL_SETTINGS, kerf: d(0), squaring: undefined };
  const { stock, missing } = firstFit(onePerPiece(lines), [reel(1, 1000), reel(2, 1000), reel(3, 1000)], plain);
  expect(stock.map(one => one.cuts.map(cut => cut.length.toNumber()))).toEqual([
    [600, 380],
    [500, 500],
  ]);
  expect(missing).toEqual([]);
});

test('the last piece needs no kerf behind it: 2 × 498.5 with a kerf of 3 come out of 1000', () => {
  const fits = (length: number) =>
    firstFit(onePerPiece([line(1, length, 2)]), [reel(1, 1000)], { ...USUAL_SETTINGS, squaring: undefined }).missing.length;
  expect([fits(498.5), fits(498.6)]).toEqual([0, 1]);
});

test('not enough stock: says which lengths, and how many reels to buy at least', async () => {
  const [job] = hoseJobs([line(1, 4000, 6)], [reel(1, 9000)], USUAL_SETTINGS, today);
  const result = await planHose(job!, USUAL_SETTINGS, d(10_000), solveCutPlan);
  expect(result.shortage).toBe('sure');
  expect(result.later.map(({ quantity, ordered }) => [quantity, ordered])).toEqual([[4, 6]]);
  expect(result.reels.flatMap(({ cuts }) => cuts)).toHaveLength(2);
  expect(shortageSentence(result, 'mm')).toBe(
    'The rack is too short for line 1 job 1: 4 × 4000 mm. Buy 2 reels of 10000 mm: the least that is enough. The plan below cuts the other 2 of 6 pieces: the first lines of the sheet first, then what still fits.',
  );
  expect(overallResult([result], 'mm')).toContain(
    '4 pieces wait: Larch DN 12: not enough in the rack for line 1 job 1: 4 × 4000 mm.',
  );
  expect(result.buy).toEqual({ reelLength: d(10_000), reels: 2, atLeast: 2 });
});

test('what can be cut now: the first lines of the sheet, though later ones fill the reel better, then what still fits (by hand)', async () => {
  const plain = { ...USUAL_SETTINGS, kerf: d(0), squaring: undefined, keep: undefined };
  // 1000: 600 first; 500 no longer fits, of the 2 × 200 both do. Without the order 500 + 2 × 200 would waste less.
  const [job] = hoseJobs([line(1, 600, 1), line(2, 500, 1), line(3, 200, 2)], [reel(1, 1000)], plain, today);
  const { reels, later } = await planHose(job!, plain, undefined, solveCutPlan);
  expect(reels.flatMap(({ cuts }) => cuts.map(cut => cut.line.row)).sort()).toEqual([1, 3, 3]);
  expect(later.map(({ row }) => row)).toEqual([2]);
});

test('what waits is laid on the ends of the plan that is shown, with kerf and squaring, until nothing more fits (by hand)', async () => {
  const cut = { ...USUAL_SETTINGS, kerf: d(3), squaring: d(20), keep: undefined };
  // Asked for two pieces, this solver has the plan; asked for more, it finds none: so nothing but first fit can add to it.
  const blind: PlanSolver = async (problem, watch) => {
    const pieces = problem.pieces.reduce((sum, { quantity }) => sum + quantity, 0);
    if (pieces > 2) throw new TradeError('unsettled', 'stock', 'is very tight', 'allow more seconds');
    return solveCutPlan(problem, watch);
  };
  const job = withRack({ hose: 'Larch DN 12', lines: [line(1, 1000, 1)], today }, [reel(1, 2000), reel(2, 1500)], cut);
  const now = await planHose(job, cut, undefined, blind);
  const [first] = now.reels;
  // 1500 − 20 − 1000 − 3 leave 477; a piece of 477 fits, one of 478 goes on the other reel, 2000 − 20, which leaves 1499, and 1500 nowhere.
  expect(first!.left.toString()).toBe('477');
  const waiting = [line(2, 1500, 1), line(3, 478, 1), line(4, 477, 1)];
  const whole = { ...job, lines: [...job.lines, ...waiting] };
  const filled = fillRests(whole, now.reels, waiting.slice(1), cut)!;
  expect(filled.reels.map(({ cuts, left }) => [cuts.map(({ line: { row } }) => row), `${left}`])).toEqual([
    [[1, 4], '0'],
    [[3], '1499'],
  ]);
  expect(filled.later).toEqual([]);
  expect(filled.lines.map(({ row, quantity }) => [row, quantity])).toEqual([
    [1, 1],
    [3, 1],
    [4, 1],
  ]);
  expect(fillRests({ ...whole, rack: [reel(2, 1500)] }, now.reels, [line(3, 478, 1)], cut)).toBeUndefined();
});

test('a line waits only where it does not fit the plan that is shown', async () => {
  const plain = { ...USUAL_SETTINGS, kerf: d(0), squaring: undefined, keep: undefined };
  let isFirst = true;
  // Never all three; for two pieces a poor plan first, one on each reel, on whose ends 1040 does not fit.
  const fickle: PlanSolver = async (problem, watch) => {
    const pieces = problem.pieces.reduce((sum, { quantity }) => sum + quantity, 0);
    if (pieces > 2) throw new TradeError('unsettled', 'stock', 'is very tight', 'allow more seconds');
    const plan = await solveCutPlan(problem, watch);
    if (pieces < 2 || !isFirst) return plan;
    isFirst = false;
    const rows = [2000, 1045].map(stock => ({
      ...plan.rows[0]!,
      ...{ stock: d(stock), times: 1, cuts: [{ length: d(1000), count: 1 }], left: d(stock - 1000) },
    }));
    return { ...plan, rows, isProven: true };
  };
  const [job] = hoseJobs([line(1, 1000, 2), line(2, 1040, 1)], [reel(1, 2000), reel(2, 1045)], plain, today);
  const result = await planHose(job!, plain, undefined, fickle);
  expect(result.later).toEqual([]);
  expect(result.shortage).toBeUndefined();
  expect(result.reels.map(({ cuts }) => cuts.map(({ line: { row } }) => row))).toEqual([[1, 1], [2]]);
  expect(hoseSummary(result, 'mm')).toContain('What still fitted was laid on the ends of the plan');
});

test('where no plan is found for all though the stock would do, that is said, and what first fit finds is planned', async () => {
  const plain = { ...USUAL_SETTINGS, kerf: d(0), squaring: undefined };
  const blind: PlanSolver = async (problem, watch) => {
    const pieces = problem.pieces.reduce((sum, { quantity }) => sum + quantity, 0);
    if (pieces > 2) throw new TradeError('unsettled', 'stock', 'is very tight', 'allow more seconds');
    return solveCutPlan(problem, watch);
  };
  const [job] = hoseJobs([line(1, 400, 2), line(2, 700, 1)], [reel(1, 1000)], plain, today);
  const result = await planHose(job!, plain, undefined, blind);
  expect(shortageSentence(result, 'mm')).toMatch(
    /^No plan was found that cuts everything\. It leaves out line 2 job 2: 1 × 700 mm\..* the other 2 of 3 pieces/,
  );
});

test('what is short is given in fractions where the sheet is in inches', async () => {
  const inches: CutSettings = { ...USUAL_SETTINGS, unit: 'in', kerf: new Decimal('0.125'), squaring: undefined, keep: undefined };
  const [job] = hoseJobs([line(1, 40.375, 3)], [reel(1, 100)], inches, today);
  expect(shortageSentence(await planHose(job!, inches, undefined, solveCutPlan), 'in')).toMatch(
    /^The rack is too short for line 1 job 1: 1 × 40 3\/8 in\./,
  );
});

test('pieces that fill no reel well need more reels than their length alone says', async () => {
  const [job] = hoseJobs([line(1, 6000, 3)], [], USUAL_SETTINGS, today);
  const result = await planHose(job!, USUAL_SETTINGS, d(10_000), solveCutPlan);
  expect(result.buy).toMatchObject({ reels: 3, atLeast: 3 });
});

test('says how far the number of reels may be from the least where that is not shown', async () => {
  const cannotTell: PlanSolver = async (problem, watch) => {
    const reels = problem.stock[problem.stock.length - 1]!.quantity!;
    if (reels < 7) throw new TradeError('unsettled', 'stock', 'seems short', 'nothing was found');
    return solveCutPlan(problem, watch);
  };
  const [job] = hoseJobs([line(1, 4000, 10)], [], USUAL_SETTINGS, today);
  const buy = await reelsToBuy(job!.problem, d(10_000), cannotTell);
  expect(buy).toEqual({ reelLength: d(10_000), reels: 7, atLeast: 5 });
  expect(buySentence({ buy, job, reelLength: d(10_000) } as unknown as HosePlan, 'mm')).toBe(
    'Buy 7 reels of 10000 mm: enough, and at most 2 more than needed.',
  );
});

const tell = async (lines: readonly CutLine[], rack: readonly RackRow[], reelLength?: number, set = USUAL_SETTINGS) => {
  const [job] = hoseJobs(lines, rack, set, today);
  const result = await planHose(job!, set, reelLength === undefined ? undefined : d(reelLength), solveCutPlan);
  return { result, text: result.tooLong.length > 0 ? tooLongSentence(result, 'mm') : '' };
};

test('one piece that no reel of the rack is long enough for: the rest is planned, the piece is named with its line', async () => {
  const { result, text } = await tell([line(1, 1200, 3), line(2, 5000, 2), line(3, 800, 1)], [reel(1, 5000)], 20_000);
  expect(result.reels.flatMap(({ cuts }) => cuts.map(cut => cut.line.row)).sort()).toEqual([1, 1, 1, 3]);
  expect(result.shortage).toBeUndefined();
  // 20 mm are squared off: 4980 is left of 5000.
  expect(text).toBe(
    'line 2 job 2: 2 × 5000 mm. The rack gives 4980 mm in one piece at most. Buy 1 reel of 20000 mm: the least that is enough.',
  );
  expect(hoseSummary(result, 'mm')).toMatch(/^1 reel cut into, used /);
  expect(overallResult([result], 'mm')).toContain(
    '2 pieces wait: Larch DN 12: longer than any piece in the rack: line 2 job 2: 2 × 5000 mm.',
  );
});

test('hose that is there but may not be used, or is no longer than the squaring, is not said to be missing', async () => {
  const [job] = hoseJobs([line(1, 1200, 3)], [], USUAL_SETTINGS, today, () => '2 too old (rows 2, 3)');
  const result = await planHose(job!, USUAL_SETTINGS, undefined, solveCutPlan);
  expect(tooLongSentence(result, 'mm')).toContain('mm. None in the rack that may be used: 2 too old (rows 2, 3). How much');
  expect(overallResult([result], 'mm').join(' ')).toContain('Larch DN 12: none in the rack that may be used: 2 too old');
  const { text } = await tell([line(1, 1200, 3)], [reel(1, 10)]);
  expect(text).toContain('Nothing in the rack is longer than the squaring.');
});

test('a piece as long as a reel less its squaring can be cut; a tenth more is too long', async () => {
  const fits = async (length: number) => (await tell([line(1, length, 1)], [reel(1, 5000)])).result;
  expect((await fits(4980)).reels).toHaveLength(1);
  expect((await fits(4980.1)).tooLong).toHaveLength(1);
});

test('a piece longer than a new reel: that is said, and what to buy for the others', async () => {
  const alone = await tell([line(1, 12_000, 1)], [reel(1, 5000)], 10_000);
  expect(alone.result.buy).toBeUndefined();
  expect(alone.text).toBe(
    'line 1 job 1: 1 × 12000 mm. The rack gives 4980 mm in one piece at most. Longer than a new reel of 10000 mm, too: line 1; check the length.',
  );
  const { result, text } = await tell([line(1, 12_000, 1), line(2, 6000, 2), line(3, 900, 1)], [reel(1, 5000)], 10_000);
  expect(result.buy).toEqual({ reelLength: d(10_000), reels: 2, atLeast: 2 });
  expect(text).toMatch(/too: line 1; check the length\. Buy 2 reels of 10000 mm: the least that is enough\.$/);
});

test('too long and too little at once: bought is for both', async () => {
  const { result, text } = await tell([line(1, 6000, 1), line(2, 4000, 3)], [reel(1, 5000)], 10_000);
  expect(result.later.map(({ row, quantity }) => [row, quantity])).toEqual([[2, 2]]);
  expect(result.buy).toEqual({ reelLength: d(10_000), reels: 2, atLeast: 2 });
  expect(text).not.toMatch(/Buy/);
  expect(buySentence(result, 'mm')).toMatch(/^Buy 2 reels/);
});

test('no stock at all of a hose is said as that', async () => {
  const { result, text } = await tell([line(1, 1200, 3)], []);
  expect(result.shortage).toBeUndefined();
  expect(text).toBe(
    'line 1 job 1: 3 × 1200 mm. The rack has none of this hose. How much to buy is not known: give the reel length of Larch DN 12 in the Catalogue (sheet Hoses, column Reel length).',
  );
  expect(hoseSummary(result, 'mm')).toBe('');
  expect(overallResult([result], 'mm')).toContain('3 pieces wait: Larch DN 12: none in the rack: line 1 job 1: 3 × 1200 mm.');
});

test('oldest first with a piece that is too long: the others still take the oldest', async () => {
  const rack = [reel(1, 9000, 1, '2026-05-01'), reel(2, 9000, 1, '2023-01-01')];
  const { result } = await tell([line(1, 9500, 1), line(2, 4000, 2)], rack, undefined, {
    ...USUAL_SETTINGS,
    isOldestFirst: true,
  });
  expect(result.reels.map(one => one.rack.row)).toEqual([2]);
  expect(result.tooLong.map(({ row }) => row)).toEqual([1]);
});

test('oldest first plans from the oldest pieces that just serve', async () => {
  const rack = [reel(1, 10_000, 1, '2026-05-01'), reel(2, 10_000, 1, '2023-01-01'), reel(3, 10_000, 1, '2024-01-01')];
  const oldest = { ...USUAL_SETTINGS, isOldestFirst: true };
  const [job] = hoseJobs([line(1, 4000, 4)], rack, oldest, today);
  const planned = await planHose(job!, oldest, undefined, solveCutPlan);
  expect(planned.job.rack.map(row => row.row)).toEqual([2, 3]);
  expect(planned.reels.map(one => one.rack.row)).toEqual([2, 3]);
});

test('oldest first takes no younger reel where first fit alone would (two old reels, filled to the end, by hand)', async () => {
  const rack = [reel(1, 1000, 1, '2026-01-01'), reel(2, 1000, 1, '2023-01-01'), reel(3, 1000, 1, '2024-01-01')];
  const exact = { ...USUAL_SETTINGS, kerf: d(0), squaring: undefined, keep: undefined, isOldestFirst: true };
  // Longest first puts 400 + 400 on one reel; only 400 + 300 + 300 on each cuts everything from two.
  const [job] = hoseJobs([line(1, 400, 2), line(2, 300, 4)], rack, exact, today);
  expect((await planHose(job!, exact, undefined, solveCutPlan)).job.rack.map(row => row.row)).toEqual([2, 3]);
});

test('equal lengths are taken oldest first even without that option', async () => {
  const rack = [reel(1, 5000, 1, '2026-05-01'), reel(2, 5000, 1, '2023-01-01')];
  const [job] = hoseJobs([line(1, 4000, 1)], rack, USUAL_SETTINGS, today);
  expect((await planHose(job!, USUAL_SETTINGS, undefined, solveCutPlan)).reels[0]!.rack.row).toBe(2);
});

test('hose beyond the age limit of the user is warned of (six years in all: DIN 20066:2002), undated hose is named', () => {
  const limited = { ...USUAL_SETTINGS, ageLimitMonths: 72 };
  const [job] = hoseJobs(
    [line(1, 400, 1)],
    [reel(1, 5000, 1, '2020-09-01'), reel(2, 5000, 1, '2020-11-01'), reel(3, 900)],
    limited,
    today,
  );
  expect(job!.warnings).toEqual([
    'A1 was made 2020-09-01: older than your limit. Do not use it without a check by a qualified person.',
    'No date of making: A3.',
  ]);
});

test('hose beyond the limit is marked at its reel; on the day that ends the limit it is not yet beyond it', async () => {
  const limited = { ...USUAL_SETTINGS, ageLimitMonths: 72 };
  const namesOf = async (...made: string[]) => {
    const rack = made.map((day, index) => reel(index + 1, 1000, 1, day));
    const [job] = hoseJobs([line(1, 900, made.length)], rack, limited, today);
    const { reels } = await planHose(job!, limited, undefined, solveCutPlan);
    return reels.map((one, index) => reelName(one, index + 1, 'mm'));
  };
  expect(await namesOf('2020-10-04', '2020-10-05', '2020-10-06')).toEqual([
    'Reel 1: 1000 mm (A1, made 2020-10-04, OLDER THAN YOUR LIMIT)',
    'Reel 2: 1000 mm (A2, made 2020-10-05)',
    'Reel 3: 1000 mm (A3, made 2020-10-06)',
  ]);
});

test('a date of making that is still to come is said', () => {
  const [job] = hoseJobs([line(1, 400, 1)], [reel(1, 5000, 1, '2026-11-01'), reel(2, 5000, 1, today)], USUAL_SETTINGS, today);
  expect(job!.warnings).toEqual(['A1 was made 2026-11-01, which is in the future: correct that date.']);
});
