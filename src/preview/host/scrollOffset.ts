/**
 * How far the part of a sheet that is not frozen must be scrolled, across or down, for a row or column to be in sight: not at all where it is
 * so already. (The spreadsheet library's own reckoning goes wrong by what is frozen.)
 * @param index row or column that is wanted
 * @param first first one that is not frozen
 * @param offset how far it is scrolled now, in pixels
 * @param seen so much behind what is frozen is in sight on any usual screen, in pixels; half of it is left before what is brought there
 * @param sizeOf height or width of a row or column, in pixels
 */
export function scrollOffset(
  index: number,
  first: number,
  offset: number,
  seen: number,
  sizeOf: (index: number) => number,
): number {
  let start = 0;
  for (let before = Math.max(first, 0); before < index; before++) start += sizeOf(before);
  if (start >= offset && start + sizeOf(index) <= offset + seen) return offset;
  return Math.max(0, start - seen / 2);
}
