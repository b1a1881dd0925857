import fc from 'fast-check';
import { hoseFit } from '../../../src/core/catalogue/hoseDuty';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { unitCost } from '../../../src/core/catalogue/unitCost';
import { Decimal } from '../../../src/core/units/decimal';
import { candidates, choose } from '../../../src/sheets/duty/candidates';
import { costText, weakestPart } from '../../../src/sheets/duty/choiceTexts';
import { endOptions, ruledOutFittings } from '../../../src/sheets/duty/endOptions';
import { hoseDutyOf, hoseMargins } from '../../../src/sheets/duty/hoseMargins';
import { rowContent } from '../../../src/sheets/duty/insertChoice';
import { rulesOut } from '../../../src/sheets/duty/margin';
import { treeTables, withCell } from '../../core/catalogue/treeCatalogue';
import { treeFluids } from '../../core/catalogue/treeFluids';
import { demandOf } from './duties';
import { sampleCatalogue } from './sampleCatalogue';

const sample = sampleCatalogue();

/** Against the small catalogue of the core's tests: no outside diameters, derating for one hose, fittings without rating. */
const small = (change: Parameters<typeof demandOf>[0] = {}) =>
  demandOf({
    flow: '',
    fastest: '',
    bore: '12',
    surge: '',
    route: [{ kind: 'straight', length: '1000' }],
    slack: '',
    formA: '24° cone L',
    angleA: '0',
    angleB: '0',
    ...change,
  });
const tree = readCatalogue(treeTables);
/** With the table Fluids: water-glycol at most 70 °C, in hoses Alder 65, in Alder DN 25 60; never below −20. */
const wet = readCatalogue({ ...treeTables, fluids: treeFluids });
const reasonsOf = (hose: string, demand: ReturnType<typeof demandOf>, catalogue = tree) =>
  candidates(catalogue, demand).ruledOut.find(found => found.hose.hose === hose)?.reasons;

test('what suits comes cheapest first by UNITCOST, and every hose is either among them or ruled out with a reason', () => {
  const demand = demandOf({ angleA: '', surge: '120', pressure: '90' });
  const { suitable, ruledOut } = candidates(sample, demand);
  expect(suitable.length).toBeGreaterThan(2);
  const totals = suitable.map(({ hose, cheapest }) => {
    const names = cheapest.ends.map(({ fitting }) => fitting.fitting) as [string, string];
    return unitCost(sample, hose.hose, names, cheapest.lengths.overall!, demand.quantity).total.toNumber();
  });
  expect(totals).toEqual([...totals].sort((a, b) => a - b));
  expect(suitable.length + ruledOut.length).toBe(sample.hoses.length);
  expect(ruledOut.every(({ reasons }) => reasons.length > 0 && reasons.every(reason => reason.length > 10))).toBe(true);
});

test('of the hoses ruled out those that lack nothing but couplings come first, then those that miss by the smallest share', () => {
  const { ruledOut } = candidates(sample, demandOf({ flow: '60', fastest: '4', pressure: '160', surge: '200' }));
  const nearest = ruledOut.filter(({ by }) => by === 'couplings');
  expect(nearest.flatMap(({ reasons }) => reasons)[0]).toMatch(/^End A: Pressure of Larch/);
  expect(ruledOut.slice(0, nearest.length)).toEqual(nearest);
  const measured = ruledOut.slice(nearest.length).filter(({ kind }) => kind === 0);
  expect(ruledOut.slice(nearest.length, nearest.length + measured.length)).toEqual(measured);
  const shares = measured.map(({ missedBy }) => missedBy);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(shares.at(-1)).toBeGreaterThan(shares[0]!);
});

test('a bore 0.1 mm too small comes before one 9.6 mm too small, whatever their order in the catalogue', () => {
  const [hose] = tree.hoses.filter(found => found.hose === 'Alder DN 12');
  const sized = (name: string, bore: number) => ({ ...hose!, hose: name, bore });
  const hoses = [sized('far', 6.4), sized('near', 15.9), sized('middle', 12.7)];
  const demand = small({ bore: '16' });
  const { ruledOut } = candidates({ ...tree, hoses }, demand);
  expect(ruledOut.map(({ hose: { hose: name } }) => name)).toEqual(['near', 'middle', 'far']);
  expect(ruledOut.map(({ missedBy }) => missedBy)).toEqual([0.1 / 16, 3.3 / 16, 9.6 / 16].map(share => expect.closeTo(share, 9)));
  expect(ruledOut[0]!.reasons).toEqual(['Bore: needs 16 mm, has 15.9 mm, 0.1 mm too little (1 %)']);
});

test('degrees are measured by the range that is asked for: 5 of 125 °C is nearer than a tenth of the pressure', () => {
  const [hose] = tree.hoses.filter(found => found.hose === 'Alder DN 12');
  const hoses = [
    { ...hose!, hose: 'weak', workingPressure: 90 },
    { ...hose!, hose: 'cold', hottest: 100 },
  ];
  const catalogue = { ...tree, hoses, derating: [] };
  const asked = {
    bore: '12',
    pressure: '100',
    surge: '',
    fluidHottest: '',
    airHottest: '105',
    fluidColdest: '',
    airColdest: '-20',
  };
  const { ruledOut } = candidates(catalogue, small(asked));
  const cold = ruledOut.find(found => found.hose.hose === 'cold')!;
  expect(cold.missedBy).toBeCloseTo(5 / 125, 9);
});

test('a bore that the flow needs by a hair more says by how little, and what the velocity would be in the hose’s', () => {
  // v = Q ÷ A: 60 L/min through 12.7 mm is 0.001 m³/s ÷ 1.26677e-4 m² = 7.894 m/s (continuity, any textbook of hydraulics).
  const [hose] = tree.hoses.filter(found => found.hose === 'Alder DN 12');
  const bore = { ...hose!, bore: 12.7 };
  const [margin] = hoseMargins(tree, bore, small({ bore: '', flow: '60', fastest: '7.89' })).filter(
    ({ demand }) => demand === 'Bore',
  );
  expect(margin!.state).toBe('missed');
  expect(margin!.verdict).toBe('0.0033 mm too little (0.026 %); velocity would be 7.894 m/s, your limit is 7.89 m/s');
});

test('of several fittings the cheapest pair that may be made is taken; the others can be chosen', () => {
  const demand = demandOf({ angleA: '' });
  const [first] = candidates(sample, demand).suitable;
  const all = first!.ends[0].flatMap(a => first!.ends[1].map(b => choose(sample, demand, first!, [a, b])));
  const costs = all.filter(({ wrong }) => wrong.length === 0).map(({ cost }) => cost!.total.toNumber());
  expect(costs.length).toBeGreaterThan(1);
  expect(first!.cheapest.cost!.total.toNumber()).toBe(Math.min(...costs));
});

test('margins rule a hose out exactly where FINDHOSE’s arithmetic does, whatever is asked', () => {
  const amount = (min: number, max: number) => fc.integer({ min, max }).map(String);
  const change = fc.record({
    units: fc.constant('metric' as const),
    fluid: fc.constantFrom('', 'mineral oil', 'HLP 46', 'Water Glycol', 'HFC', 'rapeseed ester', 'phosphate ester'),
    flow: fc.constant(''),
    fastest: fc.constant(''),
    bore: amount(5, 40),
    surge: fc.oneof(fc.constant(''), amount(10, 500)),
    pressure: amount(5, 400),
    fluidColdest: amount(-50, 10),
    fluidHottest: amount(30, 130),
    vacuum: fc.oneof(
      fc.constantFrom('', 'yes'),
      amount(1, 9).map(tenths => String(Number(tenths) / 10)),
    ),
    route: fc.oneof(
      fc.constant([{ kind: 'straight', length: '1000' }] as const),
      amount(50, 700).map(radius => [{ kind: 'bend', radius, angle: '90', turn: 'left' }] as const),
    ),
  });
  fc.assert(
    fc.property(change, fc.constantFrom(sample, tree, wet), (asked, catalogue) => {
      const demand = demandOf(asked);
      const duty = hoseDutyOf(catalogue, demand);
      for (const hose of catalogue.hoses) {
        const isOut = hoseMargins(catalogue, hose, demand).some(rulesOut);
        expect([hose.hose, isOut]).toEqual([hose.hose, hoseFit(catalogue, hose, duty).ruledOut.length > 0]);
      }
    }),
    { numRuns: 200 },
  );
});

test('the rating at temperature comes from the derating table: .9 of 165 bar at 80 °C is 148.5 bar', () => {
  const hose = tree.hoses.find(found => found.hose === 'Alder DN 25')!;
  const margins = hoseMargins(tree, hose, small({ bore: '25', pressure: '100' }));
  expect(margins.find(({ demand }) => demand === 'Pressure of the hose at 80 °C')).toEqual({
    demand: 'Pressure of the hose at 80 °C',
    state: 'met',
    facts: 'needs 100 bar, rated 148.5 bar (90 % of 165 bar)',
    verdict: '48.5 bar to spare (49 %)',
  });
  expect(reasonsOf('Alder DN 25', small({ bore: '25', pressure: '150' }))).toContain(
    'Pressure of the hose at 80 °C: needs 150 bar, rated 148.5 bar (90 % of 165 bar), 1.5 bar too little (1 %)',
  );
  expect(reasonsOf('Alder DN 25', small({ bore: '25', fluidHottest: '110' }))).toContainEqual(
    expect.stringMatching(/Derating has no row for 110 °C or hotter/),
  );
});

test('what is asked is rounded up, what there is down, and what is to spare or lacking is the difference of both', () => {
  const hose = tree.hoses.find(found => found.hose === 'Alder DN 25')!;
  const pressureOf = (workingPressure: number, pressure: string) =>
    hoseMargins(tree, { ...hose, workingPressure }, small({ bore: '25', pressure })).find(({ demand }) =>
      demand.startsWith('Pressure of the hose'),
    );
  // .9 of 113.5 bar is 102.15 bar.
  expect(pressureOf(113.5, '100')).toMatchObject({
    facts: expect.stringContaining('rated 102.1 bar'),
    verdict: '2.1 bar to spare (2 %)',
  });
  expect(pressureOf(113.5, '110')).toMatchObject({
    facts: expect.stringContaining('rated 102.1 bar'),
    verdict: '7.9 bar too little (7 %)',
  });
  // Nearer than a tenth: what is shown as the same is still to spare, or lacking.
  expect(pressureOf(113.5, '102.13')).toMatchObject({ state: 'met', verdict: '0.02 bar to spare (0.02 %)' });
  expect(pressureOf(113.5, '102.17')).toMatchObject({ state: 'missed', verdict: '0.02 bar too little (0.02 %)' });
});

test('100 °C is 212 °F (NIST SP 811), not a little less: what conversion leaves behind is not rounded away', () => {
  const hose = tree.hoses.find(found => found.hose === 'Alder DN 12')!;
  const demand = small({
    units: 'US',
    bore: '1/2',
    pressure: '1450',
    fluidHottest: '176',
    fluidColdest: '-22',
    airColdest: '',
    airHottest: '',
  });
  const margin = hoseMargins(tree, hose, demand).find(found => found.demand === 'Hottest');
  expect(margin).toMatchObject({ facts: 'needs 176 °F, up to 212 °F', verdict: '36 °F to spare' });
});

test('the cost of several is that of one as it is shown, times their number', () => {
  const [found] = candidates(tree, small({ quantity: '7' })).suitable;
  const text = costText(found!.cheapest, small({ quantity: '7' }));
  const [, each, all] = /^Cost: ([\d.]+) each .*; 7 cost ([\d.]+)\.$/.exec(text)!;
  expect(Math.round(Number(all) * 100)).toBe(Math.round(Number(each) * 100) * 7);
});

test('every fitting of the hose that does not suit an end has its reason: form, angle, crimp data, pressure', () => {
  const hose = tree.hoses.find(found => found.hose === 'Alder DN 12')!;
  const demand = small({ surge: '240' });
  const { suitable } = endOptions(tree, hose, demand.ends[0], demand);
  const reasons = new Map(
    ruledOutFittings(tree, hose, demand.ends[0], demand, suitable).map(({ fitting, reason }) => [fitting, reason]),
  );
  expect(suitable.map(({ fitting }) => fitting.fitting)).toEqual(['Alder cone straight DN 12']);
  expect(Object.fromEntries(reasons)).toEqual({
    'Alder cone elbow DN 12': 'angle 90°',
    'Alder flare straight DN 12': 'end form 37° flare swivel',
    'Alder oddment': 'angle 45°',
  });
  const more = small({ surge: '260', formA: '37° flare swivel' });
  const out = ruledOutFittings(tree, hose, more.ends[0], more, []);
  expect(out).toContainEqual({ fitting: 'Alder flare straight DN 12', reason: 'needs 260 bar, the catalogue does not say' });
});

test('what is lacking is said in words that fit the demand', () => {
  const bend = { route: [{ kind: 'bend', radius: '150', angle: '90', turn: 'left' }] } as const;
  expect(reasonsOf('Alder DN 12', small({ ...bend, fluidColdest: '-45', fluidHottest: '105' }))).toEqual([
    'Hottest: needs 105 °C, up to 100 °C, 5 °C too hot',
    'Coldest: needs -45 °C, down to -40 °C, 5 °C too cold',
    'Bend radius: route bends to 150 mm, hose at least 180 mm, 30 mm too tight',
  ]);
});

test('without rows of derating the loss at temperature is not known, and said', () => {
  const hose = tree.hoses.find(found => found.hose === 'Alder DN 12')!;
  expect(hoseMargins(tree, hose, small()).find(({ demand }) => demand === 'Loss of pressure at 80 °C')).toMatchObject({
    state: 'unsure',
    verdict: 'not known',
  });
});

test('the surge counts where it is higher, for hose and fittings', () => {
  expect(reasonsOf('Alder DN 12', small({ surge: '260' }))).toEqual([
    'End A: Pressure of Alder cone straight DN 12: needs 260 bar, rated 250 bar, 10 bar too little (4 %)',
    'End B: Pressure of Alder cone straight DN 12: needs 260 bar, rated 250 bar, 10 bar too little (4 %)',
  ]);
  expect(candidates(tree, small({ surge: '250' })).suitable.map(({ hose }) => hose.hose)).toEqual(['Alder DN 12']);
});

test('every missing value is a reason in words, never passed over', () => {
  const without = (heading: string) => readCatalogue(withCell('hoses', 1, heading, null));
  const bend = { route: [{ kind: 'bend', radius: '300', angle: '90', turn: 'left' }] } as const;
  const asked = small({ ...bend, vacuum: '0.5' });
  expect(reasonsOf('Alder DN 12', asked, without('Bend radius (mm)'))).toContain(
    'Bend radius: route bends to 300 mm, the catalogue does not say',
  );
  expect(reasonsOf('Alder DN 12', asked, without('Hottest (°C)'))).toContain('Hottest: needs 80 °C, the catalogue does not say');
  expect(reasonsOf('Alder DN 12', asked, without('Fluids'))).toContain('Fluid: needs mineral oil, the catalogue names none');
  expect(reasonsOf('Alder DN 12', asked)).toContain('Vacuum: needs 0.5 bar, the catalogue does not say');
  expect(reasonsOf('Alder DN 12', small({ formA: '37° flare swivel' }))).toEqual([
    'End A: Pressure of Alder flare straight DN 12: needs 180 bar, the catalogue does not say',
  ]);
  expect(reasonsOf('Birch DN 25', small())).toContainEqual(
    expect.stringMatching(/^End A: no fitting "24° cone L" of 0° has crimp data/),
  );
});

// Alder DN 12 bends to 180 mm: the tightest bend of a route counts, wherever it comes.
test.each([
  [['150'], '150 mm, hose at least 180 mm, 30 mm too tight'],
  [['150', '300'], '150 mm, hose at least 180 mm, 30 mm too tight'],
  [['300', '150'], '150 mm, hose at least 180 mm, 30 mm too tight'],
  [['300', '180'], undefined],
])('a route with bends of %j', (radii, lack) => {
  const route = radii.map(radius => ({ kind: 'bend', radius, angle: '90', turn: 'left' }) as const);
  const reasons = reasonsOf('Alder DN 12', small({ route })) ?? [];
  const bends = reasons.filter(reason => reason.startsWith('Bend radius'));
  expect(bends).toEqual(lack === undefined ? [] : [`Bend radius: route bends to ${lack}`]);
});

test('a hose without a stated bend radius suits a route without bends only', () => {
  const silent = readCatalogue(withCell('hoses', 1, 'Bend radius (mm)', null));
  expect(candidates(silent, small()).suitable.map(({ hose }) => hose.hose)).toEqual(['Alder DN 12']);
});

test('a length or a price that is not known leaves the cost not known, with the reason', () => {
  const bend = { route: [{ kind: 'bend', radius: '300', angle: '90', turn: 'left' }] } as const;
  const [bent] = candidates(tree, small(bend)).suitable;
  expect(costText(bent!.cheapest, small(bend))).toMatch(/^Cost: not known, outside diameter not known/);
  const unpriced = readCatalogue(withCell('fittings', 1, 'Price', null));
  const [found] = candidates(unpriced, small()).suitable;
  expect(costText(found!.cheapest, small())).toMatch(/^Cost: not known, price of Alder cone straight DN 12 is missing/);
});

test('a route too short for the couplings is refused as ASSEMBLY refuses it', () => {
  expect(reasonsOf('Alder DN 12', small({ route: [{ kind: 'straight', length: '180' }] }))).toEqual([
    'too short: 68 mm of free hose, at least 100 mm',
  ]);
  expect(reasonsOf('Alder DN 12', small({ route: [{ kind: 'straight', length: '50' }] }))?.[0]).toMatch(/leave no hose/);
});

test('the weakest part is named with its rating at temperature', () => {
  const demand = small();
  const [found] = candidates(tree, demand).suitable;
  expect(weakestPart(tree, found!.cheapest, demand)).toBe(
    'Working pressure: 250 bar; the weakest part is Alder cone straight DN 12.',
  );
});

test('a row takes its lengths with their unit, and a part’s name is never written as a formula', () => {
  const names = readCatalogue({
    ...treeTables,
    hoses: treeTables.hoses.map(cells => cells.map(cell => (cell === 'Alder DN 12' ? '=Alder DN 12' : cell))),
    crimps: treeTables.crimps.map(cells => cells.map(cell => (cell === 'Alder DN 12' ? '=Alder DN 12' : cell))),
  });
  const demand = small();
  const [found] = candidates(names, demand).suitable;
  const { overall, cutOffA, ...row } = rowContent(names, demand, found!.cheapest);
  expect(row).toMatchObject({ hose: "'=Alder DN 12", fittingA: 'Alder cone straight DN 12', quantity: 4 });
  expect([overall, cutOffA].map(length => `${length!.value} ${length!.unit.symbol}`)).toEqual(['1000 mm', '30 mm']);
});

test('asked in US units the same hose suits, with margins in psi and inches', () => {
  const demand = small({
    units: 'US',
    bore: '1/2',
    pressure: '2500',
    fluidColdest: '14',
    airColdest: '',
    fluidHottest: '176',
    airHottest: '',
    route: [{ kind: 'straight', length: '40' }],
  });
  const [found] = candidates(tree, demand).suitable;
  expect(found!.hose.hose).toBe('Alder DN 12');
  // 275 bar = 3988.5 psi (NIST SP 811: 1 psi = 6894.757 Pa).
  expect(found!.margins.find(({ demand: name }) => name.startsWith('Pressure of the hose'))!.facts).toBe(
    'needs 2500 psi, rated 3988.5 psi',
  );
  expect(found!.margins.find(({ demand: name }) => name === 'Bore')).toMatchObject({
    facts: 'needs 1/2 in, has 1/2 in',
    verdict: '0 in to spare',
  });
  const metric = unitCost(
    tree,
    'Alder DN 12',
    ['Alder cone straight DN 12', 'Alder cone straight DN 12'],
    new Decimal(1016),
    new Decimal(4),
  );
  expect(found!.cheapest.cost!.total.toNumber()).toBe(metric.total.toNumber());
});

test('the narrower of the fluid’s and the hose’s limits counts, and the reason names the fluid where it is that one', () => {
  const at = (fluid: string, fluidHottest: string, fluidColdest = '-10') =>
    small({ bore: '12', pressure: '50', fluid, fluidHottest, fluidColdest, airColdest: fluidColdest, airHottest: '20' });
  const margin = (name: string, demand: ReturnType<typeof demandOf>, hose = 'Alder DN 12') =>
    hoseMargins(
      wet,
      wet.hoses.find(found => found.hose === hose)!,
      demand,
    ).find(({ demand: of }) => of === name);
  expect(margin('Hottest', at('HFC', '90'))).toMatchObject({
    state: 'missed',
    facts: 'needs 90 °C, with HFC up to 65 °C',
    verdict: '25 °C too hot',
  });
  expect(margin('Hottest', at('HFC', '65'))).toMatchObject({ state: 'met', facts: 'needs 65 °C, with HFC up to 65 °C' });
  expect(margin('Hottest', at('HLP 46', '90'))).toMatchObject({ state: 'met', facts: 'needs 90 °C, up to 100 °C' });
  expect(margin('Coldest', at('wg 46', '60', '-30'), 'Alder DN 25')).toMatchObject({
    state: 'met',
    facts: 'needs -30 °C, down to -40 °C',
  });
  expect(reasonsOf('Alder DN 12', at('HFC', '90'), wet)).toEqual(['Hottest: needs 90 °C, with HFC up to 65 °C, 25 °C too hot']);
  // A fluid that no hose is for is named as it came.
  expect(reasonsOf('Willow DN 25', at('HLP 46', '60'), tree)).toContain('Fluid: needs HLP 46, listed mineral oil, not listed');
  expect(candidates(wet, at('HFC', '65')).suitable.map(({ hose }) => hose.hose)).toContain('Alder DN 12');
});

test('a row of Fluids that was left out makes its limits unknown: the hose is ruled out and the row named', () => {
  const bad = treeFluids.map((row, at) => (at === 2 ? row.map((cell, column) => (column === 4 ? 'warm' : cell)) : row));
  const broken = readCatalogue({ ...treeTables, fluids: bad });
  const demand = small({ bore: '12', pressure: '50', fluid: 'HFC', fluidHottest: '50', airHottest: '20' });
  expect(reasonsOf('Alder DN 12', demand, broken)?.join()).toMatch(
    /^Temperature limits of HFC: Fluids row 3: Hottest is "?warm"?/,
  );
});

test('without an end form every coupling with crimp data for the hose may be chosen, and the cheapest pair is', () => {
  const demand = small({ formA: '', formB: '', angleA: '', angleB: '' });
  const hose = tree.hoses.find(found => found.hose === 'Alder DN 12')!;
  const [free, cone] = [demand.ends[0], small({ angleA: '' }).ends[0]].map(end => endOptions(tree, hose, end!, demand).suitable);
  const names = (options: typeof free) => options!.map(({ fitting }) => fitting.fitting);
  expect(names(free)).toEqual(expect.arrayContaining(names(cone)));
  expect(names(free).some(name => /ferrule/i.test(name))).toBe(false);
  const prices = free!.map(({ price }) => price ?? Infinity);
  expect(prices).toEqual([...prices].sort((a, b) => a - b));
});
