import { leastLoss, smallCase, type SmallCase } from '../../core/cutplan/bruteForce';
import { excelCall } from '../excelCall';

/** Other cases than those of tests/core/cutplan/smallCases.test.ts, and read back from the cells as a person reads them. */
const CASES = Number(process.env.FUZZ_PLANS ?? 500);
const FIRST = Number(process.env.FUZZ_SEED ?? 20261130);

const mm = (tenths: number) => tenths / 10;
const tenths = (length: unknown) => Math.round(Number(length) * 10);

function planOf({ pieces, stock, kerf, squaring, keep, handling }: SmallCase): Promise<unknown[][]> {
  const column = (values: readonly unknown[]) => values.map(value => [value]);
  const stockLengths = column(stock.map(({ length }) => mm(length)));
  const counts = column(stock.map(({ count }) => (Number.isFinite(count) ? count : '')));
  const lengths = column(pieces.map(mm));
  const keeps = keep === undefined ? null : mm(keep);
  return excelCall('CUTPLAN', lengths, 1, stockLengths, counts, mm(kerf), keeps, mm(squaring), 3, 'mm', mm(handling));
}

/** Pieces of a row of the plan, from its text: `3 x 1250 + 2 x 840`. */
const cutsOf = (text: unknown): number[] =>
  String(text)
    .split(' + ')
    .flatMap(cut => {
      const [, count, length] = /^(\d+) x ([\d.]+)$/.exec(cut)!;
      return Array<number>(Number(count)).fill(tenths(length));
    });

/** What the rows of a plan lose, by the rule of CUTPLAN's help; every row must fit its stock. */
function lossOf({ kerf, squaring, keep, handling }: SmallCase, rows: readonly (readonly unknown[])[]): number {
  const worth = (length: number) => (keep === undefined ? 0 : Math.max(0, length - keep));
  return rows.reduce((sum, [stock, times, text, used, left]) => {
    const length = tenths(stock);
    const cuts = cutsOf(text);
    const pieces = cuts.reduce((total, piece) => total + piece, 0);
    expect(pieces + (cuts.length - 1) * kerf).toBeLessThanOrEqual(length - squaring);
    const rest = Math.max(0, length - squaring - pieces - cuts.length * kerf);
    expect([tenths(left), tenths(used)]).toEqual([rest, length - squaring - rest]);
    return sum + Number(times) * ((keep === undefined ? length : worth(length)) - worth(rest) + handling);
  }, 0);
}

test(`${CASES} plans cut every piece and lose no more than brute force finds`, async () => {
  let planned = 0;
  for (let seed = FIRST; seed < FIRST + CASES; seed += 1) {
    const small = smallCase(seed);
    const rows = await planOf(small);
    const least = leastLoss(small);
    if (least === Infinity) {
      expect({ seed, row: rows[0] }).toEqual({
        seed,
        row: [expect.stringMatching(/^#VALUE! .*(short of|longer than every stock)/)],
      });
      continue;
    }
    planned += 1;
    const cuts = rows.slice(1, -1);
    const made = cuts.flatMap(([, times, text]) => Array<number[]>(Number(times)).fill(cutsOf(text)).flat());
    const inOrder = (list: readonly number[]) => [...list].sort((a, b) => a - b);
    expect({ seed, made: inOrder(made) }).toEqual({ seed, made: inOrder(small.pieces) });
    for (const { length, count } of small.stock) {
      const same = small.stock.filter(one => one.length === length).reduce((sum, one) => sum + one.count, 0);
      const taken = cuts.filter(([stock]) => tenths(stock) === length).reduce((sum, [, times]) => sum + Number(times), 0);
      expect({ seed, count, isThere: taken <= same }).toEqual({ seed, count, isThere: true });
    }
    expect({ seed, loss: lossOf(small, cuts), proof: rows.at(-1)![2] }).toEqual({ seed, loss: least, proof: 'proven best' });
  }
  expect(planned).toBeGreaterThan(CASES / 4);
});
