/** One length of stock, in whole units of the grid. */
export interface GridStock {
  /** Σ (piece + kerf) must not exceed this: length − squaring + kerf (the last piece needs no kerf behind it). */
  readonly capacity: number;
  /** Pieces of stock there are; for unlimited stock as many as there are pieces to cut. */
  readonly count: number;
  readonly unlimited: boolean;
  /** Loss when nothing left over is worth anything: v(length) + handling. */
  readonly whole: number;
  /** Loss of an offcut plan is base + Σ (piece + kerf) as long as that is less than `whole`; Infinity where offcuts count nothing. */
  readonly base: number;
}
