import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { called, FakeCellError } from '../host/customFunctions';
import * as assemblies from '../../src/functions/assembly';
import * as parts from '../../src/functions/parts';
import { treeTables, withCell, withRows } from '../core/catalogue/treeCatalogue';
import { catalogueOf, one } from './treeHandle';

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
    expect(called(() => parts.hoseData(catalogueOf(tables), one('Alder DN 12'), one('bore')))).toEqual([
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

describe('examples in the documentation', () => {
  const folder = join(__dirname, '../../src/functions');
  const source = ['assembly.ts', 'parts.ts'].map(name => readFileSync(join(folder, name), 'utf8')).join('\n');
  const examples = [...source.matchAll(/@example =HOSE\.([A-Z]+)\(Catalogue, (.*)\) gives (.+)$/gm)].map(
    ([, id, args, result]) => [id!, args!, result!] as const,
  );
  const byId: Record<string, (...cells: any[]) => any[][]> = {
    HOSEDATA: parts.hoseData,
    FITTINGDATA: parts.fittingData,
    CRIMPSETUP: assemblies.crimpSetup,
    TRIALDIAL: assemblies.trialDial,
    ASSEMBLY: assemblies.assembly,
    FINDHOSE: parts.findHose,
    FINDFITTING: parts.findFitting,
    UNITCOST: assemblies.unitCost,
  };

  test('every look-up has one', () => expect(examples.map(([id]) => id)).toEqual(expect.arrayContaining(Object.keys(byId))));

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
