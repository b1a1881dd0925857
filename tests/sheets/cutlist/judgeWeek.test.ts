import { judgeWeek, type WrittenWeek } from './judgeWeek';
import { randomWeek } from './randomWeek';
import { writeRandomWeek } from './writeRandomWeek';

/** `npm run bench -- weeks` writes a thousand. */
const WEEKS = 60;

test(`${WEEKS} random weeks: an independent count of every written cut list finds nothing wrong`, async () => {
  let judged = 0;
  for (let seed = 1; seed <= WEEKS; seed += 1) {
    const week = randomWeek(seed);
    const written = await writeRandomWeek(week);
    if (!written) continue;
    judged += 1;
    expect([seed, judgeWeek(week, written)]).toEqual([seed, []]);
  }
  expect(judged).toBeGreaterThan(WEEKS / 2);
});

/** A week in which something was cut, with one cell of what was written changed. */
async function spoiled(spoil: (written: WrittenWeek) => WrittenWeek) {
  for (let seed = 1; ; seed += 1) {
    const week = randomWeek(seed);
    const written = await writeRandomWeek(week);
    if (written) return judgeWeek(week, spoil(written));
  }
}

/** The first cell under a heading that is filled, changed. */
const withCell = (rows: WrittenWeek['cutList'], heading: string, change: (cell: unknown) => string | number) => {
  const top = rows.findIndex(row => row.includes(heading));
  const column = rows[top]!.indexOf(heading);
  const first = rows.findIndex((row, index) => index > top && row[column] !== '');
  return rows.map((row, index) => (index === first ? row.map((cell, at) => (at === column ? change(cell) : cell)) : row));
};

test('the judge sees a length, a quantity, a piece, a rest, a box, a lot, a rack or a row of Pieces that is wrong', async () => {
  const results = await Promise.all([
    spoiled(written => ({ ...written, cutList: withCell(written.cutList, 'Cut to (mm)', cell => Number(cell) + 1) })),
    spoiled(written => ({ ...written, cutList: withCell(written.cutList, 'Qty', cell => Number(cell) + 1) })),
    spoiled(written => ({ ...written, cutList: withCell(written.cutList, 'No.', () => '98') })),
    spoiled(written => ({ ...written, cutList: withCell(written.cutList, 'Left (mm)', cell => Number(cell) + 1) })),
    spoiled(written => ({ ...written, cutList: withCell(written.cutList, 'Rest to', () => 'bin') })),
    spoiled(written => ({ ...written, cutList: withCell(written.cutList, '✓', () => '') })),
    spoiled(written => ({ ...written, cutList: withCell(written.cutList, 'Lot', () => 'L99') })),
    spoiled(written => ({ ...written, rackAfter: written.rackAfter.slice(0, -1) })),
    spoiled(written => ({ ...written, pieces: withCell(written.pieces, 'Reel', () => 'R99') })),
  ]);
  expect(results.map(wrong => wrong.length > 0)).toEqual(results.map(() => true));
});
