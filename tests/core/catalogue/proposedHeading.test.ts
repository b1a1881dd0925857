import { headingHolds, proposedHeading, proposedHeadings } from '../../../src/core/catalogue/proposedHeading';
import { catalogueHeadingWords } from '../../../src/core/catalogue/catalogueHeadingWords';
import { catalogueTables, TABLE_NAMES, type TableName } from '../../../src/core/catalogue/tables/catalogueTables';

/* Plain and short words of the trade, as people head their own columns: common practice. */
test.each<[TableName, string, string]>([
  ['hoses', 'Part No.', 'Hose'],
  ['hoses', 'Hose type', 'Hose'],
  ['hoses', 'Product line', 'Family'],
  ['hoses', 'Spec', 'Standard'],
  ['hoses', 'Dash', 'Size'],
  ['hoses', 'ID (mm)', 'Bore (mm)'],
  ['hoses', 'I.D. [in]', 'Bore (in)'],
  ['hoses', 'Hose bore (mm)', 'Bore (mm)'],
  ['hoses', 'Hose bore', 'Bore'],
  ['hoses', 'OD (in)', 'Outside diameter (in)'],
  ['hoses', 'O/D, mm', 'Outside diameter (mm)'],
  ['hoses', 'WP (psi)', 'Working pressure (psi)'],
  ['hoses', 'Max. working pressure bar', 'Working pressure (bar)'],
  ['hoses', 'Min bend', 'Bend radius'],
  ['hoses', 'Min. bend radius (in)', 'Bend radius (in)'],
  ['hoses', 'Min temp (°F)', 'Coldest (°F)'],
  ['hoses', 'Temp. max (°C)', 'Hottest (°C)'],
  ['hoses', 'Weight (lb/ft)', 'Mass per length (lb/ft)'],
  ['hoses', 'Price per metre', 'Price per length (per m)'],
  ['hoses', 'Price/ft (USD)', 'Price per length (per ft)'],
  ['hoses', 'Bore mm', 'Bore (mm)'],
  ['fittings', 'Coupling', 'Fitting'],
  ['fittings', 'End type', 'End form'],
  ['fittings', 'For hose bore (mm)', 'Bore (mm)'],
  ['fittings', 'Hose ID (in)', 'Bore (in)'],
  ['fittings', 'Cut off length (mm)', 'Cut-off (mm)'],
  ['fittings', 'Weight (kg)', 'Mass (kg)'],
  ['fittings', 'List price', 'Price'],
  ['fittings', 'Pack qty', 'Pack quantity'],
  ['crimps', 'Crimp OD (in)', 'Crimp diameter (in)'],
  ['crimps', 'Tol. (mm)', 'Tolerance (mm)'],
  ['crimps', 'Die set', 'Die'],
  ['crimps', 'Machine setting', 'Dial'],
  ['crimps', 'Sleeve', 'Ferrule'],
  ['crimps', 'Hose insertion (mm)', 'Insertion depth (mm)'],
  ['machines', 'Crimper', 'Machine'],
  ['derating', 'Temp. (°C)', 'Temperature (°C)'],
  ['fluids', 'Max temp (°C)', 'Hottest (°C)'],
])('in %s, %s is taken for %s', (table, heading, expected) =>
  expect([...proposedHeadings(table, [heading]).values()]).toEqual([expected]),
);

test('a burst pressure is no working pressure, and a colour is nothing', () => {
  expect([...proposedHeadings('hoses', ['Burst pressure (psi)', 'Colour', 'Shelf', ''])]).toEqual([]);
});

test('a field with a heading of its own is not proposed again, nor is one twice', () => {
  const headings = ['Hose', 'Bore (mm)', 'ID (in)', 'OD (mm)', 'O.D. (in)', 'Part no'];
  expect([...proposedHeadings('hoses', headings)]).toEqual([['OD (mm)', 'Outside diameter (mm)']]);
});

test('every word belongs to a field of its table', () => {
  for (const table of TABLE_NAMES) {
    expect(Object.keys(catalogueTables[table].fields)).toEqual(expect.arrayContaining(Object.keys(catalogueHeadingWords[table])));
    for (const [key, { heading }] of Object.entries(catalogueTables[table].fields)) {
      expect(proposedHeading(table, heading)?.key).toBe(key);
    }
  }
});

test.each([
  ['Hose', 'text'],
  ['Part no.', 'text'],
  ['Size', 'text'],
  ['ID', undefined],
  ['ID (mm)', 'number'],
  ['Bore', 'number'],
  ['Dial', 'number'],
  ['Shelf', undefined],
])('%s holds %s', (heading, expected) => expect(headingHolds(heading)).toBe(expected));
