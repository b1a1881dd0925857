import type { Decimal } from '../units/decimal';
import { TradeError } from '../tradeError';

/** A cut hose and what its couplings add, all in one unit. */
export interface OverallLengthInput {
  readonly cut: Decimal;
  /** From the hose's cut end to the point the overall length is measured to, along the hose axis; may be negative. */
  readonly cutOffA: Decimal;
  readonly cutOffB: Decimal;
  /** What was added to the cut: positive = cut longer. */
  readonly allowance?: Decimal | undefined;
}

/**
 * Overall length that a cut hose gives: the way back from `cutLength`.
 * @returns the overall length, in the unit of the input
 * @throws TradeError `impossible` where nothing of the assembly is left
 * Source: common practice of the trade.
 */
export function overallLength({ cut, cutOffA, cutOffB, allowance }: OverallLengthInput): Decimal {
  const overall = cut
    .plus(cutOffA)
    .plus(cutOffB)
    .minus(allowance ?? 0);
  if (overall.lte(0)) {
    throw new TradeError('impossible', 'overall length', `would be ${overall}`, 'check cut length, cut-offs and allowance');
  }
  return overall;
}
