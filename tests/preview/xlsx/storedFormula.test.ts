import { callsOurs, storedFormula, typedFormula } from '../../../src/preview/xlsx/storedFormula';

// The stored form is that of [MS-XLSX] and ECMA-376: user-defined functions as _xldudf_, newer functions as _xlfn.
it.each([
  ['HOSE.CUTLENGTH(A1,B1,C1)', '_xldudf_HOSE_CUTLENGTH(A1,B1,C1)'],
  [
    'IF(A1="",HOSE.NEXTDIAL(A1,B1:E1,F1,G1,H1),"HOSE.NEXTDIAL(")',
    'IF(A1="",_xldudf_HOSE_NEXTDIAL(A1,B1:E1,F1,G1,H1),"HOSE.NEXTDIAL(")',
  ],
  ["'HOSE.X(1)'!A1+1", "'HOSE.X(1)'!A1+1"],
  ['XLOOKUP(A1,B:B,C:C)', '_xlfn.XLOOKUP(A1,B:B,C:C)'],
  ['SUM(A1:A3)', 'SUM(A1:A3)'],
])('%s is stored as %s, and back', (typed, stored) => {
  expect(storedFormula(`=${typed}`)).toBe(stored);
  expect(typedFormula(stored)).toBe(`=${typed}`);
});

it('knows formulas that call our functions from text that only names them', () => {
  expect(callsOurs('=1+hose.cutlength(A1,1,1)')).toBe(true);
  expect(callsOurs('="HOSE.CUTLENGTH(1)"')).toBe(false);
  expect(callsOurs('=THOSE.CUTLENGTH(1)')).toBe(false);
});
