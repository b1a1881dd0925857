import { sizesMatch } from '../../../src/core/catalogue/partsMatch';
import type { Fitting } from '../../../src/core/catalogue/tables/fittingsTable';
import type { Hose } from '../../../src/core/catalogue/tables/hosesTable';

/** A hose and a fitting as far as their sizes go; bores in mm. */
const match = (hose: { size?: string; bore: number }, fitting: { size?: string; bore: number }) =>
  sizesMatch(hose as Hose, fitting as Fitting);

// MIL-DTL-83796, published: dash sizes count sixteenths of an inch of nominal bore, −4 .250 … −32 2.000.
test.each([
  [4, 0.25],
  [8, 0.5],
  [16, 1],
  [32, 2],
])(
  'a dash size of %d has a nominal bore of %d in: it takes a fitting of that bore, however the fitting is counted',
  (dash, inches) => {
    expect(inches).toBe(dash / 16);
    const bore = inches * 25.4;
    expect(match({ size: `-${dash}`, bore }, { size: `dash ${dash}`, bore })).toBe(true);
    expect(match({ size: `-${dash}`, bore }, { size: `DN ${Math.round(bore)}`, bore })).toBe(true);
    expect(match({ size: `-${dash}`, bore }, { bore })).toBe(true);
    expect(match({ size: `-${dash}`, bore }, { size: `-${dash + 1}`, bore })).toBe(false);
  },
);

test('dash numbers of some hoses are larger than their bore says: the same dash still goes together, another count goes by bore', () => {
  const hose = { size: '-10', bore: 12.7 };
  expect(match(hose, { size: '-10', bore: 12.7 })).toBe(true);
  expect(match(hose, { size: 'DN 16', bore: 15.9 })).toBe(false);
  expect(match(hose, { size: 'DN 12', bore: 12.7 })).toBe(true);
});

test('without a common count the bores must agree within 2 %', () => {
  expect(match({ bore: 25.4 }, { bore: 24.892 })).toBe(true);
  expect(match({ bore: 25.4 }, { bore: 25.908 })).toBe(true);
  expect(match({ bore: 25.4 }, { bore: 25.91 })).toBe(false);
});

test('inches are the same size however they are written', () => {
  const bore = 12.7;
  for (const size of ['1/2"', '1/2 in', '0.5 inch', '1/2”']) expect(match({ size: '1/2"', bore }, { size, bore: 9 })).toBe(true);
  expect(match({ size: '1/2"', bore }, { size: '3/4 in', bore })).toBe(false);
  // One of them in another count: the bore decides.
  expect(match({ size: '1/2"', bore }, { size: 'DN 12', bore })).toBe(true);
  expect(match({ size: '1/2"', bore }, { size: '-8', bore: 9 })).toBe(false);
});
