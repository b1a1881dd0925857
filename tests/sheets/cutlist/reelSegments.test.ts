import { Decimal } from '../../../src/core/units/decimal';
import type { PlannedReel } from '../../../src/sheets/cutlist/plannedReel';
import { cutGroups, groupKey, reelSegments } from '../../../src/sheets/cutlist/reelSegments';

const d = (value: number) => new Decimal(value);
const line = { row: 1, line: '1', label: '', hose: 'Larch', quantity: 3, wanted: d(300), cutLength: d(300) };
const cut = (length: number) => ({ length: d(length), line, piece: 1 });
const reel: PlannedReel = {
  rack: { row: 2, hose: 'Larch', length: d(1000), quantity: 1, place: '', lot: '', made: '' },
  cuts: [cut(300), cut(300), cut(150)],
  squaring: d(20),
  kerf: d(10),
  left: d(200),
  isKept: true,
  isTooOld: false,
};

test('a reel is drawn to scale: 1000 mm on 500 points is half a point a millimetre', () => {
  expect(reelSegments(reel, 500).map(({ kind, x, width }) => [kind, x, width])).toEqual([
    ['squaring', 0, 10],
    ['cut', 10, 150],
    ['kerf', 160, 5],
    ['cut', 165, 150],
    ['kerf', 315, 5],
    ['cut', 320, 75],
    ['kerf', 395, 5],
    ['kept', 400, 100],
  ]);
});

test('nothing is drawn beyond the reel when its last piece ends flush', () => {
  const flush = { ...reel, cuts: [cut(480), cut(490)], squaring: d(20), left: d(0), isKept: false };
  const segments = reelSegments(flush, 500);
  expect(segments.at(-1)).toMatchObject({ kind: 'cut' });
  expect(segments.reduce((sum, segment) => sum + segment.width, 0)).toBeCloseTo(500, 9);
});

test('equal neighbours are one group with one letter', () => {
  expect(cutGroups(reel.cuts).map(({ key, cuts }) => [key, cuts.length])).toEqual([
    ['a', 2],
    ['b', 1],
  ]);
  expect([0, 25, 26, 27, 701, 702].map(groupKey)).toEqual(['a', 'z', 'aa', 'ab', 'zz', 'aaa']);
});
