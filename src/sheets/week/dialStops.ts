import type { Decimal } from '../../core/units/decimal';

/** Dials that one crimp, or both crimps of a line, may be made at. */
export interface DialWindow {
  readonly low: Decimal;
  readonly high: Decimal;
  /** Preferred within. */
  readonly best: Decimal;
}

const holds = ({ low, high }: DialWindow, dial: Decimal) => dial.gte(low) && dial.lte(high);

/**
 * The fewest dials that serve all windows: those of a single dial are given; the others are pierced from the left, each by the last dial
 * of the window that ends first (the least number of points that pierce intervals), then moved to where they are liked best.
 * @returns a dial for each window, in their order
 */
export function dialStops(windows: readonly DialWindow[]): readonly Decimal[] {
  const chosen = new Array<Decimal | undefined>(windows.length).fill(undefined);
  const given = windows.filter(({ low, high }) => low.eq(high)).map(({ low }) => low);
  windows.forEach((window, index) => {
    const near = given
      .filter(dial => holds(window, dial))
      .sort((a, b) => a.minus(window.best).abs().comparedTo(b.minus(window.best).abs()));
    chosen[index] = near[0];
  });
  const open = windows.map((window, index) => ({ window, index })).filter(({ index }) => chosen[index] === undefined);
  open.sort((a, b) => a.window.high.comparedTo(b.window.high));
  while (open.length > 0) {
    const { high } = open[0]!.window;
    const group = open.filter(({ window }) => holds(window, high));
    const low = group.map(({ window }) => window.low).reduce((a, b) => (a.gt(b) ? a : b));
    const likes = group.map(({ window }) => window.best).sort((a, b) => a.comparedTo(b));
    const like = likes[Math.floor((likes.length - 1) / 2)]!;
    const dial = like.lt(low) ? low : like.gt(high) ? high : like;
    for (const { index } of group) chosen[index] = dial;
    for (const each of group) open.splice(open.indexOf(each), 1);
  }
  return chosen as readonly Decimal[];
}
