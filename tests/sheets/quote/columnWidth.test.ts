import { columnWidth } from '../../../src/sheets/quote/columnWidth';

/* 37 characters are cut off in 178 points and 36 are not: seen on the try-out page, whose usual font is 11 points high. */
test.each([
  [['Larch DN 12'], 92, 240, 92],
  [['Larch 37° flare swivel straight DN 12', 'Larch DN 12'], 178, 240, 197],
  [['x'.repeat(80)], 178, 240, 240],
  [[], 90, 180, 90],
])('%j between %d and %d points: %d', (texts, least, most, width) => {
  expect(columnWidth(texts, least, most)).toBe(width);
});
