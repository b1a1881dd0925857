import { Decimal } from '../../core/units/decimal';
import type { PlannedReel } from './plannedReel';

/** Where the hose that is cut into goes; stock = used + kept + lost. */
export interface CutTotals {
  /** Pieces of stock cut into. */
  readonly reels: number;
  readonly stock: Decimal;
  /** Hose in the assemblies. */
  readonly used: Decimal;
  /** Left over and worth keeping. */
  readonly kept: Decimal;
  /** Squaring, kerfs and ends too short to keep. */
  readonly lost: Decimal;
}

/** Adds up pieces of stock. */
export function cutTotals(reels: readonly PlannedReel[]): CutTotals {
  const zero = new Decimal(0);
  const stock = reels.reduce((sum, reel) => sum.plus(reel.rack.length), zero);
  const used = reels.reduce((sum, reel) => reel.cuts.reduce((part, cut) => part.plus(cut.length), sum), zero);
  const kept = reels.reduce((sum, reel) => (reel.isKept ? sum.plus(reel.left) : sum), zero);
  return { reels: reels.length, stock, used, kept, lost: stock.minus(used).minus(kept) };
}
