/**
 * Where a function that grows crosses a level, to the last bit.
 * @param grows a function that does not fall between `low` and `high`
 * @param low, high limits of the search; the crossing lies between them
 */
export function bisect(grows: (x: number) => number, level: number, low: number, high: number): number {
  let below = low;
  let above = high;
  for (;;) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) return middle;
    if (grows(middle) < level) below = middle;
    else above = middle;
  }
}
