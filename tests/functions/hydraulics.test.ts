import { called, col, FakeCellError } from '../host/customFunctions';
import { boreSize, pressureDrop, velocity, viscosity } from '../../src/functions/hydraulics';

const one = (value: unknown): any[][] => [[value]];
const none = null as never;
const close = (value: number, digits = 6) => expect.closeTo(value, digits);
const NA = new FakeCellError('#N/A', 'no such part');
const metric = one('metric');

describe('VELOCITY', () => {
  test('metric and US, one row a row', () => {
    // 60 L/min through 20 mm: .001 m³/s ÷ (π/4 · .02²) = 3.1831 m/s. 10 gpm through 1 in: .3208 · 10 ÷ .7854 = 4.085 ft/s (common practice).
    expect(called(() => velocity(col(60, null, '120'), one(20), metric)).flat()).toEqual([
      close(3.1831, 4),
      '',
      close(6.3662, 4),
    ]);
    expect(called(() => velocity(one(10), one('1"'), one(' us '))).flat()).toEqual([close(4.085, 3)]);
  });

  test('no flow has no velocity', () => expect(called(() => velocity(one(0), one(20), metric))).toEqual([[0]]));

  test('a bad row has its own error', () => {
    expect(called(() => velocity(col(60, 60, 60, 'x', -1), col(null, 0, NA, 20, 20), metric)).flat()).toEqual([
      '#VALUE! bore is blank: fill it in',
      '#VALUE! bore is blank or zero: fill it in',
      '#N/A no such part',
      '#VALUE! flow is "x": enter the flow, like 60 or 12.5',
      '#VALUE! flow is -1: it must not be less than 0',
    ]);
  });

  test('a unit that is neither is the error of the whole', () => {
    expect(called(() => velocity(one(60), one(20), one('imperial')))).toEqual([
      ['#VALUE! unit is "imperial": enter "metric" or "US"'],
    ]);
    expect(called(() => velocity(one(60), one(20), one(null)))).toEqual([['#VALUE! unit is blank: fill it in']]);
  });
});

describe('BORESIZE', () => {
  test('is the way back from the velocity', () => {
    expect(called(() => boreSize(col(60, ''), one(5), metric)).flat()).toEqual([close(15.9577, 4), '']);
    const [[bore]] = called(() => boreSize(one(10), one(15), one('US'))) as [[number]];
    expect(called(() => velocity(one(10), one(bore), one('US')))).toEqual([[close(15, 8)]]);
  });

  test('needs flow and velocity', () => {
    expect(called(() => boreSize(col(0, 60, 60, NA, 60), col(5, 0, null, 5, 'fast'), metric)).flat()).toEqual([
      '#VALUE! flow is blank or zero: fill it in',
      '#VALUE! velocity is blank or zero: fill it in',
      '#VALUE! velocity is blank: fill it in',
      '#N/A no such part',
      '#VALUE! velocity is "fast": enter the velocity, like 5 or 12.5',
    ]);
  });
});

describe('PRESSUREDROP', () => {
  test('White, Fluid Mechanics, example 6.7, in bar', () => {
    // Head 117.352 m (computed from the example, which takes g = 9.81 m/s²): 900 · 9.81 · 117.352 Pa.
    const drop = called(() => pressureDrop(one(12_000), one(200), one(500), one(10), metric, one(900), one(0.26)));
    expect(drop).toEqual([[close((900 * 9.81 * 117.352) / 1e5, 4)]]);
  });

  test('the same pipe in US units gives the same pressure, in psi', () => {
    const [[bar]] = called(() => pressureDrop(one(100), one(25.4), one(3.048), one(30), metric, none, one(0.254))) as [[number]];
    const [[psi]] = called(() => pressureDrop(one(100 / 3.785411784), one(1), one(10), one(30), one('US'), none, one(0.01))) as [
      [number],
    ];
    expect((psi * 6894.757293168361) / 1e5).toBeCloseTo(bar, 10);
  });

  test('density is 870 unless given, and counts in proportion', () => {
    const at = (density: any) =>
      (called(() => pressureDrop(one(60), one(20), one(10), one(46), metric, density)) as [[number]])[0][0];
    expect(at(one(''))).toBe(at(one(870)));
    expect(at(one(1740)) / at(none)).toBeCloseTo(2, 12);
  });

  test('rows, blanks and errors', () => {
    const drop = called(() =>
      pressureDrop(col(60, null, 0, 60, 60, 60), one(20), col(10, 10, 10, 0, NA, 'x'), one(46), metric),
    ).flat();
    expect(drop).toEqual([
      close(1.0191, 4),
      '',
      0,
      '#VALUE! length is blank or zero: fill it in',
      '#N/A no such part',
      '#VALUE! length is "x": enter the length, like 12.5, 3/8 or 1 1/2',
    ]);
    expect(called(() => pressureDrop(one(60), one(20), one(10), one(46), metric, none, one(2)))).toEqual([
      ['#VALUE! roughness is 10 % of the bore: it must not exceed 1/20 of the bore; give it in the unit of the bore'],
    ]);
    expect(called(() => pressureDrop(one(60), one(20), one(10), one(46), one('SI')))).toEqual([
      ['#VALUE! unit is "SI": enter "metric" or "US"'],
    ]);
  });
});

test('inch and foot marks count where the unit is US, feet where the length counts feet, and are refused in metric calls', () => {
  const run = (length: unknown, unit: string, bore: unknown = 0.75, roughness: any = none) =>
    called(() => pressureDrop(one(16), one(bore), one(length), one(46), one(unit), none, roughness))[0]![0];
  expect(run(`10'`, 'US')).toBe(run(10, 'US'));
  expect(run(`10' 6"`, 'US')).toBe(run(10.5, 'US'));
  expect(run('6"', 'US', '3/4"')).toBe(run(0.5, 'US'));
  expect(run(`10'`, 'metric', 20)).toBe(
    `#VALUE! length is "10'": that is in inches, but this call is metric; use one system of units`,
  );
  expect(run(10, 'metric', '1/2"')).toMatch(/^#VALUE! bore is "1\/2"": that is in inches/);
  expect(run(10, 'metric', 20, one('1/64"'))).toMatch(/^#VALUE! roughness is "1\/64"": that is in inches/);
  expect(called(() => velocity(one(60), one('1/2"'), metric))[0]![0]).toMatch(/^#VALUE! bore is "1\/2"": that is in inches/);
});

test('flows, velocities, viscosities, densities and temperatures carry no inch or foot marks', () => {
  const mark = 'inch and foot marks belong to lengths';
  expect(called(() => velocity(one("3'"), one(20), metric))[0]![0]).toBe(
    `#VALUE! flow is "3'": ${mark}; enter the flow without one`,
  );
  expect(called(() => boreSize(one(60), one('5"'), one('US')))[0]![0]).toMatch(`velocity is "5"": ${mark}`);
  expect(called(() => pressureDrop(one(60), one(20), one(10), one('46"'), metric))[0]![0]).toMatch(`viscosity is "46"": ${mark}`);
  expect(called(() => viscosity(one(46), one("40'"), metric))[0]![0]).toMatch(`temperature is "40'": ${mark}`);
});

test('a density below that of air in kg/m³ is refused: g/cm³ would be taken for next to nothing; a gas may flow', () => {
  const drop = (density: unknown) => called(() => pressureDrop(one(60), one(20), one(10), one(46), metric, one(density)))[0]![0];
  expect([0.87, 1.1].map(drop)).toEqual(
    [0.87, 1.1].map(density => `#VALUE! density is ${density}: in kg/m³ that is less than air; oil has about 870 (0.87 g/cm³)`),
  );
  // 1.204 kg/m³: dry air at 20 °C and 101.325 kPa (ICAO standard atmosphere gives 1.225 at 15 °C).
  for (const density of [1.204, 1.225, 54]) expect(drop(density)).toBeCloseTo((Number(drop(870)) * density) / 870, 12);
});

test('a fraction that the sheet made a date of is no bore and no roughness', () => {
  const date = /is 45725: that looks like a date/;
  expect(called(() => velocity(one(10), one(45725), one('US')))[0]![0]).toMatch(date);
  expect(called(() => pressureDrop(one(10), one(1), one(10), one(46), one('US'), none, one(45725)))[0]![0]).toMatch(date);
});

describe('VISCOSITY', () => {
  test('a grade of hundreds of digits is quoted as it came', () => {
    expect(() => viscosity(one('9'.repeat(400)), one(60), metric)).toThrow(/^grade is "9{40}…": enter an ISO viscosity grade/);
  });

  // ASTM D341 and D2270, computed.
  test('VG 46 at temperatures in °C, however the grade is written', () => {
    for (const grade of [46, '46', 'VG 46', 'iso vg46', 'ISO VG-46']) {
      expect(called(() => viscosity(one(grade), col(20, '', 60), metric)).flat()).toEqual([
        close(134.49, 2),
        '',
        close(20.562, 3),
      ]);
    }
  });

  test('°F in US units; 0 °C is a temperature', () => {
    expect(called(() => viscosity(one(46), one(140), one('US')))).toEqual([[close(20.562, 3)]]);
    expect(called(() => viscosity(one(46), one(0), metric))).toEqual(called(() => viscosity(one(46), one(32), one('US'))));
    expect(called(() => viscosity(one(46), one(140), one('°f')))).toEqual(called(() => viscosity(one(46), one(60), one('C'))));
  });

  test('errors', () => {
    expect(called(() => viscosity(one(46), col('hot', NA, 500), metric)).flat()).toEqual([
      '#VALUE! temperature is "hot": enter the temperature, like 40 or -10',
      '#N/A no such part',
      '#VALUE! temperature is 500 °C: it must lie between -60 °C and 200 °C; check the unit',
    ]);
    expect(called(() => viscosity(one(46), one(500), one('US')))).toEqual([
      ['#VALUE! temperature is 500 °F: it must lie between -76 °F and 392 °F; check the unit'],
    ]);
    expect(called(() => viscosity(one('thin'), one(40), metric))).toEqual([
      ['#VALUE! grade is "thin": enter an ISO viscosity grade like 46 or VG 46'],
    ]);
    expect([true, 46.5].map(grade => called(() => viscosity(one(grade), one(40), metric))[0]![0])).toEqual([
      '#VALUE! grade is TRUE: enter an ISO viscosity grade like 46 or VG 46',
      '#VALUE! grade is 46.5: enter an ISO viscosity grade like 46 or VG 46',
    ]);
    expect(called(() => viscosity(one(null), one(40), metric))).toEqual([['#VALUE! grade is blank: fill it in']]);
    expect(called(() => viscosity(one(45), one(40), metric))[0]![0]).toMatch(
      /^#VALUE! grade is 45: enter an ISO viscosity grade: 7, 10/,
    );
  });
});
