import { pastFrozen } from '../../../src/preview/host/pastFrozen';

const wide = () => 80;

test.each([
  ['nothing frozen: the neighbour', 9, { split: 0, start: -1 }, 10],
  ['three columns of 80 frozen: four further, the last one in sight as a whole', 9, { split: 3, start: 3 }, 13],
  ['the end of the sheet is as far as it goes', 18, { split: 3, start: 3 }, 19],
  ['the last column has no neighbour', 19, { split: 0, start: -1 }, 19],
])('%s', (_, index, frozen, expected) => {
  expect(pastFrozen(index, frozen, 20, wide)).toBe(expected);
});
