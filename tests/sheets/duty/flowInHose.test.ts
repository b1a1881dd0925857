import { Decimal } from '../../../src/core/units/decimal';
import { dropLines, velocityIn, velocityMargin } from '../../../src/sheets/duty/flowInHose';
import { demandOf } from './duties';

const mm = (value: number) => new Decimal(value);

test('White, Fluid Mechanics, example 6.4 (memory): oil of 900 kg/m³ and 200 mm²/s, .0076 m³/s, 10 m of 60 mm: 2.7 m/s, 4.9 m of head, laminar', () => {
  const demand = demandOf({
    flow: String(0.0076 * 60_000),
    fastest: '',
    bore: '60',
    grade: 'typed',
    viscosity: '200',
    density: '900',
  });
  expect(velocityIn(demand, mm(60))!).toBeCloseTo(2.7, 1);
  const [line] = dropLines(demand, mm(60), mm(10_000));
  expect((line!.drop! * 1e5) / (900 * 9.80665)).toBeCloseTo(4.9, 1);
  expect(line!.text).toMatch(/laminar$/);
});

test('oil of a grade is taken at the fluid’s hottest and coldest: ISO VG 46 is 20.56 mm²/s at 60 °C, 134.5 at 20 °C (ASTM D341, computed)', () => {
  const lines = dropLines(demandOf({ fluidHottest: '60', fluidColdest: '20' }), mm(15.9), mm(1000));
  expect(lines.map(({ at }) => at)).toEqual(['at 60 °C, 20.6 mm²/s', 'at 20 °C, 134.5 mm²/s']);
  // 60 L/min in 15.9 mm: Re = 4Q/(πdν) = 3895 and 595. Laminar: Δp = 128·ρ·ν·L·Q/(π·d⁴).
  const laminar = (128 * 870 * 134.49e-6 * 1 * 1e-3) / (Math.PI * 0.0159 ** 4) / 1e5;
  expect(lines[1]!.drop!).toBeCloseTo(laminar, 3);
  expect(lines.map(({ text }) => text.replace(/^[\d.]+ bar, /, ''))).toEqual([
    'between laminar and turbulent, the larger loss counts',
    'laminar',
  ]);
});

test('US units: 13 gpm in a bore of .7287 in runs at 10 ft/s (.3208 · gpm ÷ area)', () => {
  const demand = demandOf({ units: 'US', flow: '13', fastest: '10' });
  expect(velocityIn(demand, new Decimal('0.7287'))!).toBeCloseTo(10, 2);
  expect(velocityMargin(demand, demand.bore)).toMatchObject({ state: 'met', verdict: '0 ft/s to spare' });
});

test.each([
  ['the flow', { flow: '', bore: '16' }, 'not known: no flow given'],
  ['the oil', { grade: '' }, 'not known: no viscosity given'],
  ['the density', { density: '' }, 'not known: no density given'],
  ['the fluid’s temperature', { fluidColdest: '', fluidHottest: '' }, 'not known: no fluid temperature given'],
] as const)('without %s the pressure drop is not known and says why', (_, change, text) => {
  const lines = dropLines(demandOf(change), mm(16), mm(1000));
  expect(lines).toEqual([{ at: '', drop: undefined, text }]);
});

test('a velocity without a limit is told and not judged; without a flow it is not known', () => {
  expect(velocityMargin(demandOf({ fastest: '', bore: '16' }), mm(16))).toMatchObject({
    state: 'not asked',
    facts: '4.97 m/s; no limit given',
  });
  expect(velocityMargin(demandOf({ flow: '', bore: '16' }), mm(16)).verdict).toBe('not known');
});
