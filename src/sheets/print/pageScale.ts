/** Widths of A4 and Letter upright and lying, the narrower of both, in points. */
const NARROWER = { portrait: 595, landscape: 792 } as const;
/** Hosts round widths of columns to whole letters or dots: so much is left free. */
const ROUNDING = 0.97;

/**
 * Scale in per cent at which all columns fit on A4 and on Letter. For sheets with breaks of their own: a host that scales a sheet to the
 * page's width leaves those out.
 * @param widths of all columns, in points
 * @param margin left and right, in points
 */
export function pageScale(widths: readonly number[], orientation: 'portrait' | 'landscape', margin: number): number {
  const total = widths.reduce((sum, width) => sum + width, 0);
  return Math.max(10, Math.min(100, Math.floor(((NARROWER[orientation] - 2 * margin) / total) * ROUNDING * 100)));
}
