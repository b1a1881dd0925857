/** What is frozen above or left of a sheet's other cells: so many rows or columns, up to where the others begin. */
export interface Frozen {
  readonly split: number;
  readonly start: number;
}

/**
 * The row or column that stands as far behind a cell as the frozen part of the sheet is large, one at least. The spreadsheet library takes
 * what is in sight for larger by that part; scrolled to this place first, the cell itself is in sight as a whole.
 * @param index row or column of the cell
 * @param count rows or columns of the sheet
 * @param sizeOf height or width of one
 */
export function pastFrozen(index: number, { split, start }: Frozen, count: number, sizeOf: (index: number) => number): number {
  let size = 1;
  for (let frozen = start - split; frozen < start; frozen++) size += sizeOf(frozen);
  let place = index;
  while (size > 0 && place < count - 1) size -= sizeOf(++place);
  return place;
}
