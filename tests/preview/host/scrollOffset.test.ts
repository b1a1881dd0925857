import { scrollOffset } from '../../../src/preview/host/scrollOffset';

const wide = () => 80;

test.each([
  ['in sight without scrolling', 5, 3, 0, 0],
  ['in sight where it is scrolled to', 10, 3, 500, 500],
  ['too far to the right: what stands before it stays in sight', 15, 3, 0, 12 * 80 - 200],
  ['hidden behind what is frozen, by a part even', 5, 3, 170, 0],
  ['far to the left of what is seen', 12, 3, 4000, 9 * 80 - 200],
  ['nothing frozen', 20, -1, 0, 20 * 80 - 200],
])('%s', (_, index, first, offset, expected) => {
  expect(scrollOffset(index, first, offset, 400, wide)).toBe(expected);
});
