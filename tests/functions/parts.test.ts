import { called, col, FakeCellError } from '../host/customFunctions';
import * as functions from '../../src/functions/parts';
import { withRows } from '../core/catalogue/treeCatalogue';
import { catalogueOf, one } from './treeHandle';

let handle: any[][];
beforeAll(() => (handle = catalogueOf()));

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

  // A formula holds texts of at most 255 characters, a cell 32,767: Excel's published limits.
  test('a text too long for a name is not found, in a sentence that fits its cell', () => {
    const [[found]] = called(() => functions.hoseData(handle, one('x'.repeat(32_000)), one('bore'))) as [[string]];
    expect(found).toMatch(/^#N\/A hose "x{40}…" is not in the catalogue/);
    const [[field]] = called(() => functions.hoseData(handle, one('Alder DN 12'), one('y'.repeat(32_000)))) as [[string]];
    expect(field).toMatch(/^#VALUE! field is "y{40}…": fields of Hoses are/);
  });

  test('a number that is none is an error of its row', () => {
    expect(called(() => functions.hoseData(handle, col('Alder DN 12', NaN, Infinity), one('bore')))).toEqual([
      [12.7],
      ['#NUM! '],
      ['#NUM! '],
    ]);
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
    // Alder DN 25: 165 × 0.9 (the factor at 80, the next at or above 70) = 148.5; − 120
    expect(hoses(25, 120, 350, -30, 70)).toEqual([
      expect.any(Array),
      ['Alder DN 25', 'EN 853 2SN', 148.5, 300, 16.5, 28.5],
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
    expect(hoses(25, 10, 150, -30, 70, null, 0.9)).toEqual([
      [
        '#N/A no hose of the catalogue suits: Willow DN 25 would suit but for: vacuum below 0.9; ' +
          'of 4 hoses left out by: bore below 25 (1), vacuum below 0.9 (1), bend radius above 150 (3), vacuum not stated (3)',
      ],
    ]);
    expect(hoses(25, 10, 150, -30, undefined)).toEqual([['#VALUE! hottest is blank: fill it in']]);
    expect(hoses(25, "3'", 350, -30, 70)).toEqual([
      [`#VALUE! pressure is "3'": inch and foot marks belong to lengths; enter a pressure without one`],
    ]);
    expect(hoses(25, 10, 350, 70, -30)).toEqual([['#VALUE! hottest is -30, below the coldest, 70: exchange them']]);
    expect(String(hoses(45_000, 10, 350, -30, 70)[0]![0])).toMatch(/^#VALUE! bore is 45000: that looks like a date/);
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
    // Short words of the connection standards: common practice.
    const names = (hose: string, form: string) => {
      const [first, ...rest] = find(hose, form, null);
      return rest.length > 0 ? rest.map(row => row[0]) : String(first![0]).slice(0, 4);
    };
    const light = ['Alder cone straight DN 12', 'Alder cone elbow DN 12', 'Alder oddment'];
    for (const word of ['DKOL', 'dkol', '24° cone light', '24° cone L']) expect(names('Alder DN 12', word)).toEqual(light);
    expect(names('Alder DN 12', 'DKOS')).toBe('#N/A');
    expect(names('Alder DN 25', 'DKOS')).toEqual(['Alder cone straight DN 25']);
    expect(names('Alder DN 12', 'jic')).toEqual(['Alder flare straight DN 12']);
    expect(names('Birch DN 25', 'SAE flange')).toEqual(['Birch flange DN 25']);
    expect(names('Alder DN 12', 'ORFS')).toBe('#N/A');
    expect(names('Alder DN 12', 'BSP')).toBe('#N/A');
    expect(String(find('Alder DN 12', 'split flange', null)[0]![0])).toMatch(
      /^#N\/A no fitting "split flange" has crimp data for Alder DN 12/,
    );
  });
});
