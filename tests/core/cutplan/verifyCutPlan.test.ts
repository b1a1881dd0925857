import type { CutPlan, CutPlanProblem, CutPlanRow } from '../../../src/core/cutplan/cutPlan';
import { faultOf } from '../../../src/core/cutplan/verifyCutPlan';
import { Decimal } from '../../../src/core/units/decimal';

const d = (value: number) => new Decimal(value);

/** 3 × 1250 and 2 × 840 from two reels of 3000 and one of 2600, by hand: kerf 3, squaring 10, keep 500, handling 40. */
const problem: CutPlanProblem = {
  pieces: [
    { length: d(1250), quantity: 3 },
    { length: d(840), quantity: 2 },
  ],
  stock: [
    { length: d(3000), quantity: 2 },
    { length: d(2600), quantity: 1 },
  ],
  kerf: d(3),
  squaring: d(10),
  keep: d(500),
  handling: d(40),
  unit: 'mm',
};

const cut = (length: number, count: number) => ({ length: d(length), count });

const row = (stock: number, cuts: CutPlanRow['cuts'], used: number, left: number, times = 1): CutPlanRow => ({
  stock: d(stock),
  times,
  cuts,
  used: d(used),
  left: d(left),
});

const long = row(3000, [cut(1250, 1), cut(840, 2)], 2939, 51);
const short = row(2600, [cut(1250, 2)], 2506, 84);

/** A plan whose sums are those of its rows; worth above 500: 2500 + 2100 lost, 40 for each of the two reels. */
const plan: CutPlan = {
  rows: [long, short],
  stockCut: 2,
  used: d(5445),
  left: d(135),
  loss: d(4680),
  bound: d(4680),
  isProven: true,
  percentOver: 0,
};

test('a right plan has no fault', () => {
  expect(faultOf(problem, plan)).toBeUndefined();
  expect(faultOf({ ...problem, handling: undefined }, { ...plan, loss: d(4600), bound: d(4600) })).toBeUndefined();
});

test('stock that ends with its last piece has no fault: that piece needs no kerf behind it', () => {
  // 10 + 1250 + 3 + 1250 = 2513, worth 2013 above 500; 40 for the reel.
  const tight: CutPlanProblem = {
    ...problem,
    pieces: [{ length: d(1250), quantity: 2 }],
    stock: [{ length: d(2513), quantity: 1 }],
  };
  const rows = [row(2513, [cut(1250, 2)], 2503, 0)];
  const full = { ...plan, rows, stockCut: 1, used: d(2503), left: d(0), loss: d(2053), bound: d(2053) };
  expect(faultOf(tight, full)).toBeUndefined();
});

test('two reels that are cut alike count twice in every total', () => {
  const alike: CutPlanProblem = {
    ...problem,
    pieces: [{ length: d(1250), quantity: 4 }],
    stock: [{ length: d(2600), quantity: 2 }],
  };
  // 2 × 2506 used, 2 × 84 left, 2 × (2100 + 40) lost; 10 of the 5200 cut are 0.1923 %.
  const twice = { ...plan, rows: [{ ...short, times: 2 }], used: d(5012), left: d(168), loss: d(4280), bound: d(4280) };
  expect(faultOf(alike, twice)).toBeUndefined();
  expect(faultOf(alike, { ...twice, bound: d(4270), isProven: false, percentOver: 0.2 })).toBeUndefined();
});

test.each<[string, Partial<CutPlanProblem>, Partial<CutPlan>, RegExp]>([
  [
    // 2 × 1250 + 3 = 2503 fits; with a kerf of 91 the two pieces take 2591 of the 2590 there are.
    'pieces that only fit without the kerf between them',
    { kerf: d(91), pieces: [{ length: d(1250), quantity: 2 }] },
    { rows: [row(2600, [cut(1250, 2)], 2590, 0)], stockCut: 1, used: d(2590), left: d(0), loss: d(2140), bound: d(2140) },
    /2600 is too short for its cuts/,
  ],
  [
    'pieces that only fit where the stock is not squared off',
    { squaring: d(98), pieces: [{ length: d(1250), quantity: 2 }] },
    { rows: [row(2600, [cut(1250, 2)], 2502, 0)], stockCut: 1, used: d(2502), left: d(0), loss: d(2140), bound: d(2140) },
    /2600 is too short for its cuts/,
  ],
  ['more pieces of stock than the rack holds', { stock: [{ length: d(3000) }] }, {}, /1 x stock 2600 too many/],
  [
    'one piece of stock cut twice',
    { stock: [{ length: d(2600), quantity: 1 }], pieces: [{ length: d(1250), quantity: 4 }] },
    { rows: [{ ...short, times: 2 }], used: d(5012), left: d(168), loss: d(4280), bound: d(4280) },
    /1 x stock 2600 too many/,
  ],
  ['a piece that is not cut', { pieces: [...problem.pieces, { length: d(300), quantity: 1 }] }, {}, /1 x 300 not cut/],
  [
    'one piece of many that is not cut',
    { pieces: [{ ...problem.pieces[0]!, quantity: 4 }, problem.pieces[1]!] },
    {},
    /1 x 1250 not/,
  ],
  ['a piece too many', { pieces: [problem.pieces[0]!, { ...problem.pieces[1]!, quantity: 1 }] }, {}, /-1 x 840 not cut/],
  ['a piece nobody wants', { pieces: [problem.pieces[0]!] }, {}, /-2 x 840 not cut/],
  ['wrong Used', {}, { rows: [{ ...long, used: d(2936) }, short] }, /3000 uses 29390 steps, not 29360/],
  ['wrong Left', {}, { rows: [{ ...long, left: d(54) }, short] }, /3000 leaves 510 steps, not 540/],
  ['a wrong total of Used', {}, { used: d(5442) }, /totals do not add up/],
  ['a wrong total of Left', {}, { left: d(136) }, /totals do not add up/],
  ['a wrong number of pieces of stock', {}, { stockCut: 3 }, /2 pieces of stock, not 3/],
  ['a loss without handling', {}, { loss: d(4600), bound: d(4600) }, /the loss is 46800 steps, not 46000/],
  ['a loss that counts the stock whole', {}, { loss: d(5680), bound: d(5680) }, /the loss is 46800 steps, not 56800/],
  ['a bound above the loss', {}, { bound: d(4681) }, /bound does not fit/],
  ['a bound a little above the loss, without a claim', {}, { bound: d(4680.5), isProven: false }, /bound does not fit/],
  ['a claim of proof that the bound does not give', {}, { bound: d(4670) }, /bound does not fit/],
  ['a proof that is not claimed', {}, { isProven: false }, /bound does not fit/],
  // 10 of 5600 = 0.1786 %, rounded up to 0.18.
  ['a share over the best that is too small', {}, { bound: d(4670), isProven: false, percentOver: 0.17 }, /share over the best/],
  ['a share over the best that is too large', {}, { bound: d(4670), isProven: false, percentOver: 0.19 }, /share over the best/],
  ['a reel opened for nothing', {}, { rows: [...plan.rows, row(3000, [], 0, 2990)] }, /3000 is opened for nothing/],
  ['a row of no reel', {}, { rows: [...plan.rows, { ...short, times: 0 }] }, /2600 is cut 0 times/],
  ['no piece of a length', {}, { rows: [{ ...long, cuts: [...long.cuts, cut(300, 0)] }, short] }, /3000 has 0 x 300/],
  ['half a reel', {}, { rows: [{ ...long, times: 0.5 }, short] }, /3000 is cut 0.5 times/],
  ['half a piece', {}, { rows: [{ ...long, cuts: [cut(1250, 1.5)] }, short] }, /3000 has 1.5 x 1250/],
])('%s is a fault', (_, change, wrong, fault) => {
  expect(faultOf({ ...problem, ...change }, { ...plan, ...wrong })).toMatch(fault);
});

test('a share over the best of 0.18 % for 10 of 5600 is right, and of 41.79 % for 2340', () => {
  const open = { ...plan, isProven: false };
  expect(faultOf(problem, { ...open, bound: d(4670), percentOver: 0.18 })).toBeUndefined();
  expect(faultOf(problem, { ...open, bound: d(2340), percentOver: 41.79 })).toBeUndefined();
});

describe('lengths that do not lie on the grid count so that the plan can be cut', () => {
  // In tenths: pieces 12501 and 8400, kerf 30, squaring 100, keep 5000, handling 400, stock 30000.
  // 12501 + 8400 + 2 × 30 = 20961 used; 30000 − 100 − 20961 = 8939 left; 400 + 25000 − 3939 = 21461 lost.
  const off: CutPlanProblem = {
    pieces: [
      { length: d(1250.01), quantity: 1 },
      { length: d(839.99), quantity: 1 },
    ],
    stock: [{ length: d(3000.09) }],
    kerf: d(2.91),
    squaring: d(9.99),
    keep: d(499.91),
    handling: d(39.95),
    unit: 'mm',
  };
  const planned = row(3000.09, [cut(1250.01, 1), cut(839.99, 1)], 2096.1, 893.9);
  const right: CutPlan = {
    ...plan,
    ...{ rows: [planned], stockCut: 1, used: d(2096.1), left: d(893.9), loss: d(2146.1), bound: d(2146.1) },
  };

  test('pieces, kerf, squaring, keep and handling are rounded up, stock down', () => {
    expect(faultOf(off, right)).toBeUndefined();
  });

  test('a plan of the lengths as they are is a fault', () => {
    // 3000.09 − 9.99 − 1250.01 − 839.99 − 2 × 2.91 = 894.28 left.
    const asTheyAre = { ...planned, used: d(2095.82), left: d(894.28) };
    expect(faultOf(off, { ...right, rows: [asTheyAre], used: d(2095.82), left: d(894.28) })).toMatch(/leaves 8939 steps/);
  });

  test('a piece that fits only while it is rounded down is too long', () => {
    const tight = { ...off, pieces: [{ length: d(2990.01), quantity: 1 }] };
    const rows = [row(3000.09, [cut(2990.01, 1)], 2990, 0)];
    expect(faultOf(tight, { ...right, rows, used: d(2990), left: d(0) })).toMatch(/3000.09 is too short for its cuts/);
  });

  test('inches count in 64ths', () => {
    const inches: CutPlanProblem = {
      pieces: [
        { length: d(41.375), quantity: 2 },
        { length: d(20.5), quantity: 1 },
      ],
      stock: [{ length: d(120) }],
      kerf: d(0.125),
      unit: 'in',
    };
    // 2 × 41 3/8 + 20 1/2 + 3 × 1/8 = 103 5/8; the kerf of 0.12 is 7.68/64 and counts as 8/64.
    const rows = [row(120, [cut(41.375, 2), cut(20.5, 1)], 103.625, 16.375)];
    const whole = { ...plan, rows, stockCut: 1, used: d(103.625), left: d(16.375), loss: d(120), bound: d(120) };
    expect(faultOf(inches, whole)).toBeUndefined();
    expect(faultOf({ ...inches, kerf: d(0.12) }, whole)).toBeUndefined();
    expect(faultOf({ ...inches, kerf: d(0.13) }, whole)).toMatch(/120 leaves 1045 steps, not 1048/);
  });
});
