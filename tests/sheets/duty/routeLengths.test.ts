import { Decimal } from '../../../src/core/units/decimal';
import { routeLengths, straightRunMargin } from '../../../src/sheets/duty/routeLengths';
import { demandOf } from './duties';
import { sampleCatalogue } from './sampleCatalogue';

const catalogue = sampleCatalogue();
const larch = catalogue.hoses.find(({ hose }) => hose === 'Larch DN 16')!;
const fitting = catalogue.fittings.find(part => part.fitting === 'Larch 24° cone L straight DN 16')!;

test('the test free length of SAE J343:2016: π(r + d/2) + 2·max(d, 25.4) for a 180° bend, r 180, d 22: 650.844 mm', () => {
  const demand = demandOf({
    route: [
      { kind: 'straight', length: '25.4' },
      { kind: 'bend', radius: '180', angle: '180', turn: 'left' },
      { kind: 'straight', length: '25.4' },
    ],
    slack: '',
  });
  const lengths = routeLengths(catalogue, { ...larch, outsideDiameter: 22 }, demand);
  expect(lengths.along!.toNumber()).toBeCloseTo(650.844, 3);
  expect(lengths.overall!.toNumber()).toBe(651);
});

test('slack of 5 to 8 % (NAVEDTRA 14105, 5-11) outweighs 4 % of shortening only from 4.17 % on', () => {
  const route = [{ kind: 'straight', length: '1000' }] as const;
  const less = routeLengths(catalogue, larch, demandOf({ route, slack: '4' })).change;
  expect(less).toMatchObject({ state: 'unsure', verdict: '1.6 mm too short: give at least 4.2 % slack' });
  const enough = routeLengths(catalogue, larch, demandOf({ route, slack: '5' })).change;
  expect(enough).toMatchObject({ state: 'met', verdict: '8 mm to spare' });
  expect(enough.facts).toContain('under pressure 1008 mm to 1071 mm');
});

test('what the catalogue does not say is not known, never taken as usual', () => {
  const silent = { ...larch, shortens: undefined, outsideDiameter: undefined };
  const straight = routeLengths(catalogue, silent, demandOf({ route: [{ kind: 'straight', length: '1000' }] }));
  expect(straight.change).toMatchObject({ state: 'unsure', verdict: 'not known' });
  const bent = routeLengths(catalogue, silent, demandOf());
  expect(bent.overall).toBeUndefined();
  expect(bent.reason).toMatch(/outside diameter not known/);
  expect(routeLengths(catalogue, larch, demandOf({ route: [] })).reason).toBe('no route given');
});

test('in inches the overall length goes up to the next sixteenth', () => {
  const route = [{ kind: 'straight', length: '40' }] as const;
  const { overall } = routeLengths(catalogue, larch, demandOf({ units: 'US', route, slack: '5.1' }));
  expect(overall!.toNumber()).toBe(42 + 1 / 16);
  expect(routeLengths(catalogue, larch, demandOf({ units: 'US', route, slack: '5' })).overall!.toNumber()).toBe(42);
});

const run = (change: Parameters<typeof demandOf>[0], insertionDepth: number | undefined = 30) =>
  straightRunMargin(catalogue, demandOf(change), {
    end: 'A',
    option: { fitting, insertionDepth, price: undefined, pressure: undefined as never },
    outsideDiameter: new Decimal('25.4'),
  });

test('two hose diameters straight before a bend (FAA-H-8083-30, 7-19), counted from the end of the coupling', () => {
  const bend = { kind: 'bend', radius: '250', angle: '90', turn: 'left' } as const;
  const lead = (length: string) => ({ route: [{ kind: 'straight', length } as const, bend] });
  // Cut-off 30 and insertion depth 30: the coupling ends at 60; 2 × 25.4 = 50.8 more.
  expect(run(lead('110.8'))).toMatchObject({ state: 'met', verdict: '0 mm to spare' });
  expect(run(lead('110'))).toMatchObject({ state: 'unsure', verdict: 'bend begins 0.8 mm too early' });
  expect(run({ route: [bend] })).toMatchObject({ verdict: 'bend begins 110.8 mm too early' });
  expect(run({ route: [{ kind: 'straight', length: '10' }] })).toMatchObject({ state: 'not asked' });
  expect(run({ ...lead('110'), straightRun: '' })).toMatchObject({ state: 'not asked' });
});
