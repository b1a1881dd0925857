import { catalogueDiff } from '../../../src/core/catalogue/catalogueDiff';
import { readCatalogue, type RawTables } from '../../../src/core/catalogue/readCatalogue';
import { removedParts } from '../../../src/core/catalogue/removedParts';
import { nameText } from '../../../src/core/catalogue/nameText';
import { sheetText } from '../../../src/core/catalogue/sheetText';
import { treeTables, withCell, withRows } from './treeCatalogue';

const before = readCatalogue(treeTables);

test('equal catalogues differ in nothing, whatever the case of names', () => {
  expect(catalogueDiff(before, readCatalogue(treeTables))).toEqual([]);
});

test('added, changed and removed rows are told by name, changes by field', () => {
  const added = withRows('hoses', ['Cedar DN 6', 'Cedar', null, null, 6.3, 200]);
  const after = readCatalogue({
    ...withCell('fittings', 1, 'Price', 4.5),
    hoses: added.hoses,
    crimps: treeTables.crimps.slice(0, -1),
  });
  expect(catalogueDiff(before, after)).toEqual([
    { kind: 'added', table: 'hoses', name: 'Cedar DN 6' },
    {
      kind: 'changed',
      table: 'fittings',
      name: 'Alder cone straight DN 12',
      fields: [{ heading: 'Price', before: 4, after: 4.5, percent: 12.5 }],
    },
    { kind: 'removed', table: 'crimps', name: 'Birch DN 25 + Birch flange DN 25' },
  ]);
});

test('a price falls or rises by its per cent; one that was blank or 0 has none', () => {
  const price = (before: number | null, after: number) => {
    const [old, now] = [before, after].map(value => readCatalogue(withCell('hoses', 1, 'Price per length (per m)', value)));
    const [change] = catalogueDiff(old!, now!);
    return change?.kind === 'changed' ? change.fields : change;
  };
  const heading = 'Price per length';
  expect(price(8, 7)).toEqual([{ heading, before: 8, after: 7, percent: -12.5 }]);
  // 8.2 ÷ 8.1 − 1 = 1.2345… %
  expect(price(8.1, 8.2)).toEqual([{ heading, before: 8.1, after: 8.2, percent: 1.2 }]);
  expect(price(null, 8)).toEqual([{ heading, before: undefined, after: 8 }]);
  expect(price(0, 8)).toEqual([{ heading, before: 0, after: 8 }]);
});

describe('catalogues in other units', () => {
  /** A column in another unit, its values converted by a factor. */
  const turned = (tables: RawTables, table: 'hoses' | 'fittings', from: string, to: string, factor: number): RawTables => {
    const column = tables[table]![0]!.indexOf(from);
    const rows = tables[table]!.map((row, at) =>
      row.map((cell, c) => (c !== column ? cell : at === 0 ? to : typeof cell === 'number' ? cell * factor : cell)),
    );
    return { ...tables, [table]: rows };
  };
  // NIST SP 811, published: psi 6894.757293168361 Pa, inch 25.4 mm exactly.
  const BAR_IN_PSI = 100_000 / 6894.757293168361;
  const inPsi = turned(treeTables, 'hoses', 'Working pressure (bar)', 'Working pressure (psi)', BAR_IN_PSI);
  const inInches = turned(inPsi, 'fittings', 'Cut-off (mm)', 'Cut-off (in)', 1 / 25.4);

  test('psi and bar, inches and millimetres are the same where they say the same', () => {
    expect(readCatalogue(inInches).units.pressure.symbol).toBe('psi');
    expect(catalogueDiff(before, readCatalogue(inInches))).toEqual([]);
    expect(catalogueDiff(readCatalogue(inInches), before)).toEqual([]);
  });

  test('what differs is shown in the units of the new one', () => {
    const rows = inPsi.hoses!.map((row, at) => row.map((cell, c) => (at === 1 && c === 5 ? 4000 : cell)));
    expect(catalogueDiff(before, readCatalogue({ ...inPsi, hoses: rows }))).toEqual([
      {
        kind: 'changed',
        table: 'hoses',
        name: 'Alder DN 12',
        fields: [{ heading: 'Working pressure', before: expect.closeTo(275 * BAR_IN_PSI, 6), after: 4000 }],
      },
    ]);
  });
});

test('parts in use that a new catalogue removes or leaves out are named, with how often they are used', () => {
  const without = (name: string) => treeTables.fittings.filter(row => row[0] !== name);
  const after = readCatalogue({
    ...treeTables,
    hoses: withCell('hoses', 1, 'Bore (mm)', 'wide').hoses!,
    fittings: without('Birch ferrule DN 25').filter(row => row[0] !== 'Alder oddment'),
  });
  const inUse = ['alder dn 12 ', 'Alder DN 12', 'Alder DN 25', 'Alder cone straight DN 12', 'no part'];
  expect(removedParts(before, after, inUse)).toEqual([
    { table: 'hoses', name: 'Alder DN 12', uses: 2 },
    // A crimp row of the new catalogue still names it.
    { table: 'fittings', name: 'Birch ferrule DN 25', uses: 1 },
  ]);
  expect(removedParts(before, before, inUse)).toEqual([]);
});

test.each([
  ['=1+1', "'=1+1"],
  ['@SUM(A1)', "'@SUM(A1)"],
  ['+Alder', "'+Alder"],
  [' -cmd', "' -cmd"],
  ['\t=1', "'\t=1"],
  ['-12.5', '-12.5'],
  ['+3/8', '+3/8'],
  ['Alder = best', 'Alder = best'],
])('%j is written to a sheet as %j', (text, expected) => expect(sheetText(text)).toBe(expected));

test.each([
  ['1E5', "'1E5"],
  ['1.500', "'1.500"],
  ['0012', "'0012"],
  ['3/8', "'3/8"],
  ['-12', "'-12"],
  ['=1', "'=1"],
  ['Alder DN 12', 'Alder DN 12'],
  ['E', 'E'],
])('a part called %j is written to a sheet as %j', (name, expected) => expect(nameText(name)).toBe(expected));
