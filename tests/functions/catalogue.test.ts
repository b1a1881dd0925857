import { called, col, FakeCellError } from '../host/customFunctions';
import { cellsOf, treeTables, withCell, withRows } from '../core/catalogue/treeCatalogue';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as functions from '../../src/functions/catalogue';

const one = (value: unknown): any[][] => [[value]];
const catalogueOf = (tables = treeTables as Parameters<typeof cellsOf>[0]) =>
  (functions.catalogue as (...cells: any[]) => any[][])(...cellsOf(tables));

let handle: any[][];
beforeAll(() => (handle = catalogueOf()));

describe('CATALOGUE', () => {
  test('gives a handle with units and counts', () => {
    expect(handle).toEqual([[expect.stringMatching(/^CAT-[0-9a-f]{8} \(mm, bar; 4 hoses, 7 fittings, 5 crimps\)$/)]]);
  });

  test('a bad row and both rows of a duplicate are left out, and the handle ends with how many', () => {
    const bad = withCell('hoses', 1, 'Bore (mm)', 'wide');
    expect(String(catalogueOf(bad)[0]![0])).toMatch(/; 3 hoses, 7 fittings, 5 crimps\); 1 row left out$/);
    const twice = withRows('fittings', treeTables.fittings[1]! as any[]);
    expect(String(catalogueOf(twice)[0]![0])).toMatch(/; 4 hoses, 6 fittings, 5 crimps\); 2 rows left out$/);
  });

  test('blank rows behind the data, as null, "" or 0, do not matter', () => {
    const blank = Array(14).fill(null);
    expect(catalogueOf(withRows('hoses', blank, Array(14).fill(''), Array(14).fill(0), blank))).toEqual(handle);
  });

  test('data types and omitted optional tables are taken', () => {
    const hoses = treeTables.hoses.map(row =>
      row.map(cell => (typeof cell === 'number' ? { type: 'Double', basicValue: cell } : cell)),
    );
    expect(catalogueOf({ ...treeTables, hoses: hoses as any })).toEqual(handle);
    const { hoses: h, fittings, crimps } = treeTables;
    expect(catalogueOf({ hoses: h, fittings, crimps })[0]![0]).toMatch(/^CAT-/);
  });

  test.each([
    [
      'a table is missing',
      { ...treeTables, crimps: undefined },
      '#VALUE! crimps is blank: give the table Crimps with its heading row',
    ],
    [
      'a heading is missing',
      withCell('fittings', 0, 'Cut-off (mm)', 'Cut'),
      '#VALUE! Fittings has no heading "Cut-off": add the column Cut-off (mm)',
    ],
    [
      'a unit is missing',
      withCell('hoses', 0, 'Bore (mm)', 'Bore'),
      '#VALUE! Hoses heading "Bore" has no unit: write it like Bore (mm); units are mm, cm, m, in, ft',
    ],
    [
      'a unit is unknown',
      withCell('hoses', 0, 'Bore (mm)', 'Bore (ell)'),
      '#VALUE! Hoses heading "Bore" has the unknown unit "ell": units are mm, cm, m, in, ft',
    ],
    [
      'a heading stands twice',
      withCell('hoses', 0, 'Note', 'bore (in)'),
      '#VALUE! Hoses has the heading "Bore" twice: rename one of the columns',
    ],
    ['a tolerance is missing', withCell('crimps', 0, 'Tolerance (mm)', 'T'), '#VALUE! Crimps has no heading "Tolerance"'],
  ])('%s: #VALUE! for the whole', (_, tables, expected) => {
    const tolerant = withoutLimits(tables as typeof treeTables);
    expect(String(called(() => catalogueOf(tolerant))[0]![0])).toContain(expected);
  });

  test('an error in place of a table is passed on; one inside leaves its row out', () => {
    expect(called(() => catalogueOf({ ...treeTables, hoses: one(new FakeCellError('#REF!')) as any }))).toEqual([
      ['#N/A hoses holds #REF!: correct that cell first'],
    ]);
    const tables = withCell('hoses', 1, 'Bore (mm)', new FakeCellError('#DIV/0!') as any);
    expect(String(catalogueOf(tables)[0]![0])).toMatch(/1 row left out$/);
    expect(called(() => functions.hoseData(catalogueOf(tables), one('Alder DN 12'), one('bore')))).toEqual([
      [
        '#N/A hose "Alder DN 12" was left out of the catalogue: Hoses row 2: Bore is #DIV/0!, expected a number in mm, more than 0',
      ],
    ]);
  });
});

/** Without the two limits, so that Crimp diameter and Tolerance are needed. */
function withoutLimits(tables: typeof treeTables): typeof treeTables {
  const header = tables.crimps?.[0];
  if (!header?.includes('T')) return tables;
  return {
    ...tables,
    crimps: [header.map(cell => (String(cell).startsWith('Smallest') ? 'S' : cell)), ...tables.crimps.slice(1)],
  };
}

describe('HOSEDATA and FITTINGDATA', () => {
  test('find parts without case and outer blanks, fields without case and hyphens', () => {
    expect(
      called(() => functions.hoseData(handle, col(' alder DN 12', 'Birch dn 25 ', null, 'Elm'), one('WORKING-pressure'))),
    ).toEqual([[275], [380], [''], ['#N/A hose "Elm" is not in the catalogue: check its name, or add it to the tables']]);
    for (const field of ['Cut-off', 'cutoff', 'CUT OFF', 'cut-off (mm)']) {
      expect(functions.fittingData(handle, one('Alder flare straight DN 12'), one(field))).toEqual([[-3]]);
    }
  });

  test('an empty field is blank, a zero is zero, an unknown field is an error that lists the fields', () => {
    expect(functions.hoseData(handle, one('Willow DN 25'), one('standard'))).toEqual([['']]);
    expect(functions.fittingData(handle, one('Birch ferrule DN 25'), one('cut-off'))).toEqual([[0]]);
    expect(String(called(() => functions.hoseData(handle, one('Willow DN 25'), one('colour')))[0]![0])).toMatch(
      /^#VALUE! field is "colour": fields of Hoses are Hose, Family, Standard/,
    );
  });

  test('names that JavaScript objects have by birth are ordinary part names, and numbers are names', () => {
    const names = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];
    expect(called(() => functions.hoseData(handle, col(...names), one('bore'))).flat()).toEqual(
      names.map(name => expect.stringMatching(`#N/A hose "${name}" is not in the catalogue`)),
    );
    const rows = [...names, 4711].map(name => [name, 'Alder', null, null, 12.7, 250]);
    const found = catalogueOf(withRows('hoses', ...(rows as any[])));
    expect(functions.hoseData(found, col(...names, 4711, '4711'), one('bore'))).toEqual(Array(6).fill([12.7]));
  });

  test('formula-like text is plain text here', () => {
    const found = catalogueOf(withRows('hoses', ['=HYPERLINK("x")', '+Alder', null, null, 12.7, 250]));
    expect(functions.hoseData(found, one('=hyperlink("x")'), one('family'))).toEqual([['+Alder']]);
  });

  test('a handle that is an error is passed on, one that is none is named, an unknown one is not waited for', () => {
    expect(called(() => functions.hoseData(one(new FakeCellError('#VALUE!', 'why')), one('x'), one('bore')))).toEqual([
      ['#VALUE! why'],
    ]);
    expect(String(called(() => functions.hoseData(one('abc'), one('x'), one('bore')))[0]![0])).toMatch(
      /^#VALUE! catalogue is "abc"/,
    );
    expect(called(() => functions.hoseData(one(null), one('x'), one('bore')))).toEqual([
      ['#VALUE! catalogue is blank: fill it in'],
    ]);
    expect(called(() => functions.hoseData(one('CAT-00000000 (mm, bar; 1 hose)'), one('x'), one('bore')))).toEqual([
      ['#N/A catalogue CAT-00000000 (mm, bar; 1 hose) is not loaded: recalculate the Catalogue cell'],
    ]);
  });

  test('an error value in a row stays in that row', () => {
    expect(called(() => functions.hoseData(handle, col('Alder DN 12', new FakeCellError('#NAME?')), one('bore')))).toEqual([
      [12.7],
      ['#N/A hose holds #NAME?: correct that cell first'],
    ]);
  });
});

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
    expect(setup('Alder DN 12', 'Alder cone straight DN 12', 'Bench 2')).toEqual([['D23', 320, 23.5, 0.15, 26, 'CATALOGUE']]);
    expect(String(setup('Alder DN 12', 'Alder cone straight DN 12', 'Bench 9')[0]![0])).toMatch(
      /^#N\/A machine "Bench 9" is not in the catalogue/,
    );
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

  test('a row that was left out is no reason to take a lesser one', () => {
    const found = catalogueOf(withCell('crimps', 2, 'Dial', 'high'));
    expect(
      called(() => functions.crimpSetup(found, one('Alder DN 12'), one('Alder cone straight DN 12'), null as never))[0]![0],
    ).toBe(
      '#N/A no crimp data for Alder DN 12 with Alder cone straight DN 12: do not assemble (Crimps row 3: Dial is "high", expected a number)',
    );
  });

  test('the same date twice: the machine row is named, the catalogue dial is not taken silently', () => {
    const found = catalogueOf(
      withRows('machines', ['Bench 1', 'D23', 'Alder DN 12', 'Alder cone straight DN 12', 319, null, null, null, null, 45_600]),
    );
    expect(
      called(() => functions.crimpSetup(found, one('Alder DN 12'), one('Alder cone straight DN 12'), one('Bench 1')))[0]![0],
    ).toBe(
      '#N/A machine "Bench 1" has a recorded setting that was left out of the catalogue: Machines row 5: Date is the same as in row 7, expected one row only',
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

  test('sizes are compared by bore within 2 % where one part has no size', () => {
    // 12.9 against 12.7: 1.6 %
    expect(made('Alder DN 12', 'Alder oddment', 'Alder oddment', 1000)).toEqual([
      934,
      250,
      '',
      'insertion depth missing: Alder oddment',
    ]);
  });

  test('too short: free hose below the shortest of the rates (10 cm)', () => {
    expect(made('Alder DN 12', 'Alder cone straight DN 12', 'Alder cone straight DN 12', 212)![3]).toBe('OK');
    expect(made('Alder DN 12', 'Alder cone straight DN 12', 'Alder cone straight DN 12', 211.9)![3]).toBe(
      'too short: 99.9 mm of free hose, at least 100 mm',
    );
  });

  test('an unknown part and cut-offs that leave no hose are errors of the row', () => {
    expect(made('Elm', 'Alder cone straight DN 12', 'Alder cone straight DN 12', 500)![0]).toMatch(/^#N\/A hose "Elm"/);
    expect(made('Alder DN 12', 'Alder cone straight DN 12', 'Alder cone straight DN 12', 60)![0]).toMatch(
      /^#VALUE! cut length would be 0/,
    );
  });
});

describe('FINDHOSE and FINDFITTING', () => {
  const hoses = (...args: unknown[]) =>
    called(() =>
      functions.findHose(
        handle,
        ...(Array.from({ length: 7 }, (_, i) => (args[i] === undefined ? null : one(args[i]))) as [any, any, any, any, any]),
      ),
    );

  test('suitable hoses, cheapest first, with what is left of the pressure at the hottest temperature', () => {
    expect(hoses(25, 120, 350, -30, 70, 'HLP')).toEqual([
      ['Hose', 'Standard', 'Working pressure', 'Bend radius', 'Price', 'Margin of pressure'],
      ['Birch DN 25', 'EN 856 4SH', 380, 340, 31, 260],
    ]);
    // Alder DN 25: 165 × 0.9 (the factor at 80, the next at or above 70) − 120
    expect(hoses(25, 120, 350, -30, 70)).toEqual([
      expect.any(Array),
      ['Alder DN 25', 'EN 853 2SN', 165, 300, 16.5, 28.5],
      ['Birch DN 25', 'EN 856 4SH', 380, 340, 31, 260],
    ]);
  });

  test('every demand can rule a hose out; a vacuum that is not stated does', () => {
    expect(
      hoses(25, 149, 350, -30, 70)
        .slice(1)
        .map(row => row[0]),
    ).toEqual(['Birch DN 25']);
    expect(hoses(25, 10, 150, -30, 70, 'Mineral Oil', -0.8).slice(1)).toEqual([['Willow DN 25', '', 20, 150, '', 10]]);
    expect(String(hoses(25, 10, 150, -30, 70, null, 0.9)[0]![0])).toMatch(
      /^#N\/A no hose of the catalogue suits: of 4, ruled out by: /,
    );
    expect(hoses(25, 10, 150, -30, undefined)).toEqual([['#VALUE! hottest is blank: fill it in']]);
  });

  test('fittings of an end form that have crimp data for the hose', () => {
    const find = (...args: unknown[]) => called(() => functions.findFitting(handle, ...(args.map(one) as [any, any, any])));
    expect(find('Alder DN 12', '24° CONE', null)).toEqual([
      ['Fitting', 'End form', 'Thread', 'Angle', 'Price'],
      ['Alder cone straight DN 12', '24° cone', 'M22x1.5', 0, 4],
      ['Alder cone elbow DN 12', '24° cone', 'M22x1.5', 90, 9],
      ['Alder oddment', '24° cone', '', 45, ''],
    ]);
    expect(find('Alder DN 12', '24° cone l', 90).slice(1)).toEqual([['Alder cone elbow DN 12', '24° cone', 'M22x1.5', 90, 9]]);
    expect(String(find('Alder DN 12', 'split flange', null)[0]![0])).toMatch(
      /^#N\/A no fitting "split flange" has crimp data for Alder DN 12/,
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
});

describe('examples in the documentation', () => {
  const source = readFileSync(join(__dirname, '../../src/functions/catalogue.ts'), 'utf8');
  const examples = [...source.matchAll(/@example =HOSE\.([A-Z]+)\(Catalogue, (.*)\) gives (.+)$/gm)].map(
    ([, id, args, result]) => [id!, args!, result!] as const,
  );
  const byId: Record<string, (...cells: any[]) => any[][]> = {
    HOSEDATA: functions.hoseData,
    FITTINGDATA: functions.fittingData,
    CRIMPSETUP: functions.crimpSetup,
    ASSEMBLY: functions.assembly,
    FINDHOSE: functions.findHose,
    FINDFITTING: functions.findFitting,
    UNITCOST: functions.unitCost,
  };

  test('every look-up has one', () => expect(examples.map(([id]) => id)).toEqual(Object.keys(byId)));

  test.each(examples)('%s(%s) gives %s', (id, args, result) => {
    const cells = (JSON.parse(`[${args}]`) as unknown[]).map(one);
    const words = result.split(/, | and /);
    expect(
      byId[id]!(handle, ...cells)
        .flat()
        .map(String),
    ).toEqual(words);
  });
});
