import { catalogueDiff } from '../../../src/core/catalogue/catalogueDiff';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
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
      fields: [{ heading: 'Price', before: 4, after: 4.5 }],
    },
    { kind: 'removed', table: 'crimps', name: 'Birch DN 25 + Birch flange DN 25' },
  ]);
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
