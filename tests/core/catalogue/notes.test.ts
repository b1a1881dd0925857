import { catalogueNotes } from '../../../src/core/catalogue/catalogueNotes';
import { noteSentence } from './noteSentence';
import type { RawCell } from '../../../src/core/catalogue/rawTable';
import { readCatalogue, type RawTables } from '../../../src/core/catalogue/readCatalogue';
import { treeTables, withCell, withRows } from './treeCatalogue';

const sentences = (tables: RawTables) => {
  const catalogue = readCatalogue(tables);
  expect([catalogue.problems, catalogue.leftOutRows]).toEqual([[], 0]);
  return catalogueNotes(catalogue).map(noteSentence);
};

const withMinutes = withRows('rates', ['minutes per test', 4, null]);
/** The tables with outside diameters, in mm. */
const withOutside = (...diameters: RawCell[]): RawTables => ({
  ...withMinutes,
  hoses: treeTables.hoses.map((row, at) => [...row, at === 0 ? 'Outside diameter (mm)' : (diameters[at - 1] ?? null)]),
});
const dies = (length: number): RawTables => ({
  ...withMinutes,
  crimps: treeTables.crimps.map((row, at) => [...row, at === 0 ? 'Crimp length (mm)' : at === 1 ? 40 : null]),
  dies: [['Die', 'Length (mm)'], ...['D23', 'D38', 'D40'].map(die => [die, die === 'D23' ? length : 80])],
});

test('the tables of the workshop have nothing to be noticed but a rate that counts as 0', () => {
  expect(sentences(treeTables)).toEqual(['Rates: there is no rate "minutes per test": it counts as 0']);
  expect(sentences(withMinutes)).toEqual([]);
});

// The limits are those that the catalogue's contract names; each is tried on both of its sides.
test.each<[string, RawTables, string[]]>([
  ['outside diameter above the bore', withOutside(20.6), []],
  [
    'outside diameter not above the bore',
    withOutside(12.7),
    [
      'Hoses row 2: Outside diameter is 12.7, not above the bore 12.7',
      ...[2, 3, 4].map(row => expect.stringContaining(`Crimps row ${row}: Crimp diameter is`) as never),
    ],
  ],
  ['bend radius of 2 outside diameters', withOutside(null, null, null, 75), []],
  [
    'bend radius under 2 outside diameters',
    withOutside(null, null, null, 75.1),
    ['Hoses row 5: Bend radius is 150, under 2 outside diameters (150.2)'],
  ],
  ['1,400 bar', { ...withCell('hoses', 1, 'Working pressure (bar)', 1400), rates: withMinutes.rates! }, []],
  [
    'a hose above 1,400 bar',
    { ...withCell('hoses', 1, 'Working pressure (bar)', 4000), rates: withMinutes.rates! },
    ['Hoses row 2: Working pressure is 4000, above 1400 bar: check the unit'],
  ],
  [
    'a fitting above 1,400 bar',
    { ...withCell('fittings', 1, 'Working pressure (bar)', 1401), rates: withMinutes.rates! },
    ['Fittings row 2: Working pressure is 1401, above 1400 bar: check the unit'],
  ],
  // 6 × 12.7 + 20
  ['a depth of 6 bores and 20 mm', { ...withCell('fittings', 1, 'Insertion depth (mm)', 96.2), rates: withMinutes.rates! }, []],
  [
    'a deeper one',
    { ...withCell('fittings', 1, 'Insertion depth (mm)', 96.3), rates: withMinutes.rates! },
    ['Fittings row 2: Insertion depth is 96.3, deeper than 6 bores and 20 mm (96.2): check the unit'],
  ],
  [
    "a crimp row's depth, by the hose's bore",
    { ...withCell('crimps', 3, 'Insertion depth (mm)', 270), rates: withMinutes.rates! },
    ['Crimps row 4: Insertion depth is 270, deeper than 6 bores and 20 mm (96.2): check the unit'],
  ],
  // 38.4 ÷ 0.8 = 48, 38.4 ÷ 1.5 = 25.6 (not above the bore of 25.4 by much, but above)
  ['a crimp of 0.8 outside diameters', withOutside(null, 48), []],
  [
    'a crimp below 0.8 outside diameters',
    withOutside(null, 48.1),
    ['Crimps row 5: Crimp diameter is 38.4, below 0.8 outside diameters of the hose (48.1)'],
  ],
  ['a crimp of 1.5 outside diameters', withOutside(null, 25.6), []],
  [
    'a crimp above 1.5 outside diameters',
    withOutside(null, 25.5),
    ['Crimps row 5: Crimp diameter is 38.4, above 1.5 outside diameters of the hose (25.5)'],
  ],
  ['a die as long as the crimp', dies(40), []],
  ['a die shorter than the crimp', dies(39), ['Crimps row 2: Crimp length is 40, longer than its die D23 (39)']],
  [
    'a die that is in no table',
    { ...withMinutes, dies: [['Die'], ['D23'], ['D38']] },
    ['Crimps row 6: Die "D40" is not in the table Dies'],
  ],
  [
    'a crimp row of parts in no table',
    {
      ...withRows('crimps', ['Elm', 'Elm end', null, 'D23', 1, 23, 0.1], ['Alder DN 12', 'Elm*', null, 'D23', 1, 23, 0.1]),
      rates: withMinutes.rates!,
    },
    [
      'Crimps row 7: Hose "Elm" is not in the table Hoses',
      'Crimps row 7: Fitting "Elm end" is not in the table Fittings',
      'Crimps row 8: no fitting in the table Fittings begins like "Elm*"',
    ],
  ],
  [
    "a machine's record of parts in no table",
    {
      ...withRows('machines', ['Bench 1', 'D23', 'Elm', 'Alder cone*', 300, null, null, null, null, '2024-03-05']),
      rates: withMinutes.rates!,
    },
    ['Machines row 7: Hose "Elm" is not in the table Hoses'],
  ],
  [
    'derating of a hose in no table',
    { ...withMinutes, derating: [...treeTables.derating!, ['Elm', 80, 0.9]] },
    ['Derating row 5: Hose "Elm" is not in the table Hoses'],
  ],
  [
    'fluids of hoses in no table, and a name that two fluids have',
    {
      ...withMinutes,
      fluids: [
        ['Fluid', 'Also called', 'Hose', 'Hottest (°C)'],
        ['water-glycol', 'HFC', 'Elm*', 70],
        ['glycol', 'hfc', 'Willow DN 25', 60],
      ],
    },
    [
      'Fluids row 2: no hose begins like "Elm*"',
      'Fluids row 2: "hfc" names another fluid than water-glycol, too',
      'Fluids row 3: "hfc" names another fluid than glycol, too',
    ],
  ],
  [
    'a rate that nothing reads',
    { ...treeTables, rates: [...withMinutes.rates!, ['minutes per tset', 6, null], ['Minimum-charge (EUR)', 25, null]] },
    [expect.stringMatching(/^Rates row 9: nothing reads the rate "minutes per tset"; rates are set-up minutes, /) as never],
  ],
  [
    'no scrap fraction',
    { ...treeTables, rates: withMinutes.rates!.filter(row => row[0] !== 'scrap fraction') },
    ['Rates: there is no rate "scrap fraction": it counts as 0'],
  ],
])('%s', (_, tables, expected) => expect(sentences(tables)).toEqual(expected));

test('limits in other units are the same limits', () => {
  const psi = treeTables.hoses.map((row, at) =>
    row.map((cell, column) => (column !== 5 ? cell : at === 0 ? 'Working pressure (psi)' : Number(cell) * 14.5)),
  );
  // 1400 bar ÷ 0.06894757293168361 bar (NIST SP 811, published) = 20305.3 psi
  const over = psi.map((row, at) => row.map((cell, column) => (column === 5 && at === 1 ? 20_306 : cell)));
  const under = psi.map((row, at) => row.map((cell, column) => (column === 5 && at === 1 ? 20_305 : cell)));
  expect(sentences({ ...withMinutes, hoses: over })).toEqual([
    'Hoses row 2: Working pressure is 20306, above 20305.3 psi: check the unit',
  ]);
  expect(sentences({ ...withMinutes, hoses: under })).toEqual([]);
});
