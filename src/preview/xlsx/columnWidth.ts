/** Pixels of a digit in the usual font (Calibri 11) at 100 %. */
const DIGIT = 7;

/**
 * A file's width of a column as pixels at 100 %. The file counts digits, the five pixels beside the text included.
 * Source: ECMA-376 part 1, 18.3.1.13 (col, width).
 */
export function pixelsOfWidth(digits: number): number {
  return Math.round(digits * DIGIT);
}

/** The way back. */
export function widthOfPixels(pixels: number): number {
  return Math.round((pixels / DIGIT) * 256) / 256;
}
