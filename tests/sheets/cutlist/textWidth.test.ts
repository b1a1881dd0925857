import { linesIn } from '../../../src/sheets/cutlist/cutListColumns';
import { textWidth } from '../../../src/sheets/cutlist/textWidth';

/*
 * Widths at nine points, by hand from the letters' own: Calibri in 2048ths of the size, Helvetica in 1000ths (its AFM file). Memory.
 * A printer has one or the other, or something between them.
 */
test.each([
  // T 998, o 1080, p 1076 twice, e 1019, r 714, space 463, l 470, i 470, f 625, t 686; 611, 556 four times, 333, 278, 222 twice, 278 twice.
  ['Topper lift', (8677 / 2048) * 9, 4.446 * 9],
  // L 861, a 981, r 714, c 866, h 1076, space 463 twice, D 1260, N 1322, figures 1038 twice; 556 twice, 333, 500, 556, 278 twice, 722 twice, 556 twice.
  ['Larch DN 12', (10082 / 2048) * 9, 5.613 * 9],
  ['12000', ((5 * 1038) / 2048) * 9, 2.78 * 9],
])('%s is as wide as between a narrow font and a wide one', (text, narrow, wide) => {
  expect(textWidth(text, 9)).toBeGreaterThanOrEqual(narrow);
  expect(textWidth(text, 9)).toBeLessThanOrEqual(wide);
});

test('a width grows with the size of the letters, and with each of them', () => {
  expect(textWidth('Boom', 18)).toBeCloseTo(2 * textWidth('Boom', 9), 9);
  expect(textWidth('Boom', 9)).toBeCloseTo(textWidth('Bo', 9) + textWidth('om', 9), 9);
  expect(textWidth('', 9)).toBe(0);
});

// A text of some 39 points, by the widths above; four points of a column stay free.
test.each([
  ['Topper lift', 60, 1],
  ['Topper lift', 30, 2],
  ['Topper lift', 18, 3],
  ['', 60, 1],
  [12000, 10, 1],
])('%j takes lines in a column of %d points: %d', (cell, width, lines) => expect(linesIn(cell, width)).toBe(lines));
