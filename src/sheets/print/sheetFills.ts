/** Fills of the sheets that the pane writes: one look for the same thing on each of them. */

/** Headings of a table. */
export const HEAD_FILL = '#E7EDF3';
/** Cells to type into. */
export const INPUT_FILL = '#FFF8E1';
/** What must not be overlooked before work goes on. */
export const STOP_FILL = '#FFE9B8';
/** Quiet headings, and every other group of rows. */
export const BAND_FILL = '#F4F6F8';
