import type { CutPlan } from '../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../core/cutplan/solveCutPlan';
import type { Decimal } from '../../core/units/decimal';
import type { CutLine } from '../jobs/cutLine';
import { bestPlan } from './bestPlan';
import { canCut } from './canCut';
import { cutNow } from './cutNow';
import type { CutSettings } from './cutSettings';
import { cutTotals, type CutTotals } from './cutTotals';
import { fillRests } from './fillRests';
import { firstFit, onePerPiece } from './firstFit';
import { withRack, type HoseJob } from './hoseJob';
import { longestPiece } from './longestPiece';
import { oldestThatServe } from './oldestFirst';
import { filledReels, plannedReels, type PlannedReel } from './plannedReel';
import type { PlanSolver } from './planSolver';
import { reelsToBuy, type ReelsToBuy } from './reelsToBuy';

/** What became of one hose. */
export interface HosePlan {
  /** The lines that were planned, and the rack they were planned on. */
  readonly job: HoseJob;
  readonly plan: CutPlan | undefined;
  readonly reels: readonly PlannedReel[];
  readonly totals: CutTotals | undefined;
  /** Cutting in the order of the sheet; undefined where the rack would not be enough that way. */
  readonly inSheetOrder: CutTotals | undefined;
  /** Lines whose pieces are longer than every piece of the rack: the others are planned without them. */
  readonly tooLong: readonly CutLine[];
  /** The longest piece that the rack gives; 0 = nothing of this hose is in it. */
  readonly longest: Decimal;
  /** The rack is too short for all pieces that fit it, or no plan for all of them was found; undefined where one was. */
  readonly shortage: 'sure' | 'likely' | undefined;
  /** The lines that the rack is too short for, with the pieces that they lack: the others are planned without them. */
  readonly later: readonly CutLine[];
  /** Pieces were laid on what the plan leaves: how good it is, is not known. */
  readonly isFilled?: boolean | undefined;
  /** Length of a new reel, where it is known. */
  readonly reelLength: Decimal | undefined;
  /** Those of `tooLong` that are longer than a new reel, too. */
  readonly beyondReel: readonly CutLine[];
  /** What would have to be bought for all the others; undefined where nothing, where no number of reels helps, or where the reel length is not known. */
  readonly buy: ReelsToBuy | undefined;
}

function sheetOrder(job: HoseJob, settings: CutSettings): CutTotals | undefined {
  const { stock, missing } = firstFit(onePerPiece(job.lines), job.rack, settings);
  return missing.length > 0 ? undefined : cutTotals(filledReels(stock, settings, job.today), settings.keep);
}

type Planned = Pick<HosePlan, 'job' | 'plan' | 'reels' | 'totals' | 'inSheetOrder' | 'shortage' | 'later' | 'isFilled'>;

/** The question whether the rack is enough at all may take longer than those of a search by halving. */
const SECONDS = 1.5;

/** Plans the lines that fit the rack, if it is enough for all of them. */
async function planned(whole: HoseJob, settings: CutSettings, solve: PlanSolver, watch?: CutPlanWatch): Promise<Planned> {
  const none = { plan: undefined, reels: [], totals: undefined, inSheetOrder: undefined, shortage: undefined, later: [] };
  if (whole.lines.length === 0) return { job: whole, ...none };
  const job = settings.isOldestFirst ? withRack(whole, await oldestThatServe(whole, settings, solve, watch), settings) : whole;
  // The best plan is only searched for where there is one: naming what is short would take the solver longer than asking.
  const first = await canCut(job.problem, solve, watch, SECONDS);
  if (!('rows' in first)) {
    return { job, ...none, shortage: first.code === 'impossible' ? 'sure' : 'likely', later: job.lines };
  }
  const plan = first.isProven ? first : await bestPlan(job.problem, first, solve, watch);
  const reels = plannedReels(job, plan, settings);
  const totals = cutTotals(reels, settings.keep);
  return { job, plan, reels, totals, inSheetOrder: sheetOrder(job, settings), shortage: undefined, later: [] };
}

/** Plans the lines that fit the rack; where it is too short for all of them, what can be cut now. */
async function plannedAsFarAsItGoes(
  whole: HoseJob,
  settings: CutSettings,
  solve: PlanSolver,
  watch?: CutPlanWatch,
): Promise<Planned> {
  const all = await planned(whole, settings, solve, watch);
  if (all.shortage === undefined) return all;
  const { lines, later } = await cutNow(whole, settings, solve, watch);
  const now = await planned(withRack({ ...whole, lines }, whole.rack, settings), settings, solve, watch);
  if (!now.plan) return all;
  // Another plan of the same pieces leaves other rests, on which more may fit.
  const filled = later.length > 0 ? fillRests(whole, now.reels, later, settings) : undefined;
  if (!filled) return { ...now, shortage: later.length > 0 ? all.shortage : undefined, later };
  const { reels } = filled;
  const job = { ...now.job, lines: filled.lines };
  return {
    job,
    reels,
    plan: { ...now.plan, isProven: false },
    isFilled: true,
    totals: cutTotals(reels, settings.keep),
    inSheetOrder: sheetOrder({ ...job, rack: whole.rack }, settings),
    shortage: filled.later.length > 0 ? all.shortage : undefined,
    later: filled.later,
  };
}

/**
 * Plans one hose, and says what is too long for its rack, or short.
 * @param reelLength length of a new reel of this hose, where it is known
 */
export async function planHose(
  whole: HoseJob,
  settings: CutSettings,
  reelLength: Decimal | undefined,
  solve: PlanSolver,
  watch?: CutPlanWatch,
): Promise<HosePlan> {
  const longest = longestPiece(whole.rack, settings);
  const longestNew = reelLength && longestPiece([{ length: reelLength }], settings);
  const tooLong = whole.lines.filter(line => line.cutLength.gt(longest));
  const beyondReel = longestNew ? tooLong.filter(line => line.cutLength.gt(longestNew)) : [];
  const without = (left: readonly CutLine[]) => {
    const lines = whole.lines.filter(line => !left.includes(line));
    return withRack({ ...whole, lines }, whole.rack, settings);
  };
  const result = await plannedAsFarAsItGoes(without(tooLong), settings, solve, watch);
  const isShort = result.shortage !== undefined || tooLong.length > beyondReel.length;
  const buy = isShort && reelLength ? await reelsToBuy(without(beyondReel).problem, reelLength, solve, watch) : undefined;
  return { ...result, tooLong, longest, reelLength, beyondReel, buy };
}
