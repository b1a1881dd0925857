import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { lengthText } from '../table/lengthText';
import type { CutLine } from '../jobs/cutLine';
import type { HosePlan } from './planHose';

/** Long lengths in metres or feet beside the unit they were planned in. */
export function longText(length: Decimal, unit: LengthUnit): string {
  return unit === 'mm' ? `${length.div(1000).toFixed(2)} m` : `${length.div(12).toFixed(1)} ft`;
}

/** How good a plan is, in one sentence. */
export function proofSentence({ plan, job, isFilled }: HosePlan): string {
  if (!plan) return 'No plan.';
  if (isFilled) return 'What still fitted was laid on the ends of the plan: whether a better plan cuts the same is not known.';
  const least = job.problem.keep ? 'no plan costs the rack less' : 'no plan takes less stock';
  return plan.isProven ? `Proven best: ${least}.` : `At most ${plan.percentOver} % over the best possible.`;
}

/** How a plan is judged, where offcuts are kept. */
export function worthSentence(keep: Decimal, unit: LengthUnit): string {
  return `A reel or an offcut counts with its length less ${lengthText(keep, unit)} ${unit}, because its last end will be scrap one day. So offcuts that just fit are used before a new reel.`;
}

/** What has to be bought, or why that is not known. */
export function buySentence({ buy, job, reelLength }: HosePlan, unit: LengthUnit): string {
  if (!buy && reelLength) return `No number of reels of ${lengthText(reelLength, unit)} ${unit} was found to be enough.`;
  if (!buy)
    return `How much to buy is not known: give the reel length of ${job.hose} in the Catalogue (sheet Hoses, column Reel length).`;
  const reels = `${buy.reels} ${buy.reels === 1 ? 'reel' : 'reels'} of ${lengthText(buy.reelLength, unit)} ${unit}`;
  if (buy.reels === buy.atLeast) return `Buy ${reels}: the least that is enough.`;
  const more = buy.reels - buy.atLeast;
  return `Buy ${reels}: enough, and at most ${more === 1 ? 'one' : more} more than needed.`;
}

/** A line with its pieces: `line 4 Boom: 2 × 3303 mm`. */
export function lineText(
  { line, label, quantity, cutLength, waits }: Pick<CutLine, 'line' | 'label' | 'quantity' | 'cutLength' | 'waits'>,
  unit: string,
): string {
  const name = waits !== undefined ? `piece ${waits}` : /^row \d+$/.test(line) ? line : `line ${line}`;
  return `${name}${label && ` ${label}`}: ${quantity} × ${lengthText(cutLength, unit)} ${unit}`;
}

export const piecesIn = (lines: readonly CutLine[]) => lines.reduce((sum, { quantity }) => sum + quantity, 0);

/** Which pieces the rack is too short for, what would help, and what is planned without them. */
export function shortageSentence(plan: HosePlan, unit: LengthUnit): string {
  const { later, job, shortage } = plan;
  const short = later.map(line => lineText(line, unit)).join('; ');
  const start = shortage === 'sure' ? 'The rack is too short for' : 'No plan was found that cuts everything. It leaves out';
  const all = piecesIn(job.lines) + piecesIn(later);
  const now =
    plan.plan &&
    `The plan below cuts the other ${piecesIn(job.lines)} of ${all} pieces: the first lines of the sheet first, then what still fits.`;
  return [`${start} ${short}.`, buySentence(plan, unit), now].filter(Boolean).join(' ');
}

/** Why a hose gives no piece at all: there is none of it, none that may be used, or the squaring takes all of it. */
export function noneText({ job }: HosePlan): string {
  if (job.rack.length > 0) return 'nothing in the rack is longer than the squaring';
  return job.unusable ? `none in the rack that may be used: ${job.unusable}` : 'none in the rack';
}

/** Which lines were left out because no piece of the rack is long enough, and what would help. */
export function tooLongSentence(plan: HosePlan, unit: LengthUnit): string {
  const { tooLong, longest, beyondReel, reelLength, shortage } = plan;
  const isNone = !plan.job.unusable && plan.job.rack.length === 0;
  const none = noneText(plan);
  const given = longest.isZero()
    ? isNone
      ? 'The rack has none of this hose.'
      : `${none[0]!.toUpperCase()}${none.slice(1)}.`
    : `The rack gives ${lengthText(longest, unit)} ${unit} in one piece at most.`;
  const reel = reelLength && `a new reel of ${lengthText(reelLength, unit)} ${unit}`;
  const beyond = beyondReel.map(({ line }) => line).join(', ');
  const help = [
    beyond && `Longer than ${reel}, too: line ${beyond}; check the length.`,
    // With a shortage beside it, what to buy stands there for both.
    beyondReel.length < tooLong.length && shortage === undefined && buySentence(plan, unit),
  ];
  return [`${tooLong.map(line => lineText(line, unit)).join('; ')}.`, given, ...help].filter(Boolean).join(' ');
}

/** What a hose comes to, behind its name on the cut list; what waits is said above it. */
export function hoseSummary(plan: HosePlan, unit: LengthUnit): string {
  const { totals } = plan;
  if (!totals) return '';
  const { reels, used, kept, lost } = totals;
  const stock = `${reels} ${reels === 1 ? 'reel' : 'reels'} cut into`;
  const lengths = `used ${longText(used, unit)}, kept ${longText(kept, unit)}, lost ${longText(lost, unit)}`;
  return `${stock}, ${lengths}. ${proofSentence(plan)}`;
}

/** What planning does otherwise than cutting in the order of the sheet: the numbers of the table, in words. */
export function comparison({ totals, inSheetOrder }: HosePlan, unit: LengthUnit): string {
  if (!totals) return '';
  if (!inSheetOrder) return 'In the order of the sheet the rack would not even be enough.';
  const { reels, lost, kept } = inSheetOrder;
  if (reels === totals.reels && lost.eq(totals.lost) && kept.eq(totals.kept))
    return 'In the order of the sheet it comes to the same.';
  const pairs = [
    reels !== totals.reels && `${totals.reels} ${totals.reels === 1 ? 'piece' : 'pieces'} of stock fetched (${reels})`,
    !lost.eq(totals.lost) && `${longText(totals.lost, unit)} becomes scrap (${longText(lost, unit)})`,
    !kept.eq(totals.kept) && `${longText(totals.kept, unit)} goes back to the rack (${longText(kept, unit)})`,
  ];
  return `With this plan, and in brackets in the order of the sheet: ${pairs.filter(Boolean).join('; ')}.`;
}
