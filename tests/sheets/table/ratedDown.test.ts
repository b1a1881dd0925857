import { Decimal } from '../../../src/core/units/decimal';
import { convertMeasure, measureUnit } from '../../../src/core/units/measureUnit';
import { ratedDown } from '../../../src/sheets/table/ratedDown';

const unit = (symbol: string) => measureUnit('pressure', symbol)!;

// Factor: NIST SP 811 (2008), appendix B: 1 psi = 6.894 757 kPa.
test.each([
  [4500, 'psi', 'bar', '310'],
  // 206.84 bar and 310.95 bar: half up, the second would be above the rating.
  [3000, 'psi', 'bar', '206'],
  [4510, 'psi', 'bar', '310'],
  [4500, 'psi', 'MPa', '31'],
  // 34.47 MPa and 34.95 MPa.
  [5000, 'psi', 'MPa', '34.4'],
  [5070, 'psi', 'MPa', '34.9'],
  [330, 'bar', 'psi', '4786'],
  [345, 'bar', 'MPa', '34.5'],
  // Low pressures keep two digits: 0.689 bar and 1.03 bar.
  [10, 'psi', 'bar', '0.68'],
  [15, 'psi', 'bar', '1'],
])('%d %s are read as at most %s: %s', (value, from, to, read) => {
  const exact = convertMeasure(new Decimal(value), unit(from), unit(to));
  expect(ratedDown(exact, to).toString()).toBe(read);
  expect(ratedDown(exact, to).lte(exact)).toBe(true);
});

test.each([275, 27.5, 0.75, 233.75])('%d bar, as somebody states it, stays', value =>
  expect(ratedDown(new Decimal(value), 'bar').toNumber()).toBe(value),
);
