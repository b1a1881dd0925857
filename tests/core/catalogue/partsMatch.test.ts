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
])('a hose of dash %d has a nominal bore of %d in: it takes a fitting of that bore, whatever its Size says', (dash, inches) => {
  expect(inches).toBe(dash / 16);
  const bore = inches * 25.4;
  for (const size of [`dash ${dash}`, `DN ${Math.round(bore)}`, `-${dash + 1}`, undefined]) {
    expect(match({ size: `-${dash}`, bore }, { ...(size !== undefined && { size }), bore })).toBe(true);
  }
});

test.each([
  // Common practice: DN 19 and DN 20, DN 31 and DN 32 are two names of one bore.
  ['DN 19', 19.1, 'DN 20', 19.1, true],
  ['DN 31', 31.8, 'DN 32', 31.8, true],
  // MIL-DTL-83796, published: some hose types' dash numbers are larger than their true bore.
  ['-8', 10.3, '-8', 12.7, false],
  ['-8', 10.3, '-8', 10.3, true],
])('%s of %d mm with %s of %d mm: %s', (hoseSize, hoseBore, fittingSize, fittingBore, expected) => {
  expect(match({ size: hoseSize, bore: hoseBore }, { size: fittingSize, bore: fittingBore })).toBe(expected);
});

test('the bores must agree within 2 % of that of the hose, the limit included', () => {
  expect(match({ bore: 25.4 }, { bore: 24.892 })).toBe(true);
  expect(match({ bore: 25.4 }, { bore: 25.908 })).toBe(true);
  expect(match({ bore: 25.4 }, { bore: 25.91 })).toBe(false);
  expect(match({ bore: 25.4 }, { bore: 24.89 })).toBe(false);
});
