import type { CutPlan } from '../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../core/cutplan/solveCutPlan';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import type { CutSettings } from './cutSettings';
import { cutTotals, type CutTotals } from './cutTotals';
import { firstFit, piecesOf } from './firstFit';
import { withRack, type HoseJob } from './hoseJob';
import { oldestThatServe } from './oldestFirst';
import { filledReels, plannedReels, type PlannedReel } from './plannedReel';
import type { PlanSolver } from './planSolver';
import { reelsToBuy, type ReelsToBuy } from './reelsToBuy';

/** What became of one hose. */
export interface HosePlan {
  readonly job: HoseJob;
  readonly plan: CutPlan | undefined;
  readonly reels: readonly PlannedReel[];
  readonly totals: CutTotals | undefined;
  /** Cutting in the order of the sheet; undefined where the rack would not be enough that way. */
  readonly inSheetOrder: CutTotals | undefined;
  /** Why there is no plan, with what is short; undefined where there is one. */
  readonly shortage: string | undefined;
  /** Length of a new reel, where it is known. */
  readonly reelLength: Decimal | undefined;
  /** What would have to be bought; undefined where nothing, where no number of reels helps, or where the reel length is not known. */
  readonly buy: ReelsToBuy | undefined;
}

function sheetOrder(job: HoseJob, settings: CutSettings): CutTotals | undefined {
  const { stock, missing } = firstFit(piecesOf(job.lines), job.rack, settings);
  return missing.length > 0 ? undefined : cutTotals(filledReels(stock, settings), settings.keep);
}

/**
 * Plans one hose, and says what is short where its rack is not enough.
 * @param reelLength length of a new reel of this hose, where it is known
 */
export async function planHose(
  whole: HoseJob,
  settings: CutSettings,
  reelLength: Decimal | undefined,
  solve: PlanSolver,
  watch?: CutPlanWatch,
): Promise<HosePlan> {
  const job = settings.isOldestFirst ? withRack(whole, await oldestThatServe(whole, settings, solve, watch), settings) : whole;
  const none = { job, plan: undefined, reels: [], totals: undefined, inSheetOrder: undefined, reelLength };
  try {
    const plan = await solve(job.problem, watch);
    const reels = plannedReels(job, plan, settings);
    const inSheetOrder = sheetOrder(job, settings);
    return {
      job,
      plan,
      reels,
      totals: cutTotals(reels, settings.keep),
      inSheetOrder,
      shortage: undefined,
      reelLength,
      buy: undefined,
    };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    const buy = reelLength && (await reelsToBuy(job.problem, reelLength, solve, watch));
    return { ...none, shortage: error.message, buy };
  }
}
