const TEXT = /"[^"]*"/g;
/** A cell or a block of cells of the formula's own sheet. */
const CELLS = /(?<![\p{L}\p{N}_.$!'])\$?([A-Z]{1,3})(\$?)(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?(?![\p{L}\p{N}_.(!])/giu;

/**
 * Whether a formula works out something of other rows together, as a total does: it names several of them and not its own.
 * @param row zero-based row of the formula
 * @example sumsRows('=SUM(E2:E9)', 9) // true
 */
export function sumsRows(formula: string, row: number): boolean {
  const rows = new Set<number>();
  let isColumn = false;
  for (const [, column, mark, first, other, last] of formula.replace(TEXT, '').matchAll(CELLS)) {
    if (mark === '' && last === undefined && Number(first) === row + 1) return false;
    // `E2:E2` is a column of one line so far.
    isColumn ||= column === other;
    for (const each of [first, last]) if (each !== undefined) rows.add(Number(each));
  }
  return (rows.size > 1 || isColumn) && !rows.has(row + 1);
}
