/** Points that a character takes on average in the host's usual 11-point fonts, with something to spare. */
const CHARACTER = 5.3;

/** Width in points in which the longest text stands in one line, between two bounds. */
export function columnWidth(texts: readonly string[], least: number, most: number): number {
  const longest = Math.max(0, ...texts.map(text => text.length));
  return Math.min(most, Math.max(least, Math.ceil(longest * CHARACTER)));
}
