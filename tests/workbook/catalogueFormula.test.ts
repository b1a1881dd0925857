import { callsCatalogue, catalogueReferences, withTables } from '../../src/workbook/catalogueFormula';

const range = (sheet: string, address: string) => ({ kind: 'range', sheet, address });

test.each([
  [
    '=HOSE.CATALOGUE(Hoses!A1:S60, Fittings!$A$1:$Q$120,Crimps!A:N)',
    [range('Hoses', 'A1:S60'), range('Fittings', 'A1:Q120'), range('Crimps', 'A:N')],
  ],
  [
    "=HOSE.CATALOGUE('Bob''s, hoses'!A1:B2, A1:B9, C1)",
    [range("Bob's, hoses", 'A1:B2'), range('Data', 'A1:B9'), range('Data', 'C1')],
  ],
  ['=HOSE.CATALOGUE(HoseTable, Fit[#All], Crimps[], , Rates!A1:C20)', undefined],
  [
    '=HOSE.CATALOGUE(HoseTable,Fit[#All],Cr[#Data],,Rates!A1:C20)',
    [
      { kind: 'name', name: 'HoseTable' },
      { kind: 'table', name: 'Fit', part: 'all' },
      { kind: 'table', name: 'Cr', part: 'data' },
      null,
      range('Rates', 'A1:C20'),
    ],
  ],
  ['=IF(B1=")", "x", hose.catalogue(H!A1:B2,F!A1:B2,C!A1:B2))', [range('H', 'A1:B2'), range('F', 'A1:B2'), range('C', 'A1:B2')]],
  ['=_xldudf_HOSE_CATALOGUE(H!A1:B2,F!A1:B2,C!A1:B2)', [range('H', 'A1:B2'), range('F', 'A1:B2'), range('C', 'A1:B2')]],
  ['=HOSE.CATALOGUE(FILTER(H!A1:B2,1),F!A1:B2,C!A1:B2)', undefined],
  ['=HOSE.CATALOGUE(H!A1:B2', undefined],
])('%s', (formula, expected) => {
  expect(callsCatalogue(formula)).toBe(true);
  expect(catalogueReferences(formula, 'Data')).toEqual(expected);
});

test('other formulas and values are none', () => {
  expect(['=HOSE.CUTLENGTH(1,2,3)', 'HOSE.CATALOGUE(A1)', 5, ''].filter(callsCatalogue)).toEqual([]);
});

test.each([
  [undefined, "=HOSE.CATALOGUE(Hoses!A1:S60,,'My parts'!A1:C9)"],
  ['=HOSE.CATALOGUE(A1:B2,C1:D2)', "=HOSE.CATALOGUE(Hoses!A1:S60,,'My parts'!A1:C9)"],
  ['=IF(B1=")","x",hose.catalogue(H!A1:B2))', '=IF(B1=")","x",HOSE.CATALOGUE(Hoses!A1:S60,,\'My parts\'!A1:C9))'],
  ['=_xldudf_HOSE_CATALOGUE(H!A1:B2)', "=HOSE.CATALOGUE(Hoses!A1:S60,,'My parts'!A1:C9)"],
])('other tables in %s', (before, expected) => {
  const places = [{ sheet: 'Hoses', address: 'A1:S60' }, undefined, { sheet: 'My parts', address: 'A1:C9' }, undefined];
  expect(withTables(places, before)).toBe(expected);
});
