import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CutTotals } from './cutTotals';
import { lengthText } from '../sheets/lengthCell';
import type { HosePlan } from './planHose';

/** Long lengths in metres or feet beside the unit they were planned in. */
export function longText(length: Decimal, unit: LengthUnit): string {
  return unit === 'mm' ? `${length.div(1000).toFixed(2)} m` : `${length.div(12).toFixed(1)} ft`;
}

/** How good a plan is, in one sentence. */
export function proofSentence({ plan }: HosePlan): string {
  if (!plan) return 'No plan.';
  return plan.isProven ? 'Proven best: no plan loses less.' : `At most ${plan.percentOver} % over the best possible.`;
}

/** What has to be bought, or why that is not known. */
export function buySentence({ buy, job, reelLength }: HosePlan, unit: LengthUnit): string {
  if (!buy && reelLength) return `No number of reels of ${lengthText(reelLength, unit)} ${unit} was found to be enough.`;
  if (!buy) return `How much to buy is not known: give the reel length of ${job.hose} in the sheet Hoses (column Reel length).`;
  const reels = `${buy.reels} ${buy.reels === 1 ? 'reel' : 'reels'} of ${lengthText(buy.reelLength, unit)} ${unit}`;
  if (buy.reels === buy.atLeast) return `Buy ${reels}: the least that is enough.`;
  const more = buy.reels - buy.atLeast;
  return `Buy ${reels}: enough, and at most ${more === 1 ? 'one' : more} more than needed.`;
}

/** One hose in one sentence, for the head of the cut list. */
export function summarySentence(plan: HosePlan, unit: LengthUnit): string {
  const { totals, job } = plan;
  if (!totals) return `${job.hose}: not enough stock, not in this list.`;
  const parts = `${totals.reels} cut into, used ${longText(totals.used, unit)}, kept ${longText(totals.kept, unit)}, lost ${longText(totals.lost, unit)}`;
  return `${job.hose}: ${parts}. ${proofSentence(plan)}`;
}

/** What planning saves against cutting in the order of the sheet. */
export function comparison(totals: CutTotals, inSheetOrder: CutTotals | undefined, unit: LengthUnit): string {
  if (!inSheetOrder) return 'In the order of the sheet the rack would not even be enough.';
  const saved = inSheetOrder.lost.minus(totals.lost);
  const reels = inSheetOrder.reels - totals.reels;
  const lost = saved.isZero() ? 'as much is lost' : `${longText(saved.abs(), unit)} ${saved.gt(0) ? 'more' : 'less'} is lost`;
  const opened = reels === 0 ? '' : `, ${Math.abs(reels)} ${reels > 0 ? 'more' : 'fewer'} cut into`;
  return `In the order of the sheet ${lost}${opened}.`;
}
