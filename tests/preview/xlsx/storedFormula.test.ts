import { callsOursAsTyped, storedFormula, typedFormula } from '../../../src/preview/xlsx/storedFormula';

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
  // Spilled ranges and single values: [MS-XLSX] 2.2.2 names the future functions _xlfn.ANCHORARRAY and _xlfn.SINGLE.
  ['SUM(B2#)*$C$3#', 'SUM(_xlfn.ANCHORARRAY(B2))*_xlfn.ANCHORARRAY($C$3)'],
  ["ROWS('My jobs (2)'!A1#)", "ROWS(_xlfn.ANCHORARRAY('My jobs (2)'!A1))"],
  ['@A1:A5+@Prices', '_xlfn.SINGLE(A1:A5)+_xlfn.SINGLE(Prices)'],
  ['@HOSE.ASSEMBLY(B1,"a)",@C1:C3)&"@A1 B2#"', '_xlfn.SINGLE(_xldudf_HOSE_ASSEMBLY(B1,"a)",_xlfn.SINGLE(C1:C3)))&"@A1 B2#"'],
  ['@(A1:A3*2)', '_xlfn.SINGLE((A1:A3*2))'],
  ["IF(A1=#N/A,Jobs[@Length],'a@b#'!C1)", "IF(A1=#N/A,Jobs[@Length],'a@b#'!C1)"],
])('%s is stored as %s, and back', (typed, stored) => {
  expect(storedFormula(`=${typed}`)).toBe(stored);
  expect(typedFormula(stored)).toBe(`=${typed}`);
});

it('knows formulas that call our functions from text that only names them', () => {
  expect(callsOursAsTyped('=1+hose.cutlength(A1,1,1)')).toBe(true);
  expect(callsOursAsTyped('="HOSE.CUTLENGTH(1)"')).toBe(false);
  expect(callsOursAsTyped('=THOSE.CUTLENGTH(1)')).toBe(false);
});
