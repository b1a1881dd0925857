import { boreSize } from '../../../src/core/hydraulics/boreSize';
import { SI_OF } from '../../../src/core/hydraulics/flowUnits';
import { frictionFactor } from '../../../src/core/hydraulics/frictionFactor';
import { gradeViscosity } from '../../../src/core/hydraulics/gradeViscosity';
import { pressureDrop } from '../../../src/core/hydraulics/pressureDrop';
import { velocity } from '../../../src/core/hydraulics/velocity';
import { viscosityAt } from '../../../src/core/hydraulics/viscosityAt';
import { ISO_VISCOSITY_GRADES } from '../../../src/core/tables/isoViscosityGrades';

/** m/s², as White, Fluid Mechanics, rounds it. */
const GRAVITY = 9.81;

// Colebrook with 3.7 and 2.51: digits of the project's reference list; smooth 1e5 is the Prandtl–von Kármán value of White, Fluid Mechanics, table 6.1 (.0180).
test.each([
  [1e5, 1e-4, 0.01851386607747],
  [1e5, 0, 0.01798977308427],
  [128, 0, 0.5],
  [2300, 0, 64 / 2300],
])('friction factor at Re %d and relative roughness %d is %d', (reynolds, roughness, expected) => {
  expect(frictionFactor(reynolds, roughness)).toBeCloseTo(expected, 13);
});

test('Colebrook is solved to full precision everywhere', () => {
  for (const reynolds of [4000, 1e4, 1e6, 1e8]) {
    for (const roughness of [0, 1e-6, 1e-3, 0.05]) {
      const x = 1 / Math.sqrt(frictionFactor(reynolds, roughness));
      expect(Math.abs(x + 2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds))).toBeLessThan(1e-13);
    }
  }
});

test('between laminar and turbulent the larger factor counts, without a gap at 4000', () => {
  const just = frictionFactor(2300.001, 0);
  expect(just).toBeGreaterThan(64 / 2300);
  expect(frictionFactor(3999.999, 0)).toBeCloseTo(frictionFactor(4000, 0), 6);
});

test('a Reynolds number on a bound stays on it whatever noise it carries: to 2300 inclusive the flow is laminar', () => {
  expect(frictionFactor(2300.0000000000005, 0.05)).toBeCloseTo(64 / 2300, 12);
  expect(frictionFactor(2300.000001, 0.05)).toBeGreaterThan(0.06);
});

test('White, Fluid Mechanics, example 6.7: oil of 900 kg/m³ and 1e-5 m²/s, .2 m³/s through 500 m of 200 mm, .26 mm rough', () => {
  const flow = { flow: 0.2, bore: 0.2, length: 500, viscosity: 1e-5, density: 900, roughness: 0.00026 };
  expect(velocity(flow.flow, flow.bore)).toBeCloseTo(6.37, 2);
  expect(frictionFactor((6.3662 * 0.2) / 1e-5, 0.0013)).toBeCloseTo(0.0227, 3);
  const head = pressureDrop(flow) / (900 * GRAVITY);
  expect(Math.round(head)).toBe(117);
  expect(head).toBeCloseTo(117.352, 3);
});

// White, Fluid Mechanics, 6.6: friction factor of smooth pipes (the table recalled from memory).
test.each([
  [4000, 0.0399],
  [1e4, 0.0309],
  [1e5, 0.018],
  [1e6, 0.0116],
  [1e7, 0.0081],
  [1e8, 0.0059],
])('a smooth pipe at Re %d has a friction factor of %d', (reynolds, expected) => {
  expect(frictionFactor(reynolds, 0)).toBeCloseTo(expected, 4);
});

test('White, Fluid Mechanics, example 6.6 (recalled from memory): water at 6 ft/s through 200 ft of 6 in, .0004 ft rough, loses 280 lbf/ft²', () => {
  const [foot, area] = [0.3048, (Math.PI / 4) * 0.5 ** 2];
  const flow = {
    flow: 6 * area * foot ** 3,
    bore: 0.5 * foot,
    length: 200 * foot,
    viscosity: 1.1e-5 * foot ** 2,
    density: 999.5,
    roughness: 0.0004 * foot,
  };
  // The book reads f = .02 off a chart, so its last digit is open: 1 lbf/ft² is 47.88026 Pa (NIST SP 811).
  expect(pressureDrop(flow) / 47.88026 / 280).toBeCloseTo(1, 1);
  expect(pressureDrop(flow) / 47.88026).toBeGreaterThan(272);
});

test('laminar flow follows Hagen and Poiseuille: 128·μ·L·Q/(π·D⁴)', () => {
  const drop = pressureDrop({ flow: 1e-4, bore: 0.01, length: 3, viscosity: 1e-4, density: 870, roughness: 0 });
  expect(drop).toBeCloseTo((128 * 1e-4 * 870 * 3 * 1e-4) / (Math.PI * 0.01 ** 4), 6);
});

test('no flow, no drop; roughness that is no roughness is refused', () => {
  const still = { flow: 0, bore: 0.01, length: 1, viscosity: 1e-5, density: 870, roughness: 0 };
  expect(pressureDrop(still)).toBe(0);
  expect(() => pressureDrop({ ...still, roughness: 0.001 })).toThrow('roughness is 10 % of the bore');
});

test('bore size is the way back from velocity', () => {
  expect(velocity(0.001, boreSize(0.001, 4.5))).toBeCloseTo(4.5, 12);
});

test('units as NIST SP 811 fixes them', () => {
  // NIST SP 811: 1 gpm = 6.309020e-5 m³/s, 1 psi = 6.894757e3 Pa.
  expect(SI_OF.US.flow).toBeCloseTo(6.30902e-5, 11);
  expect(SI_OF.US.pressure).toBeCloseTo(6894.757, 3);
  // Handbook rule: velocity in ft/s = .3208 · gpm ÷ bore area in square inches (common practice).
  expect(velocity(SI_OF.US.flow, SI_OF.US.bore) / SI_OF.US.velocity).toBeCloseTo(0.3208 / (Math.PI / 4), 3);
});

test('viscosity between two known points', () => {
  // ASTM D341, computed: 32 at 40 °C and 5.4 at 100 °C give 8.53 at 80 °C.
  expect(viscosityAt(80, { celsius: 40, viscosity: 32 }, { celsius: 100, viscosity: 5.4 })).toBeCloseTo(8.53, 2);
});

// ASTM D341 / D2270, computed: VG 46 with viscosity index 100.
test.each([
  [100, 6.7604, 4],
  [20, 134.49, 2],
  [60, 20.562, 3],
  [40, 46, 10],
])('VG 46 at %d °C: %d mm²/s', (celsius, expected, digits) => expect(gradeViscosity(46, celsius)).toBeCloseTo(expected, digits));

// ASTM D2270, table 1, column H at the rows on both sides: a viscosity index of 100 lies between them.
test.each([
  [10, 2.6, 9.647, 2.7, 10.25],
  [15, 3.4, 14.93, 3.5, 15.66],
  [22, 4.2, 21.21, 4.3, 22.05],
  [32, 5.3, 31.4, 5.4, 32.37],
  [46, 6.7, 45.33, 6.8, 46.44],
  [68, 8.7, 67.64, 8.8, 68.79],
  [100, 11.3, 98.97, 11.4, 100.2],
  [150, 15, 149.7, 15.1, 151.2],
  [220, 19.4, 219.4, 19.5, 221.1],
  [320, 24.8, 317, 25, 320.9],
  [460, 31.5, 454, 32, 464.9],
  [680, 41, 676.6, 41.5, 689.1],
  [1000, 52.5, 992.1, 53, 1007],
  [1500, 68, 1488, 68.5, 1506],
])('VG %d has viscosity index 100 by linear interpolation', (grade, y1, h1, y2, h2) => {
  const { at100 } = ISO_VISCOSITY_GRADES.find(row => row.grade === grade)!;
  expect(h1 + ((h2 - h1) * (at100! - y1)) / (y2 - y1)).toBeCloseTo(grade, 3);
});

test('above 70 mm²/s the equation of ASTM D2270 holds: H = .1684·Y² + 11.85·Y − 97', () => {
  for (const { grade, at100 } of ISO_VISCOSITY_GRADES.slice(-2)) {
    expect(0.1684 * at100! ** 2 + 11.85 * at100! - 97).toBeCloseTo(grade, 2);
  }
});

test('the grades of ISO 3448: twenty, each midpoint about half as much again as the one before', () => {
  expect(ISO_VISCOSITY_GRADES).toHaveLength(20);
  ISO_VISCOSITY_GRADES.slice(1).forEach(({ at40 }, index) => {
    const step = at40 / ISO_VISCOSITY_GRADES[index]!.at40;
    expect(step).toBeGreaterThan(1.42);
    expect(step).toBeLessThan(1.52);
  });
});

test.each([
  [45, 40, 'enter an ISO viscosity grade: 7, 10'],
  [5, 40, 'no viscosity index'],
  [46, 300, 'between -60 °C and 200 °C'],
])('grade %d at %d °C is refused', (grade, celsius, message) => expect(() => gradeViscosity(grade, celsius)).toThrow(message));
