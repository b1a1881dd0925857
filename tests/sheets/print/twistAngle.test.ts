import { Decimal } from '../../../src/core/units/decimal';
import { clockPicture } from '../../../src/sheets/print/clockPicture';
import { clockPoint, clockTime, twistTolerance } from '../../../src/sheets/print/twistAngle';

test.each([
  [0, '6:00', 0, 10],
  [90, '3:00', 10, 0],
  [180, '12:00', 0, -10],
  [270, '9:00', -10, 0],
  [-90, '9:00', -10, 0],
  [120, '2:00', 8.66, -5],
  [45, '4:30', 7.07, 7.07],
  [360, '6:00', 0, 10],
])('%s° counter-clockwise from six is %s (MIL-DTL-83796/5: near end at six o’clock, counter-clockwise)', (twist, time, x, y) => {
  expect(clockTime(twist)).toBe(time);
  expect(clockPoint(twist, 10)).toEqual({ x, y });
});

test('±3° to 2 ft of length, ±5° above (MIL-DTL-83796/5)', () => {
  expect(twistTolerance(new Decimal('609.6'), 'mm')).toBe(3);
  expect(twistTolerance(new Decimal('609.7'), 'mm')).toBe(5);
  expect(twistTolerance(new Decimal(24), 'in')).toBe(3);
});

test('the picture says in words what it shows', () => {
  expect(clockPicture(120)).toContain('aria-label="Clock picture: end A at six o’clock, end B at 2:00, 120° counter-clockwise"');
});
