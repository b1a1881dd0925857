import type { Decimal } from '../units/decimal';
import { TradeError } from '../tradeError';

/** An assembly's lengths, all in one unit. */
export interface CutLengthInput {
  /** Overall length of the assembly, between the points it is measured to. */
  readonly overall: Decimal;
  /** From the hose's cut end to the point the overall length is measured to, along the hose axis; may be negative. */
  readonly cutOffA: Decimal;
  readonly cutOffB: Decimal;
  /** Added to the cut: positive = cut longer. */
  readonly allowance?: Decimal | undefined;
}

/** As cutLength, with what comes off in one sum. */
export function cutFrom(overall: Decimal, cutOffs: Decimal): Decimal {
  const cut = overall.minus(cutOffs);
  if (cut.gt(0)) return cut;
  const advice = 'the cut-offs leave no hose; check overall length and cut-offs';
  throw new TradeError('impossible', 'cut length', `would be ${cut}`, advice);
}

/**
 * Length to cut the hose to: overall length less both couplings' cut-offs, plus the allowance.
 * @returns the cut length, in the unit of the input
 * @throws TradeError `impossible` where the cut-offs leave no hose
 * Source: common practice of the trade.
 */
export function cutLength({ overall, cutOffA, cutOffB, allowance }: CutLengthInput): Decimal {
  const cutOffs = cutOffA.plus(cutOffB);
  return cutFrom(overall, allowance ? cutOffs.minus(allowance) : cutOffs);
}
