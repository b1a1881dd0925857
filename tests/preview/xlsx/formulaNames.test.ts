import { formulaForFile, formulaFromFile } from '../../../src/preview/xlsx/formulaNames';

describe('names of our functions in files', () => {
  test.each([
    ['HOSE.CUTLENGTH(B1,C1,D1)', '_xldudf_HOSE_CUTLENGTH(B1,C1,D1)'],
    ['INDEX(HOSE.CRIMPDETAIL(F2:I2,J2,K2),1,2)', 'INDEX(_xldudf_HOSE_CRIMPDETAIL(F2:I2,J2,K2),1,2)'],
    ['HOSE.CUTLENGTH(HOSE.OVERALLLENGTH(A1,1,1),1,1)', '_xldudf_HOSE_CUTLENGTH(_xldudf_HOSE_OVERALLLENGTH(A1,1,1),1,1)'],
    ['IF(A1="say ""HOSE.X(1)""",1,2)', 'IF(A1="say ""HOSE.X(1)""",1,2)'],
    ["SUM('HOSE.X(1)'!A1)", "SUM('HOSE.X(1)'!A1)"],
    ['MYHOSE.CUT(A1)', 'MYHOSE.CUT(A1)'],
    ['SUM(A1:A3)', 'SUM(A1:A3)'],
  ])('%s is stored as %s, and comes back', (typed, stored) => {
    expect(formulaForFile(typed)).toBe(stored);
    expect(formulaFromFile(stored)).toBe(typed);
  });

  test('a name typed in small letters is stored with the prefix in its own spelling', () => {
    expect(formulaForFile('hose.cutlength(B1)')).toBe('_xldudf_HOSE_cutlength(B1)');
  });
});
