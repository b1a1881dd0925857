import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { lengthText } from '../table/lengthText';
import type { HosePlan } from './planHose';
import { lineText, longText, noneText, piecesIn } from './planText';
import { countedText } from '../../core/countedText';

const sumOf = (plans: readonly HosePlan[], pick: (plan: HosePlan) => Decimal | undefined) =>
  plans.reduce((sum, plan) => sum.plus(pick(plan) ?? 0), new Decimal(0));

function waitingSentence(plan: HosePlan, unit: LengthUnit): string | undefined {
  const { job, later, tooLong, longest } = plan;
  const why = longest.isZero() ? noneText(plan) : 'longer than any piece in the rack';
  const short = later.length > 0 && `not enough in the rack for ${later.map(line => lineText(line, unit)).join('; ')}`;
  const long = tooLong.length > 0 && `${why}: ${tooLong.map(line => lineText(line, unit)).join('; ')}`;
  const said = [short, long].filter(Boolean).join('; ');
  return said ? `${job.hose}: ${said}` : undefined;
}

function boughtText({ buy, job }: HosePlan, unit: LengthUnit): readonly string[] {
  return buy ? [`${countedText(buy.reels, 'reel')} of ${job.hose}, ${lengthText(buy.reelLength, unit)} ${unit} each`] : [];
}

/**
 * What a plan comes to, for all hoses together and before any button: pieces planned, pieces that wait and why, what is bought, what is
 * left.
 */
export function overallResult(plans: readonly HosePlan[], unit: LengthUnit): readonly string[] {
  const cut = plans.filter(({ totals }) => totals);
  const planned = cut.reduce((sum, { job }) => sum + piecesIn(job.lines), 0);
  const reels = cut.reduce((sum, { totals }) => sum + totals!.reels, 0);
  const waiting = plans.reduce((sum, { later, tooLong }) => sum + piecesIn(later) + piecesIn(tooLong), 0);
  const why = plans.flatMap(plan => waitingSentence(plan, unit) ?? []);
  const bought = plans.flatMap(plan => boughtText(plan, unit));
  const kept = cut.flatMap(plan => plan.reels.filter(({ isKept }) => isKept)).length;
  const proven = cut.every(({ plan }) => plan?.isProven) ? ' No plan is better.' : '';
  const ends =
    kept > 0
      ? `${longText(
          sumOf(cut, ({ totals }) => totals?.kept),
          unit,
        )} in ${countedText(kept, 'end')} back to the rack`
      : 'no offcut worth keeping';
  return [
    `${countedText(planned, 'piece')} planned from ${countedText(reels, 'piece')} of stock.${cut.length > 0 ? proven : ''}`,
    ...(waiting > 0 ? [`${countedText(waiting, 'piece')} ${waiting === 1 ? 'waits' : 'wait'}: ${why.join('. ')}.`] : []),
    ...(bought.length > 0 ? [`To buy: ${bought.join('; ')}.`] : []),
    ...(cut.length > 0
      ? [
          `Left: ${ends}; ${longText(
            sumOf(cut, ({ totals }) => totals?.lost),
            unit,
          )} becomes scrap.`,
        ]
      : []),
  ];
}
