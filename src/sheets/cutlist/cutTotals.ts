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
  /** What the rack is worth less afterwards, as the plan counts it: an end is worth its length less the shortest one worth keeping. */
  readonly worth: Decimal;
}

/** Adds up pieces of stock. */
export function cutTotals(reels: readonly PlannedReel[], keep: Decimal | undefined): CutTotals {
  const zero = new Decimal(0);
  const stock = reels.reduce((sum, reel) => sum.plus(reel.rack.length), zero);
  const used = reels.reduce((sum, reel) => reel.cuts.reduce((part, cut) => part.plus(cut.length), sum), zero);
  const kept = reels.reduce((sum, reel) => (reel.isKept ? sum.plus(reel.left) : sum), zero);
  const worthOf = (length: Decimal) => (keep ? Decimal.max(0, length.minus(keep)) : zero);
  const worth = keep ? reels.reduce((sum, reel) => sum.plus(worthOf(reel.rack.length)).minus(worthOf(reel.left)), zero) : stock;
  return { reels: reels.length, stock, used, kept, lost: stock.minus(used).minus(kept), worth };
}
