import type { RawCell } from '../../src/core/catalogue/rawTable';
import { called, col } from '../host/customFunctions';
import * as functions from '../../src/functions/assembly';
import { treeTables, withCell, withRows } from '../core/catalogue/treeCatalogue';
import { catalogueOf, one } from './treeHandle';

let handle: any[][];
beforeAll(() => (handle = catalogueOf()));

describe('CRIMPSETUP', () => {
  const setup = (...args: unknown[]) =>
    called(() => functions.crimpSetup(handle, ...(args.map(arg => (Array.isArray(arg) ? arg : one(arg))) as [any, any, any])));

  test('an exact part wins over a pattern, the longer pattern over the shorter; limits give diameter and tolerance', () => {
    expect(
      setup(
        one('ALDER DN 12'),
        col('Alder cone elbow DN 12', 'Alder cone straight DN 12', 'Alder flare straight DN 12', null),
        null,
      ),
    ).toEqual([
      ['D23', 325, 23.6, 0.15, 27, 'CATALOGUE'],
      ['D23', 320, 23.5, 0.15, 26, 'CATALOGUE'],
      ['D23', 310, 23.4, 0.15, 26, 'CATALOGUE'],
      ['D23', 310, 23.4, 0.15, 26, 'CATALOGUE'].map(() => expect.stringMatching(/^#VALUE! fitting is blank/)),
    ]);
  });

  test("a machine's own newest dial for that die wins", () => {
    expect(setup('Alder DN 12', 'Alder cone straight DN 12', 'bench 1')).toEqual([['D23', 318, 23.5, 0.15, 26, 'MACHINE']]);
    expect(setup('Alder DN 12', 'Alder cone straight DN 12', 'Bench 2')).toEqual([['D23', '', 23.5, 0.15, 26, 'NO DIAL']]);
    expect(String(setup('Alder DN 12', 'Alder cone straight DN 12', 'Bench 9')[0]![0])).toMatch(
      /^#N\/A machine "Bench 9" is not in the catalogue/,
    );
  });

  test('a dial recorded for a pattern of fittings counts where the fitting has none of its own for that die', () => {
    const recorded = (fitting: string, dial: number, date: string) => {
      return ['Bench 2', 'D23', 'Alder DN 12', fitting, dial, null, null, null, null, date];
    };
    const found = catalogueOf(
      withRows(
        'machines',
        recorded('Alder*', 301, '2024-03-05'),
        recorded('alder cone*', 307, '2024-03-05'),
        recorded('Alder cone*', 309, '2024-03-06'),
        recorded('Alder cone elbow DN 12', 311, '2023-01-09'),
      ),
    );
    const names = ['Alder cone straight DN 12', 'Alder cone elbow DN 12', 'Alder flare straight DN 12'];
    const answers = functions.crimpSetup(found, one('Alder DN 12'), col(...names), one('Bench 2'));
    expect(answers.map(row => [row[1], row[5]])).toEqual([
      [309, 'MACHINE'],
      [311, 'MACHINE'],
      [301, 'MACHINE'],
    ]);
  });

  test('no row for the pair: do not assemble', () => {
    expect(setup('Willow DN 25', 'Birch flange DN 25', null)).toEqual([
      Array(6).fill('#N/A no crimp data for Willow DN 25 with Birch flange DN 25: do not assemble'),
    ]);
    expect(String(setup('Alder DN 12', 'Elm', null)[0]![0])).toBe(
      '#N/A no crimp data for Alder DN 12 with Elm: do not assemble (fitting Elm is not in the catalogue)',
    );
  });

  test('a pattern does not reach fittings that do not go into the hose', () => {
    expect(String(setup('Alder DN 12', 'Alder cone straight DN 25', null)[0]![0])).toMatch(/do not assemble$/);
  });

  test('a pattern that names the own family stands for it alone; one that names another family only is taken at its word', () => {
    const alderwood = ['Alderwood end', 'Alderwood', '24° cone', null, null, 0, 'DN 12', 12.7, 30, 26, 250, 0.1, 4];
    const birch = ['Birch cone straight DN 12', 'Birch', '24° cone', null, null, 0, 'DN 12', 12.7, 31, 25, 250, 0.1, 4];
    const large = ['Birch cone straight DN 16', 'Birch', '24° cone', null, null, 0, 'DN 16', 15.9, 31, 25, 250, 0.1, 4];
    const found = catalogueOf({
      ...withRows('fittings', alderwood, birch, large),
      crimps: [...treeTables.crimps, ['Alder DN 12', 'Birch*', null, 'D24', 402, 24.1, 0.15, null, null, null]],
    });
    const names = col('Alderwood end', 'Birch cone straight DN 12', 'Birch cone straight DN 16');
    expect(called(() => functions.crimpSetup(found, one('Alder DN 12'), names, null as never))).toEqual([
      Array(6).fill('#N/A no crimp data for Alder DN 12 with Alderwood end: do not assemble'),
      ['D24', 402, 24.1, 0.15, 25, 'CATALOGUE'],
      Array(6).fill('#N/A no crimp data for Alder DN 12 with Birch cone straight DN 16: do not assemble'),
    ]);
    const part = one('Birch cone straight DN 12');
    expect(functions.assembly(found, one('Alder DN 12'), part, part, one(900))[0]![3]).toBe(
      'families differ: Alder DN 12 (Alder), Birch cone straight DN 12 (Birch)',
    );
  });

  test('an exact row counts though its parts stand in no other table, but not for a part that was left out', () => {
    const row = ['Elm DN 12', 'Elm end', null, 'D23', 333, 23.3, 0.15, null, null, 24];
    const found = catalogueOf(withRows('crimps', row));
    expect(functions.crimpSetup(found, one('elm DN 12'), one('Elm END'), null as never)).toEqual([
      ['D23', 333, 23.3, 0.15, 24, 'CATALOGUE'],
    ]);
    const bad = catalogueOf({
      ...withRows('hoses', ['Elm DN 12', 'Elm', null, null, 'wide', 250]),
      crimps: [...treeTables.crimps, row],
    });
    expect(called(() => functions.crimpSetup(bad, one('Elm DN 12'), one('Elm end'), null as never))[0]![0]).toBe(
      '#N/A no crimp data for Elm DN 12 with Elm end: do not assemble (Hoses row 6: Bore is "wide", expected a number in mm, more than 0)',
    );
  });

  test('a pattern does not reach a ferrule, which is no end of a hose by itself', () => {
    const found = catalogueOf(
      withRows('fittings', ['Alder ferrule DN 12', 'Alder', 'Ferrule', null, null, null, 'DN 12', 12.7, 0, null, null, 0.05, 1]),
    );
    expect(called(() => functions.crimpSetup(found, one('Alder DN 12'), one('Alder ferrule DN 12'), null as never))[0]![0]).toBe(
      '#N/A no crimp data for Alder DN 12 with Alder ferrule DN 12: do not assemble',
    );
  });

  test('one-sided limits: a diameter between them without a tolerance of its own gives their middle and half their distance', () => {
    const limits = [23.5, null, 23.5, 23.8, 26];
    const found = catalogueOf(withRows('crimps', ['Alder DN 12', 'Alder oddment', null, 'D23', 330, ...limits]));
    expect(called(() => functions.crimpSetup(found, one('Alder DN 12'), one('Alder oddment'), null as never))).toEqual([
      ['D23', 330, 23.65, 0.15, 26, 'CATALOGUE'],
    ]);
    const outside = catalogueOf(
      withRows('crimps', ['Alder DN 12', 'Alder oddment', null, 'D23', 330, 23.4, null, 23.5, 23.8, 26]),
    );
    expect(called(() => functions.crimpSetup(outside, one('Alder DN 12'), one('Alder oddment'), null as never))[0]![0]).toMatch(
      /Crimp diameter is 23.4, expected 23.65, as the two limits give it\)$/,
    );
  });

  test('a row that was left out is no reason to take a lesser one', () => {
    const found = catalogueOf(withCell('crimps', 2, 'Dial', 'high'));
    expect(
      called(() => functions.crimpSetup(found, one('Alder DN 12'), one('Alder cone straight DN 12'), null as never))[0]![0],
    ).toBe(
      '#N/A no crimp data for Alder DN 12 with Alder cone straight DN 12: do not assemble (Crimps row 3: Dial is "high", expected a number)',
    );
  });
});

describe('ASSEMBLY', () => {
  const made = (...args: unknown[]) => called(() => functions.assembly(handle, ...(args.map(one) as [any, any, any, any])))[0];

  test('gives cut length, rating of the weakest part, mass and OK', () => {
    // 1200 − 30 − 45.5; min(275, 250, 250); 0.5 kg/m × 1.1245 m + 0.1 + 0.2
    expect(made('Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12', 1200)).toEqual([
      1124.5,
      250,
      0.86225,
      'OK',
    ]);
  });

  test("the crimp row's ferrule is weighed, too", () => {
    // 2 kg/m × 0.88 m + 2 × (0.9 + 0.25)
    expect(made('Birch DN 25', 'Birch flange DN 25', 'Birch flange DN 25', 1000)).toEqual([880, 380, 4.06, 'OK']);
  });

  test('a ferrule that was left out is named, instead of an assembly without it', () => {
    const found = catalogueOf(withCell('fittings', 6, 'Mass (kg)', 'light'));
    const args = [one('Birch DN 25'), one('Birch flange DN 25'), one('Birch flange DN 25'), one(1000)] as const;
    const sentence =
      '#N/A fitting "birch FERRULE dn 25" was left out of the catalogue: Fittings row 7: Mass is "light", expected a number in kg, not less than 0';
    expect(called(() => functions.assembly(found, ...args))).toEqual([Array(4).fill(sentence)]);
    expect(called(() => functions.unitCost(found, ...args, one(10)))).toEqual([Array(4).fill(sentence)]);
  });

  test('a missing rating is named and leaves the working pressure blank', () => {
    expect(made('Alder DN 12', 'Alder flare straight DN 12', 'Alder cone straight DN 12', 500)).toEqual([
      473,
      '',
      0.4865,
      'rating missing: Alder flare straight DN 12',
    ]);
  });

  test('families, sizes and crimp data that do not fit are named', () => {
    const [, , , wrong] = made('Alder DN 12', 'Birch flange DN 25', 'Alder cone straight DN 12', 1000)!;
    expect(wrong).toBe(
      'families differ: Alder DN 12 (Alder), Birch flange DN 25 (Birch); sizes differ: Alder DN 12 (DN 12), Birch flange DN 25 (DN 25); ' +
        'no crimp data for Alder DN 12 with Birch flange DN 25: do not assemble',
    );
  });

  test('the gravest fault comes first, whichever end it is at', () => {
    const [, , , wrong] = made('Alder DN 12', 'Alder flare straight DN 12', 'Birch flange DN 25', 1000)!;
    expect(String(wrong).replace(/: [^;]*/g, '')).toBe(
      'families differ; sizes differ; no crimp data for Alder DN 12 with Birch flange DN 25; rating missing',
    );
  });

  test('sizes are compared by bore within 2 %', () => {
    // 12.9 against 12.7: 1.6 %
    expect(made('Alder DN 12', 'Alder oddment', 'Alder oddment', 1000)).toEqual([
      934,
      250,
      '',
      'insertion depth missing: Alder oddment',
    ]);
  });

  test.each([
    ['another size of the same bore is that bore', 'DN 16', 'DN 15', 15.9, 'OK'],
    ['the same size of another bore is another bore', 'DN 16', 'DN 16', 25.4, 'sizes differ'],
    ['a bore within 2 %', 'DN 16', '-10', 15.6, 'OK'],
    ['the same number counted in dashes and in DN', 'DN 16', 'dash 16', 25.4, 'sizes differ'],
  ])('the bore decides, Size does not: %s', (_, hoseSize, fittingSize, fittingBore, expected) => {
    const hose = ['Alder hose', 'Alder', null, hoseSize, 15.9, 130, 200];
    const fitting = ['Alder end', 'Alder', '24° cone', null, 'L', 0, fittingSize, fittingBore, 30, 26, 160, 0.1, 4];
    const tables = withRows('crimps', ['Alder hose', 'Alder end', null, 'D27', 300, 28, 0.15, null, null, null]);
    const found = catalogueOf({
      ...tables,
      hoses: [...tables.hoses!, hose],
      fittings: [...tables.fittings!, fitting],
    });
    const [row] = functions.assembly(found, one('Alder hose'), one('Alder end'), one('Alder end'), one(900));
    expect(String(row![3]).split(':')[0]).toBe(expected);
  });

  test('an inch mark is refused by a catalogue in mm, and feet are inches to one in inches', () => {
    expect(made('Alder DN 12', 'Alder cone straight DN 12', 'Alder cone straight DN 12', '40"')![0]).toBe(
      '#VALUE! overall length is "40"": that is in inches, but this call is in mm; use one unit for all lengths',
    );
    const inches = treeTables.fittings.map((row, at) =>
      row.map((cell, column) => (column !== 8 ? cell : at === 0 ? 'Cut-off (in)' : Number(cell) / 25.4)),
    );
    const found = catalogueOf({ ...treeTables, fittings: inches });
    const part = one('Alder cone straight DN 12');
    // 4 ft 3 1/2 in less 2 × 30 mm
    expect(functions.assembly(found, one('Alder DN 12'), part, part, one(`4' 3 1/2"`))[0]![0]).toBeCloseTo(51.5 - 60 / 25.4, 9);
  });

  test('too short: free hose below the shortest of the rates (10 cm)', () => {
    expect(made('Alder DN 12', 'Alder cone straight DN 12', 'Alder cone straight DN 12', 212)![3]).toBe('OK');
    expect(made('Alder DN 12', 'Alder cone straight DN 12', 'Alder cone straight DN 12', 211.9)![3]).toBe(
      'too short: 99.9 mm of free hose, at least 100 mm',
    );
  });

  test('without a shortest free hose in the rates, the couplings still must not meet in the hose', () => {
    const found = catalogueOf({ ...treeTables, rates: treeTables.rates.filter(row => !String(row[0]).startsWith('shortest')) });
    const part = one('Alder cone straight DN 12');
    // 2 × 26 mm go into the couplings, 2 × 30 mm are cut off
    expect(functions.assembly(found, one('Alder DN 12'), part, part, col(112, 111.5)).map(row => row[3])).toEqual([
      'OK',
      'too short: -0.5 mm of free hose, at least 0 mm',
    ]);
  });

  test('a date for a length is told apart where it cannot be one: 45 m are a long hose in mm, 45,000 in are not', () => {
    const lengths = (unit: string) =>
      treeTables.fittings.map((row, at) => row.map((cell, column) => (at === 0 && column === 8 ? `Cut-off (${unit})` : cell)));
    const cut = (unit: string) => {
      const part = one('Alder cone straight DN 12');
      const found = catalogueOf({ ...treeTables, fittings: lengths(unit) });
      return called(() => functions.assembly(found, one('Alder DN 12'), part, part, one(45_000)))[0]![0];
    };
    expect(cut('mm')).toBe(44_940);
    expect(cut('in')).toMatch(/^#VALUE! overall length is 45000: that looks like a date/);
  });

  test('an unknown part and cut-offs that leave no hose are errors of the row', () => {
    expect(made('Elm', 'Alder cone straight DN 12', 'Alder cone straight DN 12', 500)![0]).toMatch(/^#N\/A hose "Elm"/);
    expect(made('Alder DN 12', 'Alder cone straight DN 12', 'Alder cone straight DN 12', 60)![0]).toMatch(
      /^#VALUE! cut length would be 0: too short, the cut-offs leave no hose/,
    );
  });
});

describe('UNITCOST', () => {
  test('hose with scrap, fittings, labour with its share of the set-up, total', () => {
    const result = functions.unitCost(
      handle,
      one('Alder DN 12'),
      one('Alder cone straight DN 12'),
      one('Alder cone elbow DN 12'),
      one(1035.5),
      col(1, 10, 2.5, 0),
    );
    // 0.96 m × 8 ÷ 0.96; 4 + 9; (30 ÷ n + 2 + 1.5 × 2) × 60 ÷ 60
    expect(called(() => result)).toEqual([
      [8, 13, 35, 56],
      [8, 13, 8, 29],
      Array(4).fill('#VALUE! quantity is 2.5: enter a whole number of assemblies'),
      Array(4).fill('#VALUE! quantity is blank or zero: fill it in'),
    ]);
  });

  test('ferrules that the crimp row names are paid for; a missing price or rate is named', () => {
    const cost = (tables: any, hose: string, fitting: string) =>
      called(() => functions.unitCost(catalogueOf(tables), one(hose), one(fitting), one(fitting), one(1000), one(1)))[0]!;
    expect(cost(treeTables, 'Birch DN 25', 'Birch flange DN 25')[1]).toBe(60);
    expect(cost(treeTables, 'Alder DN 12', 'Alder oddment')[0]).toBe(
      '#N/A price of Alder oddment is missing: enter it in the catalogue',
    );
    expect(cost(withCell('rates', 1, 'Rate', 'wages'), 'Birch DN 25', 'Birch flange DN 25')[0]).toBe(
      '#N/A rate "labour per hour" is missing: add it to the table Rates (0 where there is none)',
    );
  });

  const part = 'Alder cone straight DN 12';
  const costOf = (tables: Parameters<typeof catalogueOf>[0], overall: unknown, quantity: unknown, guard: unknown, end = part) =>
    called(() =>
      functions.unitCost(
        catalogueOf(tables),
        one('Alder DN 12'),
        one(end),
        one(end),
        one(overall),
        Array.isArray(quantity) ? quantity : one(quantity),
        Array.isArray(guard) ? guard : one(guard),
      ),
    );

  test('minutes per test are worked, too', () => {
    // (30 ÷ 10 + 2 + 1.5 × 2 + 6) × 60 ÷ 60 = 14, against 8 without
    const tested = withRows('rates', ['minutes per test', 6, null]);
    expect(costOf(tested, 1020, 10, null)[0]!.slice(2)).toEqual([14, 30]);
    expect(costOf(treeTables, 1020, 10, null)[0]!.slice(2)).toEqual([8, 24]);
  });

  test('the minimum charge is that of a quote, never of a cost', () => {
    const charged = withRows('rates', ['minimum charge', 500, null]);
    expect(costOf(charged, 1020, 10, null)).toEqual(costOf(treeTables, 1020, 10, null));
  });

  const guards = [
    ['Guard', 'Size', 'Inside diameter (mm)', 'Price per length (per m)'],
    ['coil', 'DN 12', 22, 4],
    ['coil', 'dn 25', 40, 7],
    ['sleeve', null, 30, 2],
    ['tube', 'DN 25', 40, null],
  ];

  test('a guard is paid for by the cut length, with its share of scrap: the row of its name, by size where there are several', () => {
    const guarded = { ...treeTables, guards };
    // 0.96 m × (8 + 4) ÷ 0.96; 0.96 × (8 + 2) ÷ 0.96
    expect(costOf(guarded, 1020, one(10), col('COIL', 'sleeve', null)).map(row => [row[0], row[3]])).toEqual([
      [12, 28],
      [10, 26],
      [8, 24],
    ]);
    expect(costOf(guarded, 1020, 10, 'net')[0]![0]).toBe(
      '#N/A guard "net" is not in the catalogue: check its name, or add it to the table Guards',
    );
    expect(costOf(guarded, 1020, 10, 'tube')[0]![0]).toBe('#N/A price of tube is missing: enter it in the catalogue');
    const other = guards.map(row => row.map(cell => (cell === 'DN 12' ? 'DN 16' : cell)));
    expect(costOf({ ...treeTables, guards: other }, 1020, 10, 'coil')[0]![0]).toBe(
      '#N/A guard "coil" has no size DN 12, that of Alder DN 12: add that size to the table Guards, or choose another guard',
    );
    const twice = [...guards, ['sleeve', null, 32, 3]];
    expect(costOf({ ...treeTables, guards: twice }, 1020, 10, 'sleeve')[0]![0]).toBe(
      '#N/A guard "sleeve" was left out of the catalogue: Guards row 4: Guard is the same as in row 6, expected one row only',
    );
  });

  // DN 20 is another name of DN 19, 32 of 31 (DESIGN: sizes match when the bores agree; the text in Size decides nothing).
  test.each<[string, RawCell[], RawCell[][], number | string]>([
    [
      'another text for the same size',
      ['DN 12', 12.7, 22],
      [
        ['1/2', 22, 4],
        ['DN 25', 40, 7],
      ],
      12,
    ],
    [
      'DN 20 for a hose DN 19',
      ['DN 19', 12.7, 22],
      [
        ['DN 20', 22, 4],
        ['DN 25', 40, 7],
      ],
      12,
    ],
    [
      '−8 of two bores does not say which',
      ['-8', 12.7, 22],
      [
        ['-8', 22, 4],
        ['DN 25', 40, 7],
      ],
      'has no size -8',
    ],
    [
      'one without a size goes over',
      ['DN 12', 12.7, 22],
      [
        [null, 30, 2],
        ['DN 25', 40, 4],
      ],
      10,
    ],
    [
      'one without a size is too small',
      ['DN 12', 12.7, 31],
      [
        [null, 30, 2],
        ['DN 25', 40, 4],
      ],
      'has no size DN 12',
    ],
    [
      'one without a size may be too small',
      ['DN 12', 12.7, null],
      [
        [null, 30, 2],
        ['DN 25', 40, 4],
      ],
      'has no size DN 12',
    ],
    [
      'two rows of one bore: by what goes over',
      ['DN 12', 12.7, 22],
      [
        ['DN 12', 20, 1],
        ['1/2', 25, 4],
      ],
      12,
    ],
  ])('a guard in several sizes goes by the bore: %s', (_, [size, bore, outside], rows, hoseCost) => {
    const [head, first, ...rest] = treeTables.hoses;
    const hoses = [
      [...head!, 'Outside diameter (mm)'],
      [...first!.map((cell, i) => (i === 3 ? size! : i === 4 ? bore! : cell)), outside!],
      ...rest.map(row => [...row, 40]),
    ];
    // A fitting of size 1/2 has the bore of the hose; one of −8 has another bore.
    const parts = [
      ['half inch', 'Alder', '24° cone', null, null, null, '1/2', 12.6, 30, null, null, null, null],
      ['dash eight', 'Alder', '24° cone', null, null, null, '-8', 10.3, 30, null, null, null, null],
    ];
    const guarded = {
      ...withRows('fittings', ...parts),
      hoses,
      guards: [guards[0]!, ...rows.map(row => ['coil', ...row] as RawCell[])],
    };
    const given = costOf(guarded, 1020, 10, 'coil')[0]![0];
    if (typeof hoseCost === 'number') expect(given).toBe(hoseCost);
    else expect(given).toContain(hoseCost);
  });

  test('what must not be made has no cost, with the sentence of ASSEMBLY; a missing rating is no reason', () => {
    for (const [overall, end] of [
      [200, part],
      [900, 'Birch flange DN 25'],
      [900, 'Alder cone straight DN 25'],
    ] as const) {
      const [said] = functions.assembly(handle, one('Alder DN 12'), one(end), one(end), one(overall));
      expect(costOf(treeTables, overall, 10, null, end)).toEqual([Array(4).fill(`#N/A ${said![3]}`)]);
    }
    // 50 − 2 × 30 leaves no hose at all: as much too short as any other.
    expect(costOf(treeTables, 50, 10, null)[0]![3]).toMatch(/^#N\/A too short: -\d+(\.\d+)? mm of free hose, at least 100 mm$/);
    expect(costOf(treeTables, 900, 10, null, 'Alder flare straight DN 12')[0]![1]).toBe(10);
  });

  test('a shortest free hose in diameters: the longer of the two counts', () => {
    const tables = (diameters: number, outside: number | null) => ({
      ...withRows('rates', ['shortest free hose in diameters', diameters, null]),
      hoses: treeTables.hoses.map((row, at) => [...row, at === 0 ? 'Outside diameter (mm)' : outside]),
    });
    const verdict = (found: any[][], overall: number) =>
      functions.assembly(found, one('Alder DN 12'), one(part), one(part), one(overall))[0]![3];
    // 10 cm of the table against 6 × 20 mm; both ends take 30 of cut-off and 26 of depth
    const longer = catalogueOf(tables(6, 20));
    expect([verdict(longer, 232), verdict(longer, 231)]).toEqual(['OK', 'too short: 119 mm of free hose, at least 120 mm']);
    const shorter = catalogueOf(tables(4, 20));
    expect([verdict(shorter, 212), verdict(shorter, 211)]).toEqual(['OK', 'too short: 99 mm of free hose, at least 100 mm']);
    expect(verdict(catalogueOf(tables(4, null)), 900)).toBe('outside diameter missing: Alder DN 12');
  });
});
