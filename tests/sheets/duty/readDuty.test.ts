import { FRESH_DUTY, inUnits } from '../../../src/sheets/duty/dutyFields';
import { readDuty } from '../../../src/sheets/duty/readDuty';
import { demandOf, LIFT } from './duties';

test('an empty form asks for what cannot be left out, and for nothing else', () => {
  const { demand, mistakes } = readDuty(FRESH_DUTY);
  expect(demand).toBeUndefined();
  expect(Object.keys(mistakes).sort()).toEqual(['bore', 'fluidColdest', 'fluidHottest', 'pressure']);
});

test('the bore follows from flow and velocity, and a larger typed one wins', () => {
  // Continuity in handbook form: area in square inches = .3208 · gpm ÷ (ft/s); 13 gpm at 10 ft/s: .41704 in², .7287 in.
  const us = { units: 'US', flow: '13', fastest: '10' } as const;
  expect(demandOf(us).bore.toNumber()).toBeCloseTo(Math.sqrt((4 * 0.3208 * 13) / 10 / Math.PI), 3);
  expect(demandOf({ ...us, bore: '3/4' }).bore.toNumber()).toBe(0.75);
  expect(demandOf({ ...us, bore: '1/2' }).isBoreByFlow).toBe(true);
});

test('the widest temperatures of fluid and air count', () => {
  const { coldest, hottest } = demandOf();
  expect([coldest.toNumber(), hottest.toNumber()]).toEqual([-20, 80]);
  expect(demandOf({ airHottest: '95' }).hottest.toNumber()).toBe(95);
});

test.each([
  [
    'a comma of either kind',
    { pressure: '1,800' },
    'pressure',
    /^Working pressure is "1,800": its comma may mean decimals or thousands; write 1.800 or 1800/,
  ],
  ['an inch mark in mm', { bore: '1/2"' }, 'bore', /that is in inches/],
  ['half an assembly', { quantity: '1.5' }, 'quantity', /enter a whole number/],
  ['hottest below coldest', { fluidHottest: '-30', airHottest: '' }, 'fluidHottest', /swap them/],
  [
    'a bend without radius',
    { route: [{ kind: 'bend', radius: '', angle: '90', turn: 'left' }] },
    'route 1 radius',
    /^Radius of part 1 is blank/,
  ],
  [
    'a bend beyond a full turn',
    { route: [{ kind: 'bend', radius: '9', angle: '400', turn: 'left' }] },
    'route 1 angle',
    /at most 360/,
  ],
  ['more than a whole turn of twist', { twist: '400' }, 'twist', /^Twist angle is 400: at most 360/],
  ['a negative flow', { flow: '-60' }, 'flow', /^Flow is "-60": it must be more than 0/],
  ['a flow beyond anything', { flow: '2e9' }, 'flow', /^Flow is/],
  ['a unit at a flow, which has none to be turned into', { flow: '60 L' }, 'flow', /^Flow is "60 L"/],
  ['a unit of something else', { pressure: '180 mm' }, 'pressure', /^Working pressure is "180 mm"/],
  ['a foot mark at a pressure', { surge: "3'" }, 'surge', /^Highest surge is "3'": inch and foot marks belong to lengths/],
  ['no number', { slack: 'some' }, 'slack', /^Slack is "some"/],
  ['typed viscosity left out', { grade: 'typed' }, 'viscosity', /enter it in mm²\/s/],
] as const)('%s is a mistake of its field', (_, change, field, sentence) => {
  const { demand, mistakes } = readDuty({ ...LIFT, ...change });
  expect(demand).toBeUndefined();
  expect(mistakes[field]).toMatch(sentence);
});

test('a blank route is no route, and a blank vacuum no vacuum', () => {
  const demand = demandOf({ route: FRESH_DUTY.route });
  expect(demand.route).toEqual([]);
  expect(demand.vacuum).toBeUndefined();
  expect(demandOf({ vacuum: 'yes' }).vacuum).toBe('yes');
});

test('the other units keep what is asked: NIST SP 811 factors, there and back', () => {
  const us = inUnits(LIFT, 'US');
  // NIST SP 811, appendix B: 60 L/min = 15.850 gpm, 180 bar = 2610.7 psi, 80 °C = 176 °F, 300 mm = 11.811 in.
  expect([us.flow, us.pressure, us.fluidHottest, us.route[0]]).toEqual([
    '15.85',
    '2610.7',
    '176',
    { kind: 'straight', length: '11.811' },
  ]);
  expect(inUnits(us, 'metric')).toMatchObject({ flow: '59.999', pressure: '180', fluidHottest: '80', fluidColdest: '-10' });
  expect(us.slack).toBe(LIFT.slack);
});

// 1 MPa = 10 bar, 1 in = 25.4 mm. Source: NIST SP 811.
test('a number brings its own unit where the field has one', () => {
  const { demand } = readDuty({ ...LIFT, pressure: '18 MPa', surge: '210 bar' });
  expect([demand!.pressure, demand!.surge].map(String)).toEqual(['180', '210']);
});
